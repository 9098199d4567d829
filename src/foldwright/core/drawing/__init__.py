"""Neutral drawing: lines, arcs, hatches, text, layers."""
