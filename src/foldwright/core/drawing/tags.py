"""Which figure a mark in a drawing stands for, so that a touch can open its why."""

from __future__ import annotations

from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.model import Tag
from foldwright.core.why.figure import Figure


def figure_at(plan: ShadePlan, path: str) -> Figure[Any]:
    """Find a figure of a plan by its dotted path.

    Takes: the plan; the path, such as `layout.rows.marks.3`, counted from 0.

    Gives: the figure.

    Raises: LookupError when the plan has no figure there.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> figure_at(ShadePlan(spec=ShadeSpec(tag="1")), "size.width")
    Traceback (most recent call last):
    LookupError: the plan has no figure at size.width
    """
    found: Any = plan
    for step in path.split("."):
        found = _step(found, step)
    if isinstance(found, Figure):
        return found
    message = f"the plan has no figure at {path}"
    raise LookupError(message)


def tag(plan: ShadePlan, path: str) -> Tag:
    """Tag an element with a figure of the plan.

    Takes: the plan; the figure's dotted path.

    Gives: the tag, with the figure's own name.

    Raises: LookupError when the plan has no figure there.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> tag(ShadePlan(spec=ShadeSpec(tag="1")), "tag")
    Traceback (most recent call last):
    LookupError: the plan has no figure at tag
    """
    return Tag(path, figure_at(plan, path).name)


def _step(found: Any, step: str) -> Any:
    """Go one step down: an index in a tuple, else a field; None where there is none."""
    if isinstance(found, tuple):
        inside = step.isdecimal() and int(step) < len(found)
        return found[int(step)] if inside else None
    return getattr(found, step, None)
