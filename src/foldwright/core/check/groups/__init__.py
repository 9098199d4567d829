"""Shades of one room that are to look like one: the same rows, the same hem line."""
