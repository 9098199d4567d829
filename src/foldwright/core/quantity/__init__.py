"""Exact lengths, workroom fractions, mass, force and torque."""
