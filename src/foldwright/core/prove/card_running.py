"""Steps of the bench card that wind, hang and run the shade."""

from __future__ import annotations

from foldwright.core.facts.acceptance import DRIFT, DRIFT_IN_A_DAY, DRIFT_MINUTES
from foldwright.core.facts.bench import BAR_LEVEL, TEST_CYCLES
from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.prove.card_fields import (
    HOLDING_HEIGHTS,
    LEVEL_HEIGHTS,
    SCALE_HEIGHTS,
    YES_NO,
    choice,
    hand_force_limit,
    is_sprung,
    lengths,
    share_of_travel,
    turns_field,
)
from foldwright.core.prove.card_step import Ask, CardOrder, CardStep, Reads
from foldwright.core.quantity.length import ZERO
from foldwright.core.rig import cautions

CRANK = (
    "Keep the crank on the shaft until the lock has caught, let it back under control, and never"
    " loosen a bracket while the spring is under tension."
)


def wind(order: CardOrder) -> CardStep | None:
    """Wind the spring."""
    if not is_sprung(order):
        return None
    turns, rail = order.headrail.pretension_turns, order.headrail
    known = (rail.wind_direction, rail.spring_side, *((turns,) if turns else ()))
    return CardStep(
        id="wind",
        title="Wind the spring",
        instruction="Shade tied at the up-stop. Wind {0} as seen at the {1} end, a whole turn at a"
        " time, counted aloud"
        + ("; {2} is reckoned best. " if turns else "; no number of turns is known to fit. ")
        + "Note the turns that are now in the spring.",
        figures=known,
        reason="Turns are counted at the up-stop, where the spring is weakest. Note them anew after"
        " every change.",
        caution=f"{cautions.WOUND_SPRING} {CRANK}",
        asks=(
            turns_field(order, now=False),
            Ask(
                name="batch",
                label="Batch of the spring, as on its packet",
                reads=Reads.TEXT,
                optional=True,
            ),
        ),
        repeats=True,
    )


def hang(order: CardOrder) -> CardStep:
    """Hang it on the rig."""
    return CardStep(
        id="hang",
        title="Hang it on the rig",
        instruction="Hang the board of {0} on the rig, level, its bar still tied. Then untie the"
        " bar and draw it down by hand.",
        figures=(order.size.board_length,),
        reason="A rig out of level shows as a bar out of level.",
        caution=f"{cautions.LADDER} {cautions.LET_BACK}" if is_sprung(order) else cautions.LADDER,
        asks=(choice("hung", "It hangs", ("yes", "Hung, and level")),),
    )


def stall(order: CardOrder) -> CardStep | None:
    """Let it rise, guided."""
    if not is_sprung(order):
        return None
    return CardStep(
        id="stall",
        repeats=True,
        title="Let it rise, guided by hand",
        instruction="From fully down, a hand on the bar all the way, slowly. Does it rise to the"
        " stop, {0} up, or does it stand still before?",
        figures=(order.layout.travel,),
        reason="Where a guided shade stands still, spring and load are equal: one such stall tells"
        " more than any other test. A free release shoots past that place and proves nothing.",
        caution=f"{cautions.RELEASE} {cautions.LET_BACK}",
        asks=(
            choice(
                "ended",
                "How it ended",
                ("rose", "Rose to the stop"),
                ("stalled", "Stood still by itself"),
                ("free", "Was let go free, and came to rest"),
            ),
            Ask(
                name="raise",
                label="Raised by, where it stood still",
                reads=Reads.LENGTH,
                optional=True,
            ),
            turns_field(order),
        ),
    )  # fmt: skip


def rise_time(order: CardOrder) -> CardStep | None:
    """Time a rise."""
    if not is_sprung(order) or order.lift.brake is not Brake.FITTED:
        return None
    return CardStep(
        id="rise-time",
        repeats=True,
        title="Time a full rise",
        instruction="Fully down, release it with the speed brake working, and time it to the stop.",
        reason="A braked rise takes its time by the surplus of the spring.",
        caution=cautions.RELEASE,
        asks=(
            Ask(name="seconds", label="Seconds from release to the stop", reads=Reads.NUMBER),
            turns_field(order),
        ),
    )


