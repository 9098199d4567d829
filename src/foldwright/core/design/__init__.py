"""Styles, folds, ring grid, widths and seams."""
