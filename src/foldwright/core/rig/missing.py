"""What must be chosen before a headrail can be cut."""

from __future__ import annotations

from foldwright.core.facts.records import Chosen
from foldwright.core.lift.choices import LiftChoices
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage


def missing_parts(chosen: Chosen, choices: LiftChoices) -> tuple[Finding, ...]:
    """Ask for each part without which nothing of the headrail can be told.

    Takes: the records chosen; the lift as chosen.

    Gives: one question for each missing part.

    Source: derived here.

    >>> len(missing_parts(Chosen(), LiftChoices()))
    4
    """
    asked = (
        (chosen.bracket, "bracket", "Which end brackets carry the tube? Its cut depends on them."),
        (chosen.tube, "tube", "Which tube winds the cords? Wraps and stops depend on it."),
        (chosen.cord or chosen.tape, "cord", "Does it lift by cord or by tape, and by which?"),
        (choices.kind, "lift", "What turns the tube: a spring, a clutch or a motor?"),
    )
    return tuple(_ask(part, sentence) for found, part, sentence in asked if found is None)


def _ask(part: str, sentence: str) -> Finding:
    remedy = Remedy(sentence=f"Choose the {part} from the shop's list.")
    if part == "lift":
        remedy = Remedy(sentence="Choose the kind of lift.")
    return Finding(
        id=f"rig.choose-{part}",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=sentence,
        remedies=(remedy,),
    )
