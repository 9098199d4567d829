"""Whether what goes into the tube, and what carries it, suits its length and load."""

from __future__ import annotations

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.records import Board, Bracket, Clutch, Motor, Spring, Tube
from foldwright.core.lift.balance import Balance
from foldwright.core.quantity.length import Length
from foldwright.core.rig.tube import TubePlace
from foldwright.core.rig.wraps import tube_below_top
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, supplied


def too_short_for(place: TubePlace, drive: Spring | Clutch | Motor | None) -> tuple[Finding, ...]:
    """Stop when the tube is shorter than the spring or motor that goes into it.

    Takes: the tube's place; the spring or motor, None where there is none or it is unknown.

    Gives: a finding, or nothing.

    Source: the least length stands on the supplier's sheet.

    >>> from foldwright.core.rig.example import PARTS, SPRING
    >>> too_short_for(PARTS.place, SPRING)
    ()
    """
    least = _least_length(drive)
    if drive is None or least is None or place.cut.value >= least:
        return ()
    noun = "spring" if isinstance(drive, Spring) else "motor"
    needed = supplied(f"least tube length of the {noun}", least, Unit.LENGTH, drive.name)
    return (
        Finding(
            id="rig.tube-too-short",
            severity=Severity.STOP,
            stage=Stage.HEADRAIL,
            sentence=f"The tube is cut to {{0}}, but this {noun} needs {{1}}.",
            figures=(place.cut, needed),
            remedies=(
                Remedy(sentence=f"Take a {noun} for tubes down to {{0}}.", figures=(place.cut,)),
            ),
        ),
    )


def _least_length(drive: Spring | Clutch | Motor | None) -> Length | None:
    if isinstance(drive, Spring):
        return drive.body_length
    return drive.least_tube_length if isinstance(drive, Motor) else None


def fouls_the_board(bracket: Bracket, tube: Tube, board: Board | None) -> tuple[Finding, ...]:
    """Stop when the brackets hold the tube so high that it cannot turn under the board.

    Takes: the brackets; the tube; the board, None where it is not chosen.

    Gives: a finding, or nothing.

    Source: derived here from the supplier's sheets.

    >>> from foldwright.core.rig.example import BOARD, BRACKET, TUBE
    >>> fouls_the_board(BRACKET, TUBE, BOARD)
    ()
    """
    if board is None:
        return ()
    thickness = supplied("board thickness", board.thickness, Unit.LENGTH, board.name)
    outside = supplied("tube outside", tube.outside, Unit.LENGTH, tube.name)
    centre = tube_below_top(bracket)
    needed = derived(
        "least depth of the tube centre",
        board.thickness + tube.outside / 2,
        Unit.LENGTH,
        "The board is {0} thick and half of the tube's {1} lies above its centre.",
        thickness,
        outside,
    )
    if centre.value > needed.value:
        return ()
    return (
        Finding(
            id="rig.tube-fouls-board",
            severity=Severity.STOP,
            stage=Stage.HEADRAIL,
            sentence="The brackets hold the tube's centre {0} under the top of the board, but it"
            " turns free only below {1}.",
            figures=(centre, needed),
            remedies=(
                Remedy(
                    sentence="Take brackets that hold the centre lower than {0}, a thinner tube, or"
                    " a thinner board.",
                    figures=(needed,),
                ),
            ),
        ),
    )


def overloaded(
    place: TubePlace, tube: Tube, balance: Balance, bracket: Bracket
) -> tuple[Finding, ...]:
    """Stop when the raised shade and its tube are too heavy for the pair of brackets.

    Takes: the tube's place; the tube; the balance with the raised load; the brackets.

    Gives: a finding, or nothing; nothing where the sheet names no load.

    Source: the load stands on the supplier's sheet; taken for the pair, the safe side.

    >>> from foldwright.core.rig.example import BALANCE, BRACKET, PARTS, TUBE
    >>> overloaded(PARTS.place, TUBE, BALANCE, BRACKET)
    ()
    """
    if bracket.greatest_load_n is None:
        return ()
    allowed = supplied(
        "greatest load of the brackets", bracket.greatest_load_n, Unit.FORCE, bracket.name
    )
    carried = _carried(place, tube, balance)
    if (carried.high or carried.value) <= allowed.value:
        return ()
    return (
        Finding(
            id="rig.brackets-overloaded",
            severity=Severity.STOP,
            stage=Stage.HEADRAIL,
            sentence="The end brackets carry {0:range} with the shade raised; their sheet allows"
            " {1}.",
            figures=(carried, allowed),
            remedies=(Remedy(sentence="Take brackets for at least {0}.", figures=(carried,)),),
        ),
    )


def _carried(place: TubePlace, tube: Tube, balance: Balance) -> Figure[float]:
    mass = supplied("mass of the tube per metre", tube.line_mass_kg_m, Unit.LINE_MASS, tube.name)
    own = tube.line_mass_kg_m * place.cut.value.in_metres * GRAVITY.value
    raised = balance.load_raised
    return derived(
        "load on the end brackets",
        raised.value + own,
        Unit.FORCE,
        "{0} on the cords when raised, and a tube of {1} at {2}.",
        raised,
        place.cut,
        mass,
        low=None if raised.low is None else raised.low + own,
        high=None if raised.high is None else raised.high + own,
    )
