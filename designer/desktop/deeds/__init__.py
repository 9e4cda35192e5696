"""What the menus do, one module a menu: each joins its actions to the parts of a window."""
