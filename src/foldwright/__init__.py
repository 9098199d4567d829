"""Foldwright: from a measured window to a shade that rises, with every number able to say why."""
