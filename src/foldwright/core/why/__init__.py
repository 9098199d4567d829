"""The derivation that every figure carries."""
