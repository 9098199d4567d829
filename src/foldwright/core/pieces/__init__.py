"""Every piece of cloth that a shade is cut from, and how much cloth to order for them."""
