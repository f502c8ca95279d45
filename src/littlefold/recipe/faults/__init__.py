"""What can be wrong with a recipe that can be read, told without a child: one kind of fault a file."""
