"""A job as the rolls in hand turned out: their widths, repeats and steam tests in place of sheets.

Every room works with these, so that a piece has one cut size on every paper.
"""

from __future__ import annotations

from dataclasses import replace

from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.facts.panel_limits import LEAST_SIDE_PIECE
from foldwright.core.facts.records import Cloth
from foldwright.core.pieces.matching import widest_about_motif
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import USUAL_MARK, round_length
from foldwright.core.quantity.rounding import Rounding
from foldwright.work.job import Job

TENTH = Length.mm("0.1")  # so closely a place in the pattern is asked for


def as_measured(job: Job) -> Job:
    """Take what was measured on the rolls in hand for what the sheets and habits say.

    Takes: the job.

    Gives: the job with the least usable width, the repeats and the steam tests of its rolls;
    what was typed for a shade stands.
    """
    cloths = {
        name: _cloth_as_measured(cloth, rolls_of(job, name))
        for name, cloth in job.shop.cloths.items()
    }
    measured = replace(job, shop=replace(job.shop, cloths=cloths))
    return replace(measured, shades=tuple(shade_as_measured(s, measured) for s in job.shades))


def rolls_of(job: Job, cloth: str) -> tuple[ReceivedRoll, ...]:
    """Give the rolls in hand of one cloth."""
    return tuple(roll for roll in job.rolls if roll.cloth == cloth)


def _cloth_as_measured(cloth: Cloth, rolls: tuple[ReceivedRoll, ...]) -> Cloth:
    widths = [roll.usable_width for roll in rolls if roll.usable_width]
    along = [roll.vertical_repeat for roll in rolls if roll.vertical_repeat]
    across = [roll.horizontal_repeat for roll in rolls if roll.horizontal_repeat]
    return replace(
        cloth,
        usable_width=min(widths, default=cloth.usable_width),
        vertical_repeat=along[0] if along else cloth.vertical_repeat,
        horizontal_repeat=across[0] if across else cloth.horizontal_repeat,
    )


def shade_as_measured(spec: ShadeSpec, measured: Job) -> ShadeSpec:
    """Give a shade as its cloth turned out, beside a job that was taken as measured."""
    return _centred(_tested(spec, measured), measured)


def _tested(spec: ShadeSpec, job: Job) -> ShadeSpec:
    tested = [r.steam_shrinkage for r in rolls_of(job, spec.materials.face) if r.steam_shrinkage]
    if spec.design.shrinkage is not None or not tested:
        return spec
    return replace(spec, design=replace(spec.design, shrinkage=max(tested)))


def _centred(spec: ShadeSpec, job: Job) -> ShadeSpec:
    """Narrow the middle piece of a joined face so far that its motif can stand in its middle.

    Where next to nothing would be left of it, it stays, and the order says what is wrong.
    """
    cloth = job.shop.cloths.get(spec.materials.face)
    if cloth is None or spec.design.middle_piece is not None:
        return spec
    widest = widest_about_motif(cloth, spec.cutting.pattern_across)
    at_mark = round_length(widest - TENTH, USUAL_MARK[job.system], Rounding.MUST_FIT)
    shown = at_mark - job.habits.seam_allowance.value * 2
    if widest >= cloth.usable_width or shown < LEAST_SIDE_PIECE.value:
        return spec
    return replace(spec, design=replace(spec.design, middle_piece=shown))
