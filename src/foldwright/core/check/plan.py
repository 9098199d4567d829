"""One shade, all rooms: what went in and what came out."""

from __future__ import annotations

from dataclasses import dataclass, field

from foldwright.core.check.choices import Cutting, Delivery, FixingPlan
from foldwright.core.design.choices import Choices
from foldwright.core.design.layout import Layout
from foldwright.core.design.making import Making
from foldwright.core.facts.records import Chosen, Materials
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.choices import LiftChoices
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import AskedSize, Mount, Opening
from foldwright.core.rig.headrail import Headrail
from foldwright.core.safety.choices import SafetyChoices
from foldwright.core.safety.report import SafetyReport
from foldwright.core.weigh.load import Weights
from foldwright.core.why.finding import Finding, Override


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadeSpec:
    """One shade as asked for."""

    tag: str
    room: str = ""
    note: str = ""
    beside: str = ""  # the tag of the shade that it must line up with
    opening: Opening = field(default_factory=Opening)
    mount: Mount = field(default_factory=Mount)
    asked: AskedSize = field(default_factory=AskedSize)
    design: Choices = field(default_factory=Choices)
    materials: Materials = field(default_factory=Materials)
    lift: LiftChoices = field(default_factory=LiftChoices)
    safety: SafetyChoices = field(default_factory=SafetyChoices)
    cutting: Cutting = field(default_factory=Cutting)
    making: Making = field(default_factory=Making)
    fixing: FixingPlan = field(default_factory=FixingPlan)
    delivery: Delivery = field(default_factory=Delivery)
    overrides: tuple[Override, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadePlan:
    """One shade as computed; rooms that cannot answer yet are None and say why in findings."""

    spec: ShadeSpec
    chosen: Chosen = field(default_factory=Chosen)  # the records behind spec.materials
    size: FinishedSize | None = None
    layout: Layout | None = None
    weights: Weights | None = None
    balance: Balance | None = None
    headrail: Headrail | None = None
    safety: SafetyReport | None = None
    findings: tuple[Finding, ...] = ()
