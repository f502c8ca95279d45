"""The command line: the only place with processes, clocks and a screen."""
