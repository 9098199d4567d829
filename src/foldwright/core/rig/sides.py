"""Which end the spring goes to, and which way it turns the tube.

Two facts decide, never a trade name: the end of the tube, and the side of the tube that
the cords leave. A rail flipped front to back swaps both, so its turning stays the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.lift.choices import LiftKind
from foldwright.core.measure.opening import Face, Mount, Side
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import chosen, derived, fact, supplied
from foldwright.core.why.source import Status

W = Figure[str]


class Turning(Enum):
    """A sense of rotation, always seen from outside at the spring or control end."""

    CLOCKWISE = "clockwise"
    COUNTER_CLOCKWISE = "counter-clockwise"

    @property
    def opposite(self) -> Turning:
        """Give the other sense."""
        clockwise = self is Turning.CLOCKWISE
        return Turning.COUNTER_CLOCKWISE if clockwise else Turning.CLOCKWISE


RULE_OF_ENDS = fact(
    "trade rule of ends",
    "room side: right; window side: left",
    Unit.WORD,
    "With one and the same spring hand, cloth and cords leaving on the room side put the"
    " spring at the right as seen from the room, on the window side at the left.",
    Status.PRACTICE,
)

_END_BY_RULE = {Face.ROOM: Side.RIGHT, Face.WINDOW: Side.LEFT}
_HAND_DRIVES = {"left": Turning.CLOCKWISE, "right": Turning.COUNTER_CLOCKWISE}


@dataclass(frozen=True, kw_only=True, slots=True)
class DriveEnd:
    """The end of the tube that the spring, clutch or motor sits in, and its turning."""

    side: Side  # as seen from the room
    raising: Turning  # the tube, while the shade rises, seen from outside at that end
    side_figure: W
    raising_figure: W
    cord_side: W

    @property
    def words(self) -> str:
        """Give the end as it is spoken of at the bench."""
        return f"{self.side.value} end, as seen from the room"


def raising_direction(side: Side, cord_side: Face) -> Turning:
    """Give the way the tube turns while the shade rises, seen from outside at the drive end.

    Takes: the drive end as seen from the room; the side of the tube that the cords leave.

    Gives: a sense of rotation; it is also the way a spring's fixed shaft is wound.

    Holds for: cords that hang straight down from the side of the tube.

    Source: derived here: looking at the right end from outside, the window lies to the
    right, and what hangs on the right is raised by turning counter-clockwise.

    >>> raising_direction(Side.RIGHT, Face.WINDOW).value
    'counter-clockwise'
    """
    window_on_the_viewers_right = side is Side.RIGHT
    cord_on_the_viewers_right = window_on_the_viewers_right == (cord_side is Face.WINDOW)
    return Turning.COUNTER_CLOCKWISE if cord_on_the_viewers_right else Turning.CLOCKWISE


def read_hand(written: str | None) -> str | None:
    """Read the hand of a coil from a supplier's sheet.

    Takes: the word on the sheet, None where there is none.

    Gives: "left" or "right", or None for anything else.

    Source: derived here.

    >>> read_hand(" Left"), read_hand("either")
    ('left', None)
    """
    word = (written or "").strip().lower()
    return word if word in _HAND_DRIVES else None


def unread_hand(written: str | None, spring_name: str) -> tuple[Finding, ...]:
    """Ask for the hand of a coil whose sheet says something else than left or right.

    Takes: the word on the sheet, None where there is none; the spring's name.

    Gives: a finding, or nothing.

    Source: derived here.

    >>> unread_hand("right", "spring")
    ()
    """
    if not (written or "").strip() or read_hand(written):
        return ()
    return (
        Finding(
            id="rig.spring-hand",
            severity=Severity.ASK,
            stage=Stage.HEADRAIL,
            sentence="The sheet gives the spring's hand as “{0}”, which is neither left nor right."
            " Which way is the coil wound? Its end of the tube depends on it.",
            figures=(supplied("hand of the coil", (written or ""), Unit.WORD, spring_name),),
            remedies=(
                Remedy(
                    sentence="Write “left” or “right” in the shop's list, counted as a screw thread"
                    " is, or leave it out if the spring works either way."
                ),
            ),
        ),
    )


def end_for_hand(hand: str, cord_side: Face) -> Side:
    """Give the end, seen from the room, at which a spring of a fixed hand lifts.

    Takes: "left" or "right", the hand of the coil as of a screw thread; the side of the
    tube that the cords leave.

    Gives: the end at which lowering the shade tightens the coil.

    Raises: KeyError for any other hand.

    Source: derived here: the tube turns one end of the coil against the other, and a coil
    tightens when its far end is turned on in its own sense.

    >>> end_for_hand("left", Face.ROOM).value, end_for_hand("left", Face.WINDOW).value
    ('right', 'left')
    """
    wanted = _HAND_DRIVES[hand]
    return Side.RIGHT if raising_direction(Side.RIGHT, cord_side) is wanted else Side.LEFT


def drive_end(mount: Mount, kind: LiftKind, spring_name: str, hand: str | None) -> DriveEnd:
    """Choose the drive end by the spring's hand, the end asked for, or the trade's rule.

    Takes: the mount with its two facts; what turns the tube; the spring's name and the hand
    of its coil, None where it works either way or there is no spring.

    Gives: the end with its turning.

    Source: derived here; the end of a spring of either hand is common practice.

    >>> end = drive_end(Mount(cord_side=Face.WINDOW), LiftKind.SPRING, "", None)
    >>> end.side.value, end.raising.value
    ('left', 'clockwise')
    """
    cords = chosen("side of the tube that the cords leave", mount.cord_side.value, Unit.WORD)
    side = _side_figure(mount, kind, cords, spring_name, hand)
    return _end(Side(side.value), mount.cord_side, side, cords)


def end_findings(mount: Mount, end: DriveEnd, hand: str | None) -> tuple[Finding, ...]:
    """Find where the end asked for cannot lift, and where cloth and cords part.

    Takes: the mount; the drive end; the hand of the coil, None where it works either way.

    Gives: findings.

    Source: derived here.

    >>> mount = Mount(board_edge=Face.WINDOW)
    >>> end = drive_end(mount, LiftKind.MOTOR, "", None)
    >>> [finding.id for finding in end_findings(mount, end, None)]
    ['rig.cloth-and-cords-apart']
    """
    return (*_wrong_end(mount, end, hand), *_split_sides(mount, end.cord_side))


def _end(side: Side, cord_side: Face, side_figure: W, cords: W) -> DriveEnd:
    raising = raising_direction(side, cord_side)
    figure = derived(
        "turning while the shade rises",
        raising.value,
        Unit.WORD,
        "Looking from outside at the {0} end, a cord that leaves on the {1} side comes up when"
        f" the tube turns {raising.value}; a spring's fixed shaft is wound the same way.",
        side_figure,
        cords,
    )
    return DriveEnd(
        side=side, raising=raising, side_figure=side_figure, raising_figure=figure, cord_side=cords
    )


def _side_figure(mount: Mount, kind: LiftKind, cords: W, spring_name: str, hand: str | None) -> W:
    if hand is not None:
        return _end_by_hand(mount.cord_side, cords, spring_name, hand)
    if mount.control_side is not None:
        return chosen(_end_name(kind), mount.control_side.value, Unit.WORD)
    if kind is LiftKind.SPRING:
        return _end_by_rule(mount.cord_side, cords)
    return fact(
        _end_name(kind),
        Side.RIGHT.value,
        Unit.WORD,
        "No side was asked for, so the control goes to the right as seen from the room.",
        Status.HOUSE,
    )


def _end_name(kind: LiftKind) -> str:
    return "spring end" if kind is LiftKind.SPRING else "control end"


def _end_by_hand(cord_side: Face, cords: W, spring_name: str, hand: str) -> W:
    coil = supplied("hand of the coil", hand, Unit.WORD, spring_name)
    return derived(
        "spring end",
        end_for_hand(hand, cord_side).value,
        Unit.WORD,
        "A {0}-hand coil, counted as a screw thread is, tightens as the shade goes down only at"
        " this end when the cords leave on the {1} side; with the other hand it is the other end.",
        coil,
        cords,
    )


def _end_by_rule(cord_side: Face, cords: W) -> W:
    return derived(
        "spring end",
        _END_BY_RULE[cord_side].value,
        Unit.WORD,
        "The sheet names no hand, so the trade's rule holds ({1}) for cords leaving on the {0}"
        " side; a spring of the hand that winds the other way goes to the other end.",
        cords,
        RULE_OF_ENDS,
    )


def _wrong_end(mount: Mount, end: DriveEnd, hand: str | None) -> tuple[Finding, ...]:
    """Say so when the end asked for would unwind the spring while raising."""
    wanted = mount.control_side
    if hand is None or wanted is None or wanted is end.side:
        return ()
    asked = chosen("end asked for", wanted.value, Unit.WORD)
    return (
        Finding(
            id="rig.spring-end",
            severity=Severity.STOP,
            stage=Stage.HEADRAIL,
            sentence="The spring is asked for at the {0} end, but a {2}-hand coil with cords"
            " leaving on the {3} side lifts only from the {1} end: at the other it unwinds as the"
            " shade goes down.",
            figures=(asked, end.side_figure, *end.side_figure.inputs),
            remedies=(
                Remedy(
                    sentence="Put the spring at the {0} end.",
                    figures=(end.side_figure,),
                    changes=(Change(path="mount.control_side", text=end.side.value),),
                ),
                Remedy(sentence="Order the spring in the other hand."),
            ),
        ),
    )


def _split_sides(mount: Mount, cords: W) -> tuple[Finding, ...]:
    """Ask when the cloth leaves one side of the headrail and the cords the other."""
    if mount.board_edge is mount.cord_side:
        return ()
    edge = chosen("edge of the board that the cloth leaves", mount.board_edge.value, Unit.WORD)
    return (
        Finding(
            id="rig.cloth-and-cords-apart",
            severity=Severity.ASK,
            stage=Stage.HEADRAIL,
            sentence="The cords leave the tube on the {0} side but the cloth leaves the board at"
            " its {1} edge: the cords then lean across the headrail to their rings. Is that meant?",
            figures=(cords, edge),
            remedies=(
                Remedy(
                    sentence="Let the cords leave on the {0} side too; the spring changes ends"
                    " or hand with them.",
                    figures=(edge,),
                    changes=(Change(path="mount.cord_side", text=mount.board_edge.value),),
                ),
            ),
        ),
    )
