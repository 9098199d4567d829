"""What is known or chosen for the safety of children; None and UNKNOWN are asked for."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import Enum

from foldwright.core.quantity.length import Length


class Children(Enum):
    """Whether a small child can be where the shade hangs, living there or visiting."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "don't know"


class CordGuard(Enum):
    """What keeps the cords behind the shade from being drawn out.

    Held at every ring means a holder, or a close ladder tape, that lets the cord run when the
    shade is raised and lets nothing slide in from the bays beside when it is pulled sideways.
    """

    NONE = "none"
    SHROUD = "shroud"
    HELD = "held at every ring"
    OUT_OF_REACH = "sewn out of reach"
    BREAKAWAY = "breakaway"


class ChainDevice(Enum):
    """What keeps a chain loop from closing round a neck."""

    TENSIONER = "fixed tensioner"
    BREAKAWAY = "breakaway"
    NONE = "none"


@dataclass(frozen=True, kw_only=True, slots=True)
class SafetyChoices:
    """Child safety as specified, and what the label must say."""

    children: Children = Children.UNKNOWN
    made_on: date | None = None
    cord_guard: CordGuard = CordGuard.NONE
    chain_device: ChainDevice | None = None
    chain_loop_length: Length | None = None  # headrail to the bottom of the loop
    maker_name: str = ""
    maker_town: str = ""
    model_number: str = ""  # empty: the shade's tag
    importer: str = ""  # name and town, where the shade is imported
    installer_name: str = ""
    installer_contact: str = ""
