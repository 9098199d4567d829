"""Openings, mounts, squareness, deductions, finished size."""
