"""A second look at every plan, from positions only; it shares no code with the planner."""
