"""The pages, in the order in which a person meets them."""
