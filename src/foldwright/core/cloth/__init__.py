"""Cloth on rolls: cut lengths off the roll, split into pieces, with repeat, lots and flaws."""
