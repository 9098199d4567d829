"""The form by which a newly received spring is characterised, with a bar, a weight and a tape."""

from __future__ import annotations

from foldwright.core.prove.card_running import CRANK
from foldwright.core.prove.card_step import Ask, CardStep, Reads
from foldwright.core.rig.cautions import WOUND_SPRING

READINGS = (("1", "First"), ("2", "Second"), ("3", "Third"))


def spring_step() -> CardStep:
    """Give the one step of a spring's test.

    Gives: the step, with room for three readings.

    Source: common practice for the lever; derived here for the mean of both ways.

    >>> spring_step().asks[0].name
    'weight'
    """
    return CardStep(
        id="spring",
        title="Measure a spring",
        instruction="Clamp the bar to the spring's shaft like a lever, the spring held fast. Wind"
        " it, hold the bar level with the weight on it, and move the weight until the bar just"
        " gives way: once while you wind, once while you let it back. Measure from the middle of"
        " the shaft. Two or three numbers of turns tell more than one.",
        reason="Friction opposes either way, so the mean of the two is the spring itself, and half"
        " their difference is what it loses.",
        caution=f"{WOUND_SPRING} {CRANK}",
        asks=(
            Ask(name="weight", label="Weight on the bar", reads=Reads.MASS),
            Ask(name="bar", label="The bar itself", reads=Reads.MASS, optional=True),
            Ask(
                name="bar_middle",
                label="Shaft to where the bar alone balances",
                reads=Reads.LENGTH,
                optional=True,
            ),
            *(ask for number, words in READINGS for ask in _reading(number, words)),
        ),
    )


def _reading(number: str, words: str) -> tuple[Ask, ...]:
    group, optional = f"{words} reading", number != READINGS[0][0]
    return (
        Ask(name=f"turns_{number}", label="Turns wound", reads=Reads.TURNS, group=group,
            optional=optional),
        Ask(name=f"winding_{number}", label="Weight from the shaft, winding", reads=Reads.LENGTH,
            group=group, optional=optional),
        Ask(name=f"back_{number}", label="Weight from the shaft, letting back",
            reads=Reads.LENGTH, group=group, optional=optional),
    )  # fmt: skip
