"""An invented shade through all rooms up to the lift, and a small shop to choose from."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np
from tests.core.layouts import HABITS, changed, finding, laid_out, sized

from foldwright.core.design.choices import Choices
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import (
    Bar,
    Board,
    Bracket,
    Cloth,
    Clutch,
    Cord,
    Materials,
    Motor,
    ShopList,
    Spring,
    Tape,
    Tube,
    choose,
)
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.choices import Brake, LiftChoices, LiftKind, Lock
from foldwright.core.lift.lifting import lift_shade
from foldwright.core.lift.order import LiftOrder
from foldwright.core.quantity.length import Length
from foldwright.core.weigh.weighing import weigh_shade
from foldwright.core.why.answer import Answer
from foldwright.core.why.finding import Finding, Remedy

mm = Length.mm

DRAWS = np.random.default_rng(20260504).random((1000, 16))


def cloth(name: str, grams: int) -> Cloth:
    return Cloth(
        name=name, areal_mass_kg_m2=grams / 1000, usable_width=mm(1400), areal_mass_spread=0.05
    )


def tube(name: str, outside: int) -> Tube:
    return Tube(
        name=name,
        outside=mm(outside),
        wall=mm("1.2"),
        stiffness_pa=68.9e9,
        line_mass_kg_m=0.0098 * outside,
    )


def bar(name: str, kg_m: float) -> Bar:
    return Bar(name=name, line_mass_kg_m=kg_m, width=mm(20), thickness=mm(3), stiffness_pa=200e9)


def spring(name: str, rate: float, turns: float, **more: object) -> Spring:
    plain = Spring(
        name=name, rate_n_m_turn=rate, greatest_turns=turns, rate_spread=0.05, body_length=mm(500)
    )
    return replace(plain, **more)  # type: ignore[arg-type]


def named(*records: object) -> dict[str, object]:
    return {record.name: record for record in records}  # type: ignore[attr-defined]


SPRINGS = (
    spring("soft", 0.0225, 36),
    spring("soft, braked", 0.0225, 36, speed_brake_n_m_s=0.012),
    spring("middle", 0.034, 26),
    spring("stiff", 0.08, 14),
    spring("weak", 0.008, 26),
    spring("long", 0.0225, 36, body_length=mm(1400)),
    spring("thick", 0.0225, 36, least_tube_inside=mm(45)),
)

SHOP = ShopList(
    cloths=named(cloth("linen", 280), cloth("sateen", 160), cloth("voile", 60), cloth("bump", 300)),  # type: ignore[arg-type]
    tubes=named(tube("tube 25", 25), tube("tube 38", 38), tube("tube 50", 50)),  # type: ignore[arg-type]
    cords=named(Cord(name="cord", diameter=mm("1.4"))),  # type: ignore[arg-type]
    tapes=named(Tape(name="tape", thickness=mm("0.4"), width=mm(16))),  # type: ignore[arg-type]
    springs=named(*SPRINGS),  # type: ignore[arg-type]
    clutches=named(  # type: ignore[arg-type]
        Clutch(
            name="plain clutch",
            gear_ratio=1.0,
            efficiency=0.7,
            sprocket_radius=mm(16),
            greatest_torque_n_m=3.0,
        ),
        Clutch(
            name="geared clutch",
            gear_ratio=2.0,
            efficiency=0.7,
            sprocket_radius=mm(16),
            greatest_torque_n_m=5.0,
        ),
    ),
    motors=named(  # type: ignore[arg-type]
        Motor(
            name="small motor",
            torque_n_m=0.3,
            brake_torque_n_m=0.2,
            speed_rpm=28,
            limit_turns=10,
            battery=True,
        ),
        Motor(name="motor", torque_n_m=1.1, brake_torque_n_m=1.1, speed_rpm=28, limit_turns=40),
    ),
    bars=named(
        bar("light bar", 0.25), bar("bar 0.5", 0.5), bar("bar 0.8", 0.8), bar("bar 1.4", 1.4)
    ),  # type: ignore[arg-type]
    boards=named(  # type: ignore[arg-type]
        Board(name="pine", thickness=mm(19), depth=mm(50), stiffness_pa=8e9, density_kg_m3=450)
    ),
    brackets=named(  # type: ignore[arg-type]
        Bracket(
            name="bracket",
            tube_deduction=mm(34),
            width=mm(14),
            inset=mm(13),
            tube_centre_below_board=mm(27),
            height=mm(50),
            depth=mm(50),
        )
    ),
)

MATERIALS = Materials(
    face="linen",
    lining="sateen",
    bar="light bar",
    board="pine",
    bracket="bracket",
    tube="tube 38",
    cord="cord",
)

CHOICES = LiftChoices(kind=LiftKind.SPRING, spring="middle", lock=Lock.ONE_WAY, brake=Brake.NONE)

# Friction that a shop has measured on its own rig: far narrower than the house's ranges.
MEASURED = {
    "constant_friction_n_m": (0.03, 0.02, 0.04),
    "load_friction": (0.12, 0.10, 0.14),
    "spring_hysteresis": (0.05, 0.04, 0.06),
}


def measured_habits() -> Habits:
    return replace(
        HABITS,
        **{
            name: replace(getattr(HABITS, name), value=value, low=low, high=high)
            for name, (value, low, high) in MEASURED.items()
        },
    )


@dataclass(frozen=True, kw_only=True)
class Shade:
    """One shade as asked for: what a test changes it names."""

    width: str = "47 1/4"
    drop: str = "63"
    design: Choices = field(default_factory=Choices)
    materials: Materials = MATERIALS
    lift: LiftChoices = CHOICES
    shop: ShopList = SHOP
    habits: Habits = field(default_factory=measured_habits)

    @property
    def order(self) -> LiftOrder:
        """Take the shade through the rooms up to the lift, afresh."""
        chosen = choose(self.materials, self.shop)
        size = sized(self.width, self.drop)
        layout = laid_out(self.design, size, chosen, habits=self.habits)
        weights = weigh_shade(layout, size, chosen, self.habits).result
        assert weights is not None
        return LiftOrder(
            choices=self.lift,
            weights=weights,
            layout=layout,
            size=size,
            chosen=chosen,
            shop=self.shop,
            habits=self.habits,
            draws=DRAWS,
        )

    @property
    def answer(self) -> Answer[Balance]:
        order = self.order
        return lift_shade(
            order.choices,
            order.weights,
            order.layout,
            order.size,
            order.chosen,
            order.shop,
            order.habits,
            order.draws,
        )

    @property
    def balance(self) -> Balance:
        result = self.answer.result
        assert result is not None
        return result

    def finding(self, name: str) -> Finding:
        return finding(self.answer.findings, name)

    def ids(self) -> set[str]:
        return {each.id for each in self.answer.findings}

    def applied(self, remedy: Remedy) -> Shade:
        """Type the remedy's changes into the job, as text."""
        return replace(
            self,
            materials=changed(self.materials, "materials", remedy.changes),
            lift=changed(self.lift, "lift", remedy.changes),
        )


def lifted(**changes: object) -> Shade:
    """Give the shade with its lift changed."""
    return Shade(lift=replace(CHOICES, **changes))  # type: ignore[arg-type]


def made_of(**changes: str) -> Shade:
    return Shade(materials=replace(MATERIALS, **changes))
