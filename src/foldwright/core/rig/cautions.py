"""What can hurt at the bench, in the words that are printed beside the step.

They are the trade's usual cautions, common practice; local codes and licensed practice
go before them.
"""

from __future__ import annotations

SAW = "Eye protection at the saw. Break the cut edge inside and out: a sharp one cuts cords."

FIXINGS = (
    "The brackets carry the shade and every pull at it: screws into sound wood, pilot holes first."
)

WOUND_SPRING = (
    "A wound spring throws. Hands clear, eye protection. Wind and unwind only with the maker's tool"
    " and method, a whole turn at a time. Never draw a locking pin under tension."
)

LET_BACK = (
    "Let it back under control, a hand on the bar all the way. Never release it free without a"
    " speed brake."
)

RELEASE = "Keep face and fingers out of the folds. Guide the bar by hand; never let it fly."

LADDER = (
    "Off the floor, use a ladder that stands firm, one out for four up, and a second person for a"
    " wide shade. A shade under tension is held until its bar is tied."
)

CORDS = (
    "A loop of inner cord can close round a child's neck. Leave no slack and no free end behind"
    " the cloth, keep to the market's row spacing, and follow the local rules for children's rooms."
)

CHAIN = (
    "A chain loop can strangle a child. Its length, height and fixed tension device follow the rule"
    " of the market; without the device it is not handed over."
)

MAINS = (
    "Mains wiring is for a licensed person, by the local code. Cut off and prove dead before a"
    " cover is opened."
)

MOVING = "Keep fingers out of the tube and folds while the motor can start; it may start unseen."
