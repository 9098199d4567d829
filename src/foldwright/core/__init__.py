"""Pure engineering: no clock, file, network or database."""
