"""What is wrong with a chain loop, and what would mend it: a cordless lift before all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain, islice

from foldwright.core.facts.cords import LEAST_USEFUL_LOOP
from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.safety.chain import greatest_loop_length
from foldwright.core.safety.choices import ChainDevice, Children
from foldwright.core.safety.drafting import draft
from foldwright.core.safety.judging_chain import loop_length
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import L
from foldwright.core.safety.reworking import lift
from foldwright.core.weigh.load import Weights
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import derived
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way, by_change, by_hand, on_mark

SECURED = (ChainDevice.TENSIONER, ChainDevice.BREAKAWAY)


def draft_chain_checks(order: SafetyOrder) -> Iterator[Draft[SafetyOrder]]:
    """Draft what is wrong with a chain loop; nothing where no chain works the shade.

    Takes: the order.

    Gives: drafts: children near it, its device, its length.

    Source: common practice (cordless where children can be); en-13120-summary; au-corded-2014.
    """
    if order.has_chain:
        yield from _children(order)
        yield from _useless(order) if _is_useless(order) else _loop(order)


def _loop(order: SafetyOrder) -> Iterator[Draft[SafetyOrder]]:
    yield from _device(order)
    yield from _length(order)


def allowed_loop(order: SafetyOrder) -> L | None:
    """Give how far the chain loop may hang, by the rules that its device leaves in force."""
    if not order.has_chain:
        return None
    return greatest_loop_length(
        order.safety.chain_device,
        order.top_above_floor,
        order.size.drop,
        order.markets,
        order.made_on,
    )


def _children(order: SafetyOrder) -> Iterator[Draft[SafetyOrder]]:
    if order.safety.children is Children.YES:
        yield draft(
            Severity.STOP,
            "chain-near-children",
            "A chain is chosen where small children can be; there a cordless lift is the only safe"
            " choice.",
            ways=cordless(order),
        )
    elif order.safety.children is Children.UNKNOWN:
        yield draft(
            Severity.ASK,
            "children",
            "Can a small child be where it hangs, living there or visiting? A chain is chosen.",
            ways=chain(
                cordless(order),
                [by_hand("Answer under Safety; homes, hotels and public places count as yes.")],
            ),
        )


def _device(order: SafetyOrder) -> Iterator[Draft[SafetyOrder]]:
    device = order.safety.chain_device
    if device is None:
        yield draft(
            Severity.ASK,
            "chain-device",
            "Has the chain loop a fixed tensioner or a breakaway?",
            ways=(*_other_devices(order), by_hand("Say under Safety which it has.")),
        )
    elif device is ChainDevice.NONE:
        yield draft(
            Severity.STOP,
            "chain-loose",
            "The chain loop has neither a fixed tensioner nor a breakaway; so it is not handed"
            " over.",
            ways=chain(_other_devices(order), cordless(order)),
            stage=Stage.INSTALL,
            source=Source(id="en-13120-summary"),
        )


def _is_useless(order: SafetyOrder) -> bool:
    most = allowed_loop(order)
    return most is not None and most.value < LEAST_USEFUL_LOOP.value


def _useless(order: SafetyOrder) -> Iterator[Draft[SafetyOrder]]:
    """Find that no loop which a rule allows could be worked."""
    most = allowed_loop(order)
    if most is not None:
        yield draft(
            Severity.STOP,
            "no-chain-allowed",
            "The strictest market sold into leaves a chain loop {0} at most; less than {1} cannot"
            " be worked.",
            most,
            LEAST_USEFUL_LOOP,
            ways=chain(_other_devices(order), cordless(order)),
            source=most.source,
        )


def _length(order: SafetyOrder) -> Iterator[Draft[SafetyOrder]]:
    found, most = loop_length(order), allowed_loop(order)
    if found is None:
        yield draft(
            Severity.ASK,
            "chain-length",
            "How far does the chain loop hang below the headrail?",
            ways=(*_other_lengths(order), by_hand("Type it under Safety.")),
        )
    elif most is not None and found.value > most.value:
        yield draft(
            Severity.STOP,
            "chain-too-long",
            "The chain loop hangs {0}; the strictest market sold into allows {1}.",
            found,
            most,
            ways=_ways_shorter(order),
            source=most.source,
        )


def _ways_shorter(order: SafetyOrder) -> Iterator[Way[SafetyOrder]]:
    yield from _other_lengths(order)
    yield from _other_devices(order)
    yield from cordless(order)


def _other_devices(order: SafetyOrder) -> Iterator[Way[SafetyOrder]]:
    for device in SECURED:
        if device is not order.safety.chain_device:
            sentence = f"Give the loop a {device.value}."
            yield by_change(order, order.system, sentence, safety__chain_device=device)


def _other_lengths(order: SafetyOrder) -> Iterator[Way[SafetyOrder]]:
    most = allowed_loop(order)
    if most is None:
        return
    length = on_mark(most.value, order.system, Rounding.MUST_FIT)
    figure = derived("loop", length, Unit.LENGTH, "{0}, rounded down to a mark.", most)
    sentence = "Let it hang {0} below the headrail."
    yield by_change(order, order.system, sentence, figure, safety__chain_loop_length=length)


def cordless(order: SafetyOrder) -> Iterator[Way[SafetyOrder]]:
    """Propose the best spring and the best motor of the shop's list that lift this shade."""
    if order.weights is None:
        yield by_hand("Take a spring or a motor.")
        return
    for kind in (LiftKind.SPRING, LiftKind.MOTOR):
        yield from islice(_lifts(order, order.weights, kind), 1)


def _lifts(order: SafetyOrder, weights: Weights, kind: LiftKind) -> Iterator[Way[SafetyOrder]]:
    """Ask the lift which of its kind would do, and offer those that change nothing else."""
    open_lift = replace(order.lift, kind=kind, spring="", motor="", turns=None)
    found = lift(replace(order, lift=open_lift), weights).findings
    part = f"lift.{kind.value}"
    for remedy in (each for finding in found if finding.id == part for each in finding.remedies):
        named = {change.path: change.text for change in remedy.changes}
        if set(named) <= {"lift.kind", part} and part in named:
            fields: dict[str, object] = {"lift__kind": kind, f"lift__{kind.value}": named[part]}
            if order.lift.turns is not None:
                fields["lift__turns"] = None
            yield by_change(order, order.system, remedy.sentence, *remedy.figures, **fields)
