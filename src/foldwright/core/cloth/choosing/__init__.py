"""Which cut lengths are cut: priced, bounded, chosen, improved."""
