"""What has to be asked before a finished size can be trusted: gaps and contradictions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from foldwright.core.measure.drafting import draft
from foldwright.core.measure.moving import OUTSIDE_FIELDS, move
from foldwright.core.measure.opening import HeightRule, MountPlace
from foldwright.core.measure.site import Site
from foldwright.core.measure.sizing import finished_drop, finished_width, with_rule
from foldwright.core.measure.squareness import racking
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

OUTSIDE_ONLY = dict(
    zip(
        OUTSIDE_FIELDS,
        ("An overlap", "An overlap", "A height above the opening", "A length below the opening"),
        strict=True,
    )
)


def draft_questions(site: Site) -> Iterator[Draft[Site]]:
    """Draft what must be asked about a window and its mount.

    Takes: the site.

    Gives: drafts of findings, most urgent first.

    Source: common practice.
    """
    yield from _place(site)
    yield from _missing_width(site)
    yield from _missing_drop(site)
    yield from _few(site)
    yield from _height_rule(site)
    yield from _sill(site)
    yield from _contradictions(site)
    yield from _unsigned(site)
    yield from _squareness_unknown(site)


def _ask(
    name: str, sentence: str, *figures: Figure[Any], ways: tuple[Way[Site], ...]
) -> Draft[Site]:
    return draft(Severity.ASK, name, sentence, *figures, ways=ways)


def _place(site: Site) -> Iterator[Draft[Site]]:
    if site.mount.place is None:
        ask = by_hand("Ask the client, and measure what that mount needs.")
        ways = (*(_placed(site, place) for place in MountPlace), ask)
        yield _ask("place", "Inside the reveal, or outside over it? Nobody has said.", ways=ways)


def _placed(site: Site, place: MountPlace) -> Way[Site]:
    """Answer the question for a place, showing the size that comes of it where it can be known."""
    there = move(site, place, "").inputs or site
    width, drop = finished_width(there), finished_drop(there)
    if width is None or drop is None:
        return move(site, place, f"Mount it {place.value}.")
    return move(
        site, place, f"Mount it {place.value}: finished {{0}} wide and {{1}} long.", width, drop
    )


def _missing_width(site: Site) -> Iterator[Draft[Site]]:
    if site.asked.width is None and not site.widths and site.opening.casing_width is None:
        remedy = by_hand("Measure three widths with a steel tape, or type a finished width.")
        yield _ask("width-missing", "There is no width yet.", ways=(remedy,))


def _missing_drop(site: Site) -> Iterator[Draft[Site]]:
    if site.asked.drop is None and not site.heights and site.opening.casing_height is None:
        remedy = by_hand("Measure three heights with a steel tape, or type a finished drop.")
        yield _ask("drop-missing", "There is no height yet.", ways=(remedy,))


def _few(site: Site) -> Iterator[Draft[Site]]:
    """Ask for all three of each inside a reveal, because one of them governs."""
    pairs = (("width", site.widths, site.asked.width), ("height", site.heights, site.asked.drop))
    for word, found, asked in pairs:
        if site.inside and asked is None and len(found) in {1, 2}:
            count = chosen(f"{word}s measured", len(found), Unit.COUNT)
            sentence = f"Only {{0}} of three {word}s measured; the one that governs may be missing."
            ways = (by_hand(f"Measure the other {word}s inside the reveal."),)
            yield _ask(f"{word}s-few", sentence, count, ways=ways)


def _height_rule(site: Site) -> Iterator[Draft[Site]]:
    unanswered = site.inside and site.asked.drop is None and site.mount.height_rule is None
    if unanswered and site.heights and site.opening.sill is not False:
        ways = (
            _ruled(site, HeightRule.COVER_SILL, "Cover the sill line everywhere: drop {0}."),
            _ruled(site, HeightRule.CLEAR_SILL, "Clear the sill everywhere: drop {0}."),
        )
        sentence = (
            "Is the shade to cover the sill line or to clear the sill? Published rules differ;"
            " until it is chosen the shade is taken to clear it."
        )
        yield _ask("height-rule", sentence, ways=ways)


def _ruled(site: Site, rule: HeightRule, sentence: str) -> Way[Site]:
    drop = finished_drop(with_rule(site, rule))
    figures = (drop,) if drop else ()
    return by_change(site, site.system, sentence, *figures, mount__height_rule=rule)


def _sill(site: Site) -> Iterator[Draft[Site]]:
    """Outside, the length below depends on whether there is a sill to end on."""
    known = site.opening.sill is not None or site.mount.below is not None
    if site.outside and site.asked.drop is None and not known:
        ways = (
            by_change(site, site.system, "It has one: end on it.", opening__sill=True),
            by_change(
                site,
                site.system,
                "It has none: reach {0} below.",
                site.habits.outside_below_no_sill,
                opening__sill=False,
                **_no_rule(site),
            ),
        )
        yield _ask(
            "sill", "Has the window a sill? Taken to have one until that is known.", ways=ways
        )


def _no_rule(site: Site) -> dict[str, object]:
    """Take back a rule that speaks of a sill."""
    clears = site.mount.height_rule is HeightRule.CLEAR_SILL
    return {"mount__height_rule": None} if clears else {}


def _contradictions(site: Site) -> Iterator[Draft[Site]]:
    if site.inside:
        yield from _outside_facts_inside(site)
    if site.outside and site.mount.deduction is not None:
        yield _clash(site, "deduction", "A deduction belongs to an inside mount", MountPlace.INSIDE)
    yield from _size_given_twice(site)


def _outside_facts_inside(site: Site) -> Iterator[Draft[Site]]:
    for field, word in OUTSIDE_ONLY.items():
        if getattr(site.mount, field) is not None:
            yield _clash(site, field, f"{word} belongs to an outside mount", MountPlace.OUTSIDE)
    if site.mount.returns:
        yield _clash(site, "returns", "Returns belong to an outside mount", MountPlace.OUTSIDE)


def _clash(site: Site, field: str, fact: str, other: MountPlace) -> Draft[Site]:
    here = MountPlace.OUTSIDE if other is MountPlace.INSIDE else MountPlace.INSIDE
    cleared = False if field == "returns" else None
    ways = (
        by_change(site, site.system, "Leave it out.", **{f"mount__{field}": cleared}),
        move(site, other, f"Mount the shade {other.value}."),
    )
    sentence = f"{fact}, but this shade hangs {here.value}; it is not used."
    return _ask(f"{field.replace('_', '-')}-clash", sentence, ways=ways)


def _size_given_twice(site: Site) -> Iterator[Draft[Site]]:
    if site.asked.width is not None and site.mount.deduction is not None and site.inside:
        ways = (
            by_change(site, site.system, "Keep the typed width.", mount__deduction=None),
            by_change(site, site.system, "Keep the deduction.", asked__width=None),
        )
        sentence = "A finished width and a deduction are both typed; the width is used."
        yield _ask("width-twice", sentence, ways=ways)


def _unsigned(site: Site) -> Iterator[Draft[Site]]:
    typed = site.asked.width is not None or site.asked.drop is not None
    if typed and not site.asked.given_by.strip():
        remedy = by_hand("Type who gave the size, and have it signed.")
        sentence = "A finished size is typed, but nobody stands behind it if it is wrong."
        yield _ask("size-unsigned", sentence, ways=(remedy,))


def _squareness_unknown(site: Site) -> Iterator[Draft[Site]]:
    if site.inside and site.widths and racking(site) is None:
        yield draft(
            Severity.NOTE,
            "diagonals-missing",
            "Without both diagonals nobody knows whether the reveal leans against the shade.",
            ways=(by_hand("Measure both diagonals of the reveal."),),
        )
