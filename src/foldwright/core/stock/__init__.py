"""Tubes, bars, boards and rods cut from stock lengths, the offcut rack first."""
