"""One child's body: measurements and their register, size charts, growth, and what looks wrong."""
