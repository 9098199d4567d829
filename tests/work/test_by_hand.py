"""A job typed by hand, against sums done by hand with the formula of the fold.

Drop = head allowance + skirt + (rows + 1/2) x spacing; *common practice*, worked here.
"""

from __future__ import annotations

import pytest

from foldwright.work.document import read_document
from foldwright.work.planning import plan_one


def rows(system: str, drop: object, **design: object) -> list[float]:
    shade = {"tag": "A", "asked": {"width": "1 m", "drop": drop}, "design": design}
    job = read_document({"job": {"name": "By hand", "system": system}, "shades": [shade]}).job
    assert job is not None
    layout = plan_one(job, job.shades[0]).layout
    assert layout is not None
    return [mark.value.in_millimetres for mark in layout.rows.marks]


def test_a_metric_shade() -> None:
    """1524 = 76 + 38 + 7.5 x 188: seven rows, the first 94 + 38 = 132 from the bottom."""
    marks = rows("metric", 1524, head_allowance=76, skirt=38, largest_row_spacing=200)
    assert marks == pytest.approx([132 + 188 * n for n in range(7)], abs=0.001)
    assert marks[-1] == pytest.approx(1260)


def test_an_inch_shade() -> None:
    """60 = 3 + 1 1/2 + 7.5 x 7.4: seven rows, the first 3.7 + 1.5 = 5.2 from the bottom."""
    marks = rows("inch", "60", head_allowance="3", skirt="1 1/2", largest_row_spacing="8")
    assert marks == pytest.approx([(5.2 + 7.4 * n) * 25.4 for n in range(7)], abs=0.001)
