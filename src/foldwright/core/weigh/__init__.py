"""Layers, bars and rods: mass, and load against raise."""
