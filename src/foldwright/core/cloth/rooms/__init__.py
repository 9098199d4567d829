"""Rooms that may start anywhere in the repeat."""
