"""The bench card of an invented shade, for the examples of this room."""

from __future__ import annotations

from foldwright.core.facts.house import house_habits
from foldwright.core.prove.card_step import CardOrder
from foldwright.core.rig import example
from foldwright.core.rig.rigging import rig_headrail


def order() -> CardOrder:
    """Give the invented shade, planned."""
    answer = rig_headrail(
        example.ORDER.mount,
        example.SIZE,
        example.LAYOUT,
        example.BALANCE,
        example.WEIGHTS,
        example.CHOSEN,
        example.LIFT,
        house_habits(),
        example.SHOP,
    )
    assert answer.result is not None  # noqa: S101 - the example is complete
    return CardOrder(
        size=example.SIZE,
        layout=example.LAYOUT,
        weights=example.WEIGHTS,
        balance=example.BALANCE,
        headrail=answer.result,
        lift=example.LIFT,
        habits=house_habits(),
    )
