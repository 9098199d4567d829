"""Groups that are to look like one: what is typed for each shade, and what it gives up."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace

import pytest
from tests.core.grouped import BAY, job_of, matched, planned, room, typed, window
from tests.core.layouts import ids, inches

from foldwright.core.check.groups.levelling import _meet
from foldwright.core.check.groups.matching import Matched, Matching
from foldwright.core.check.groups.member import Member, member_of
from foldwright.core.check.review import Review
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill

LINED_UP = {"check.hems-differ", "check.rows-differ", "check.beside-unmeasured"}


def told(shade: Matched) -> str:
    return fill(shade.way.sentence, shade.way.figures, System.INCH)


def changes(matching: Matching) -> list[dict[str, str]]:
    return [{one.path: one.text for one in shade.way.changes} for shade in matching.shades]


def test_rows_lie_level_over_one_hem() -> None:
    """Own arithmetic: the highest hem is 80 less 53 3/4, 26 1/4 over the floor; the drops to it
    are 57 3/4, 63 3/4 and 53 3/4, and rows 7 5/8 apart over 1 1/2 stand 5 5/16 over it."""
    matching = matched(room(*BAY))
    assert [shade.then.hem.value for shade in matching.shades] == [inches("26 1/4")] * 3
    assert matching.spacing is not None
    assert matching.spacing.value == inches("7 5/8")
    assert matching.apart is not None
    assert matching.apart.value == inches("0")
    assert [shade.then.rows[0] for shade in matching.shades] == [inches("31 9/16")] * 3
    assert [len(shade.then.rows) for shade in matching.shades] == [6, 7, 6]
    assert [each["design.head_allowance"] for each in changes(matching)] == [
        "6 11/16 in",
        "5 1/16 in",
        "2 11/16 in",
    ]


def test_each_shade_says_what_it_gives_up() -> None:
    left, _, right = matched(room(*BAY)).shades
    assert told(left) == (
        "6 rows at 7 5/8 in over a skirt of 1 1/2 in. 1 row fewer than now; it is 2 in shorter,"
        " and its hem so much higher; its head takes 6 11/16 in instead of 2 9/16 in; raised it"
        " hangs 4 1/8 in lower."
    )
    assert told(right).endswith("It gives nothing up.")


def test_findings_of_the_neighbours_fall_silent_once_the_group_is_matched() -> None:
    document = room(*BAY)
    before = [ids(shade.findings) & LINED_UP for shade in planned(document).shades]
    assert before == [set(), {"check.rows-differ"}, {"check.hems-differ"}]
    after = [ids(shade.findings) & LINED_UP for shade in planned(typed(document)).shades]
    assert after == [set(), set(), set()]


def test_a_finding_of_a_group_points_to_the_match() -> None:
    [said] = [
        each for each in planned(room(*BAY)).shades[1].findings if each.id == "check.rows-differ"
    ]
    assert any("Match the group “Front”" in remedy.sentence for remedy in said.remedies)


def test_rows_may_be_counted_from_the_head() -> None:
    """Three heads at one height: the rows hang from the least head, and the skirts differ."""
    level = (
        window("Left", "36", "60", "84"),
        window("Middle", "48", "66", "84"),
        window("Right", "36", "54", "84"),
    )
    document = room(*level, rows_from="head", own_hems=True)
    matching = matched(document)
    tops = [
        shade.then.top.value - shade.then.rows[-1] - shade.then.layout.rows.spacing.value
        for shade in matching.shades
    ]
    assert all(abs(top - inches("2 9/16")) <= inches("1/16") for top in tops)
    assert len({shade.then.hem.value for shade in matching.shades}) == 3
    after = [ids(shade.findings) & LINED_UP for shade in planned(typed(document)).shades]
    assert after == [set(), set(), set()]


def test_own_hems_are_left_alone_and_not_held_against_each_other() -> None:
    document = room(*BAY, own_hems=True)
    matching = matched(document)
    assert [shade.then.drop.value for shade in matching.shades] == [
        shade.now.drop.value for shade in matching.shades
    ]
    findings = [ids(shade.findings) for shade in planned(document).shades]
    assert not any("check.hems-differ" in each for each in findings)
    assert any("check.rows-differ" in each for each in findings)


def test_a_matched_group_stands() -> None:
    for group in ({}, {"own_hems": True}, {"rows_from": "head"}):
        once = typed(room(*deepcopy(BAY), **group))
        again = matched(once)
        assert again.stands
        assert all(told(shade).endswith("It gives nothing up.") for shade in again.shades)


def test_a_looped_shade_lines_up_with_flat_ones() -> None:
    document = room(
        window("Left", "36", "60", "84"),
        window("Right", "36", "66", "90", style="looped"),
    )
    matching = matched(document)
    assert matching.apart is not None
    assert matching.apart.value <= inches("1/16")
    loops = matching.shades[1].then.layout.rows
    hangs = loops.fold_depth.value - loops.spacing.value / 2
    assert loops.first_row.value >= hangs
    right = planned(typed(document)).shades[1]
    assert "design.loop-below-hem" not in ids(right.findings)


def test_a_skirt_that_all_have_is_kept() -> None:
    """5 in is nearer to the next line than to none: it is the skirt that is looked for."""
    document = room(*(window(tag, "36", "60", "84", skirt="5") for tag in ("Left", "Right")))
    assert all(
        shade.then.layout.rows.skirt.value == inches("5") for shade in matched(document).shades
    )


def test_the_motif_is_set_at_one_height_over_the_hem() -> None:
    left, middle, right = deepcopy(BAY)
    left["cutting"] = {"motif_above_hem": "10"}
    document = room(left, middle, right)
    assert [each.get("cutting.motif_above_hem") for each in changes(matched(document))] == [
        None,
        "10 in",
        "10 in",
    ]


def test_a_stack_that_the_client_does_not_allow_takes_more_rows() -> None:
    free = room(*deepcopy(BAY))
    bound = room(*deepcopy(BAY))
    for shade in bound["shades"]:
        shade["opening"]["glass_below_head"] = "2"
    bound["shades"][0]["design"]["stack_allowed_on_glass"] = "8"
    spacings = [matched(each).spacing for each in (free, bound)]
    assert spacings[0] is not None
    assert spacings[1] is not None
    assert spacings[1].value < spacings[0].value
    left = planned(typed(bound)).shades[0]
    assert "design.stack-over-allowed" not in ids(left.findings)


def missing_of(*windows: dict[str, object]) -> tuple[str, ...]:
    return matched(room(*windows)).missing


def test_what_is_missing_is_asked_for() -> None:
    left, right = window("Left", "36", "60", "84"), window("Right", "36", "54", "80")
    low = deepcopy(right)
    del low["opening"]["floor_to_head"]
    assert missing_of(left, low) == (
        "How high does “Right” hang? Measure from the floor to the head of its opening.",
    )
    bare = {"tag": "Right"}
    assert missing_of(left, bare) == ("“Right” cannot be laid out yet: its own page says why.",)
    cascade = window("Right", "36", "54", "80", style="cascade")
    assert missing_of(left, cascade) == ("The rows of “Right” are set by its style, cascade.",)


@pytest.mark.parametrize("system", ["inch", "metric"])
def test_metric_rooms_match_on_whole_millimetres(system: str) -> None:
    windows = (
        window("Left", "900 mm", "1500 mm", "2100 mm"),
        window("Right", "900 mm", "1350 mm", "2030 mm"),
    )
    matching = matched(room(*windows, system=system))
    assert matching.apart is not None
    assert matching.apart.value <= inches("1/16")
    texts = [text for each in changes(matching) for path, text in each.items() if "head" in path]
    assert texts
    assert all(text.endswith(" mm") for text in texts)


def test_a_shade_takes_the_line_nearest_to_its_skirt() -> None:
    """Own arithmetic: lines 7 1/2 in apart give a skirt of 1 or of 8 1/2 in; 5 are wanted."""
    job = job_of(room(*(window(tag, "36", "60", "84", skirt="5") for tag in ("Left", "Right"))))
    plan = planned(room(*BAY)).shades[0]
    plan = replace(plan, spec=job.shades[0])
    member = member_of(Review(plan=plan, shop=job.shop, habits=job.habits, markets=job.markets))
    assert isinstance(member, Member)
    spacing = inches("7 1/2")
    line = member.hem.value + inches("8 1/2") + spacing / 2
    meeting = _meet(member, line, spacing)
    assert meeting is not None
    assert meeting.skirt == inches("8 1/2")
