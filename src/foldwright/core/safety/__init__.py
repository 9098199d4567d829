"""Child safety: the rules of each market as data, and one shade judged by them."""
