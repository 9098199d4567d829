"""Changes are typed into a copy, and the figures that moved are told."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from tests.work.documents import small

from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Change
from foldwright.work.changing import change_shade, compare_plans
from foldwright.work.document import read_document
from foldwright.work.files import read_toml
from foldwright.work.planning import house_draws, plan_one

COTTAGE = read_toml(Path(__file__).parent / "cottage.toml")


def test_a_change_leaves_the_document_given_as_it_was() -> None:
    before = small()
    after = change_shade(before, 0, [Change(path="lift.turns", text="12")])
    assert before == small()
    assert after["shades"][0]["lift"]["turns"] == "12"


def test_changes_are_made_in_order_in_new_tables_too_and_empty_text_takes_out() -> None:
    changes = [
        Change(path="asked.width", text="30"),
        Change(path="asked.drop", text="40"),
        Change(path="mount.height_rule", text=""),
        Change(path="tag", text="Hall"),
    ]
    (shade,) = change_shade(small(), 0, changes)["shades"]
    assert shade["asked"] == {"width": "30", "drop": "40"}
    assert shade["mount"] == {"place": "inside"}
    assert shade["tag"] == "Hall"


def plans(changes: list[Change]) -> tuple[object, object]:
    jobs = [
        read_document(document).job for document in (COTTAGE, change_shade(COTTAGE, 0, changes))
    ]
    before, after = (plan_one(job, job.shades[0]) for job in jobs if job)
    return before, after


def test_nothing_moves_where_nothing_is_changed() -> None:
    before, after = plans([])
    assert compare_plans(before, after, System.METRIC) == []  # type: ignore[arg-type]


def test_what_moves_is_told_with_both_figures() -> None:
    before, after = plans([Change(path="opening.width_middle", text="880")])
    moved = {each.place: each for each in compare_plans(before, after, System.METRIC)}  # type: ignore[arg-type]
    width = moved["size.width"]
    assert width.old is not None
    assert width.new is not None
    assert (width.old.value - width.new.value).in_millimetres == 20
    assert width.name == "finished width"
    assert "size.drop" not in moved


def test_figures_that_come_and_go_are_told() -> None:
    before, after = plans([Change(path="lift.kind", text="clutch")])
    moved = compare_plans(before, after, System.METRIC)  # type: ignore[arg-type]
    gone = [each.place for each in moved if each.new is None]
    assert any(place.startswith("balance.window") for place in gone)


def test_draws_are_the_same_each_time_and_even() -> None:
    draws = house_draws()
    assert draws is house_draws()
    assert ((draws > 0) & (draws < 1)).all()
    trials = len(draws)
    for column in draws.T:
        assert sorted(np.floor(column * trials)) == list(range(trials))
    correlation = np.corrcoef(draws.T) - np.eye(draws.shape[1])
    assert abs(correlation).max() < 0.12
