"""The layouts that a shade may have, and the best of them."""
