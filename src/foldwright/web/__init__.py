"""Pages in the order of the work."""
