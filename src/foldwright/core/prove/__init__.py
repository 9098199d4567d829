"""Rise, bench observations, inference, corrections."""
