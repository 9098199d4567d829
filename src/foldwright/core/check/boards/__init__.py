"""Shades that share one board: where each hangs on it, and what lifts them."""