def scale(order: CardOrder) -> CardStep | None:
    """Read a spring scale."""
    if not is_sprung(order):
        return None
    return CardStep(
        id="scale",
        repeats=True,
        title="Hook a spring scale to the bar",
        instruction="At two heights: draw slowly down and read, let slowly up and read. At most {0}"
        " down. Where the hand has to lift, type it with a minus.",
        figures=(hand_force_limit(order),),
        reason="In the mean of down and up all friction cancels; two heights tell the spring's"
        " rate.",
        caution=cautions.RELEASE,
        asks=(
            *(ask for name, words, share in SCALE_HEIGHTS
              for ask in _scale_asks(order, name, words, share)),
            turns_field(order),
        ),
    )  # fmt: skip


def _scale_asks(order: CardOrder, name: str, words: str, share: float) -> tuple[Ask, ...]:
    usual = share_of_travel(order, share, words)
    return (
        Ask(name=f"{name}_raise", label="Raised by", reads=Reads.LENGTH,
            usual=usual, group=words),
        Ask(name=f"{name}_down", label="Drawn slowly down", reads=Reads.FORCE, signed=True,
            group=words),
        Ask(name=f"{name}_up", label="Let slowly up", reads=Reads.FORCE, signed=True, group=words),
    )  # fmt: skip


def release(order: CardOrder) -> CardStep | None:
    """Release it from the lowest lock."""
    rail = order.headrail
    if not is_sprung(order) or order.lift.lock is Lock.NONE or rail.release_travel.value <= ZERO:
        return None
    return CardStep(
        id="release",
        title="Release it from the lowest lock",
        instruction="From the lowest lock, {0} above fully down, pull on: the lock lets go within"
        " {1}, before the cloth is taut. Guide the bar up.",
        figures=(rail.lowest_lock_position, rail.release_travel),
        reason="A shade that cannot be let go when down cannot be used.",
        caution=f"{cautions.RELEASE} {cautions.LET_BACK}",
        asks=(
            choice("released", "Did it let go?", *YES_NO),
            Ask(name="pull", label="Further pull that it took", reads=Reads.LENGTH, optional=True),
        ),
    )


def level(order: CardOrder) -> CardStep:
    """Check the bar."""
    del order  # alike for every shade
    heights = ((name, words) for name, words, _ in LEVEL_HEIGHTS)
    return CardStep(
        id="level",
        title="Check the bar at four heights",
        instruction="How far is one end of the bar above the other? At most {0}. Level is 0.",
        figures=(BAR_LEVEL,),
        reason="Turns lift every column alike: a bar out of level is cord length or a climbed wrap,"
        " never turns.",
        caution=cautions.CORDS,
        asks=(
            *lengths(*heights),
            choice(
                "higher",
                "The higher end, seen from the room",
                ("right", "Right"),
                ("left", "Left"),
                optional=True,
            ),
        ),
    )  # fmt: skip


def hold(order: CardOrder) -> CardStep:
    """Leave it alone."""
    return CardStep(
        id="hold",
        repeats=True,
        title="Leave it alone at three heights",
        instruction="Put it at each height, mark the bar, leave it {0} minutes: it may move by {1}."
        " Overnight, {2}.",
        figures=(DRIFT_MINUTES, DRIFT, DRIFT_IN_A_DAY),
        reason="A lock that slips shows only with time.",
        asks=(
            *(ask for name, words, share in HOLDING_HEIGHTS
              for ask in _hold_asks(order, name, words, share)),
            Ask(
                name="day",
                label="Moved overnight, the greatest",
                reads=Reads.LENGTH,
                group="Overnight",
                optional=True,
            ),
            *((turns_field(order),) if is_sprung(order) else ()),
        ),
    )  # fmt: skip


def _hold_asks(order: CardOrder, name: str, words: str, share: float) -> tuple[Ask, ...]:
    usual = share_of_travel(order, share, words)
    return (
        Ask(name=f"{name}_raise", label="Raised by", reads=Reads.LENGTH,
            usual=usual, group=words),
        Ask(name=f"{name}_drift", label="Moved by", reads=Reads.LENGTH, group=words),
    )  # fmt: skip


def cycles(order: CardOrder) -> CardStep:
    """Run it up and down."""
    return CardStep(
        id="cycles",
        title="Run it up and down",
        instruction="{0} full cycles, a hand on the bar. No wrap climbs on another, nothing leaves"
        " its ring.",
        figures=(TEST_CYCLES,),
        reason="A fault of winding shows only after some cycles.",
        caution=cautions.LET_BACK if is_sprung(order) else cautions.CORDS,
        asks=(
            Ask(name="cycles", label="Full cycles", reads=Reads.NUMBER, usual=TEST_CYCLES),
            choice(
                "ran",
                "How it ran",
                ("clean", "Without a fault"),
                ("jumped", "A cord climbed, or left its ring"),
            ),
        ),
    )
