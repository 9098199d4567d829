"""Tube, cord or tape, spring, clutch, motor: the balance."""
