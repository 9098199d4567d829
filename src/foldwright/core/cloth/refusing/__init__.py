"""What keeps an order of cloth from being cut."""
