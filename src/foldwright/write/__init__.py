"""Drawings and tables to files; nothing is computed here."""
