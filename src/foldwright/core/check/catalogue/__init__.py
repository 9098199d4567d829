"""Every check that the rooms make of an order, as data."""
