"""Which cut lengths there could be, for given prices of their pieces."""
