"""Foldwright: from a measured window to a shade that rises, with every number able to say why."""

__version__ = "0.1.0"  # as in pyproject.toml; a test keeps the two alike
