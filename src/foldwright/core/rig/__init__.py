"""Cuts, brackets, clips, cords, wraps, side, stop, turns."""
