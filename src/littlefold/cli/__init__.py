"""The commands: the only folder, beside `store` and `web`, that touches disk, terminal and clock."""
