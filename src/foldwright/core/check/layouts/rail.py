"""What brackets, clips and cradles ask of the columns, once the headrail is known."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.check.plan import ShadePlan
from foldwright.core.facts.habits import Habits

CRADLED = frozenset({"rig.cradle", "rig.no-room-for-cradle"})


@dataclass(frozen=True, kw_only=True, slots=True)
class Rail:
    """The headrail as the columns meet it; lengths in nanometres, from the shade's edge."""

    reach: int  # where the end brackets leave the tube free, at the worse end
    safety: float  # wraps
    wraps_a_raise: float  # wraps of travel for each nanometre of raise
    thickness: int  # of the cord as wound; 0 for a tape
    width: int  # of a tape; 0 for a cord
    clip: int
    nearest: int  # clip to column
    farthest: int
    cradle: int  # the width of a cradle, or 0 where none is needed

    def wound(self, travel: int) -> float:
        """Give the width of all wraps of a shade with such a raise."""
        return self.width or (self.safety + self.wraps_a_raise * travel) * self.thickness

    def least_edge(self, travel: int) -> float:
        """Give the edge distance from which the outermost wraps clear the brackets."""
        return self.reach + self.wound(travel) / 2

    def least_pitch(self, travel: int) -> float:
        """Give the pitch at which two facing cords still wind side by side."""
        return 0.0 if self.width else 2 * (self.wound(travel) + self.clip)

    def cradled_pitch(self, travel: int, *, facing: bool) -> float:
        """Give the pitch at which a cradle finds room in the widest bay.

        `facing` says that the only bay has both of its clips inside.
        """
        if not self.cradle:
            return 0.0
        wound = self.wound(travel)
        if self.width or not facing:
            return self.cradle + wound
        walk = self.wraps_a_raise * travel * self.thickness
        offset = max(min(self.nearest + walk, self.farthest), wound)
        return self.cradle + 2 * offset + self.clip


def rail_of(plan: ShadePlan, habits: Habits) -> Rail | None:
    """Take from a planned headrail what its brackets, clips and cradles ask of the columns.

    Takes: the plan; the shop's habits.

    Gives: the rail; None while the headrail is not known.

    Holds for: raises not far from the one planned.

    Source: derived here, as the room of the headrail reckons.
    """
    rail, bracket, layout, size = plan.headrail, plan.chosen.bracket, plan.layout, plan.size
    if rail is None or bracket is None or layout is None or size is None:
        return None
    cord, tape = plan.chosen.cord, plan.chosen.tape
    beside = (size.width.value - size.board_length.value) / 2
    face = bracket.inset + bracket.width
    beyond = rail.board_length.value - rail.tube_start.value - rail.tube_cut.value
    return Rail(
        reach=(beside + max(face, rail.tube_start.value, beyond)).nanometres,
        safety=rail.safety_wraps.value,
        wraps_a_raise=rail.travel_wraps.value / layout.travel.value.nanometres,
        thickness=(cord.diameter_high or cord.diameter).nanometres if cord else 0,
        width=tape.width.nanometres if tape and not cord else 0,
        clip=habits.clip_length.value.nanometres,
        nearest=habits.clip_nearest.value.nanometres,
        farthest=habits.clip_farthest.value.nanometres,
        cradle=bracket.width.nanometres if _cradled(plan) else 0,
    )


def _cradled(plan: ShadePlan) -> bool:
    return any(finding.id in CRADLED for finding in plan.findings)
