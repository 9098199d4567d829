"""Cloth: what to buy and where to cut, with proof of how little could be enough.

In the order of the work: `order` says what is asked; `refusing` what cannot be done; `whole` and
`dividing` put it into whole units, lot by lot; `laying` makes the first plan and lays cut lengths
out on rolls; `finding` and `choosing` look for better cut lengths and bounds; `rooms` settles free
rooms; `writing_out` and `checking` turn what was found into a plan and look at it again.
`planning` runs it all.
"""
