"""The sheets that travel with the shade."""
