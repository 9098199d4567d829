"""A shade as a chain of rigid hinged links in a general-purpose physics engine (MuJoCo).

Each panel of cloth is a chain of links in a vertical plane; ring rows are carriages on
vertical slides that touch at the stacked pitch; the lowest carriage is raised slowly
and the force on it is read. Nothing of the project's load formulas is used here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import acos, ceil

import mujoco
import numpy as np
from numpy.typing import NDArray

from foldwright.core.weigh.load import PanelLoad

Samples = NDArray[np.float64]

GRAVITY = 9.80665
SIDEWAYS = 0.01  # m/s2: tells the folds which way to open
STEP_S = 0.0005
SETTLING_S = 2.0


@dataclass(frozen=True, kw_only=True)
class Readings:
    """The force on the lowest carriage, averaged over short pieces of its raise."""

    raise_m: Samples
    force_n: Samples


@dataclass(frozen=True, kw_only=True)
class Panel:
    """One panel of links: its cloth length, its height when down, its links, its lumps."""

    index: int
    cloth_m: float
    height_m: float
    links: int
    line_mass_kg_m: float
    stiffness_n_m: float  # of each hinge between two links, per radian
    lumps: tuple[tuple[float, float], ...]  # arc m, mass kg

    @property
    def link_m(self) -> float:
        return self.cloth_m / self.links

    def start_angles(self) -> list[float]:
        """Give the hinge angles of a start that closes: straight up, or a triangle of links."""
        down = ceil(round((self.cloth_m - self.height_m) / 2 / self.link_m, 9))
        if down == 0:
            return [0.0] * self.links
        short, long = down * self.link_m, (self.links - down) * self.link_m
        lean_short = _corner(short, self.height_m, long)
        lean_long = _corner(long, self.height_m, short)
        turns = [0.0] * self.links
        turns[0] = lean_short
        turns[down] = -lean_short - lean_long
        return turns

    def xml(self) -> str:
        """Give the nested bodies of the chain, from the carriage outwards."""
        opening = [self._link(number) for number in range(self.links)]
        return "".join(opening) + "</body>" * self.links

    def _link(self, number: int) -> str:
        length = self.link_m
        lift = 0.0 if number == 0 else length
        mass = self.line_mass_kg_m * length
        inertia = mass * length**2 / 12
        lumps = "".join(
            _lump(arc - number * length, kg)
            for arc, kg in self.lumps
            if number == min(self.links - 1, int(arc / length))
        )
        stiffness = 0.0 if number == 0 else self.stiffness_n_m
        end = f'<site name="end{self.index}" pos="0 0 {length}"/>'
        return (
            f'<body name="p{self.index}_{number}" pos="0 0 {lift}">'
            f'<joint name="h{self.index}_{number}" type="hinge" axis="0 1 0"'
            f' stiffness="{stiffness}"/>'
            f'<inertial mass="{mass}" pos="0 0 {length / 2}"'
            f' diaginertia="{inertia} {inertia} {inertia}"/>'
            + lumps
            + (end if number == self.links - 1 else "")
        )


def _lump(along_m: float, mass_kg: float) -> str:
    tiny = 1e-9
    return (
        f'<body pos="0 0 {along_m}"><inertial mass="{mass_kg}" pos="0 0 0"'
        f' diaginertia="{tiny} {tiny} {tiny}"/></body>'
    )


def _corner(beside: float, base: float, opposite: float) -> float:
    """Give the angle of a triangle between two sides, from the third."""
    cosine = (beside**2 + base**2 - opposite**2) / (2 * beside * base)
    return acos(min(1.0, max(-1.0, cosine)))


def panels(panel: PanelLoad, links: int) -> list[Panel]:
    """Cut a shade into chains of links, every panel with the same number of links."""
    heights = (*panel.row_spacings_m, panel.top_panel_m)
    return [
        Panel(
            index=index,
            cloth_m=panel.fullness * height,
            height_m=height,
            links=links,
            line_mass_kg_m=panel.cloth_n_m / GRAVITY,
            stiffness_n_m=_hinge_stiffness(panel, panel.fullness * height / links),
            lumps=tuple(
                (lump.arc_m, lump.weight_n / GRAVITY) for lump in panel.lumps if lump.panel == index
            ),
        )
        for index, height in enumerate(heights)
    ]


def _hinge_stiffness(panel: PanelLoad, link_m: float) -> float:
    """Share the cloth's rigidity, weight per length times bending length cubed, among hinges."""
    return panel.cloth_n_m * panel.bending_length_m**3 / link_m


PLACED = '<position joint="row0" kp="20000" kv="300"/>'
PULLED = '<motor joint="row0"/>'


def shade_xml(panel: PanelLoad, links: int, drive: str = PLACED, turning_kg: float = 0.0) -> str:
    """Give the model of a whole shade, fully down; what turns rides along with its lowest row."""
    chains = panels(panel, links)
    places = np.concatenate(([0.0], np.cumsum([chain.height_m for chain in chains])))
    lowest_n = panel.bar_n + panel.cloth_n_m * panel.skirt_cloth_m + panel.rows_n[0]
    carriages = "".join(
        _carriage(chain, place, weight_n / GRAVITY, 0.0 if chain.index else turning_kg)
        for chain, place, weight_n in zip(
            chains, places[:-1], (lowest_n, *panel.rows_n[1:]), strict=True
        )
    )
    return f"""<mujoco>
      <option timestep="{STEP_S}" integrator="implicitfast"
        gravity="{SIDEWAYS} 0 {-GRAVITY}"/>
      <default><joint damping="2e-5"/><equality solref="0.002 1"/>
        <tendon solreflimit="0.004 1"/></default>
      <worldbody>
        <site name="seat{len(chains)}" pos="0 0 {places[-1]}"/>
        {carriages}
      </worldbody>
      <equality>{"".join(_seat(chain) for chain in chains)}</equality>
      <tendon>{"".join(_touch(chain, panel.stacked_pitch_m) for chain in chains[:-1])}
        {_backing(chains[-1])}</tendon>
      <actuator>{drive}</actuator>
    </mujoco>"""


def _carriage(chain: Panel, place: float, mass: float, turning_kg: float) -> str:
    inertia = 1e-6
    return (
        f'<body pos="0 0 {place}"><joint name="row{chain.index}" type="slide" axis="0 0 1"'
        f' damping="0.01" armature="{turning_kg}"/><site name="seat{chain.index}"/>'
        f'<inertial mass="{max(mass, 1e-4)}" pos="0 0 0"'
        f' diaginertia="{inertia} {inertia} {inertia}"/>{chain.xml()}</body>'
    )


def _seat(chain: Panel) -> str:
    return f'<connect site1="end{chain.index}" site2="seat{chain.index + 1}"/>'


def _touch(chain: Panel, pitch: float) -> str:
    """Keep two rows no nearer than the pitch, and no farther than the backing allows."""
    return (
        f'<fixed limited="true" range="{pitch - chain.height_m} 0">'
        f'<joint joint="row{chain.index}" coef="-1"/>'
        f'<joint joint="row{chain.index + 1}" coef="1"/></fixed>'
    )


def _backing(top: Panel) -> str:
    """Hold the top row to the fixing, as the weightless backing does."""
    return (
        f'<fixed limited="true" range="0 {top.height_m}">'
        f'<joint joint="row{top.index}" coef="1"/></fixed>'
    )


def raise_slowly(
    panel: PanelLoad, *, speed_m_s: float, links: int = 10, piece_m: float = 0.002
) -> Readings:
    """Raise a shade at a steady speed and read the force over short pieces of the raise."""
    model = mujoco.MjModel.from_xml_string(shade_xml(panel, links))
    data = mujoco.MjData(model)
    _fold(model, data, panels(panel, links))
    _run(model, data, round(SETTLING_S / STEP_S))
    steps = round(piece_m / speed_m_s / STEP_S)
    pieces = int(panel.travel_m / piece_m)
    read = [_piece(model, data, speed_m_s, steps) for _ in range(pieces)]
    raises, forces = np.array(read).T
    return Readings(raise_m=raises, force_n=forces)


def _fold(model: mujoco.MjModel, data: mujoco.MjData, chains: list[Panel]) -> None:
    for chain in chains:
        for number, angle in enumerate(chain.start_angles()):
            data.joint(f"h{chain.index}_{number}").qpos[0] = angle
    mujoco.mj_forward(model, data)


def _run(model: mujoco.MjModel, data: mujoco.MjData, steps: int) -> None:
    mujoco.mj_step(model, data, steps)


def _piece(
    model: mujoco.MjModel, data: mujoco.MjData, speed_m_s: float, steps: int
) -> tuple[float, float]:
    raises, forces = np.empty(steps), np.empty(steps)
    for step in range(steps):
        data.ctrl[0] += speed_m_s * STEP_S
        mujoco.mj_step(model, data)
        raises[step], forces[step] = data.qpos[0], data.actuator_force[0]
    return float(raises.mean()), float(forces.mean())


@dataclass(frozen=True, kw_only=True)
class Released:
    """How a shade went that was let go: samples of every step until it stood at the stop."""

    time_s: Samples
    raise_m: Samples
    speed_m_s: Samples


def let_go(
    panel: PanelLoad,
    pull: Callable[[float, float], float],
    *,
    turning_kg: float,
    links: int = 10,
    longest_s: float = 20.0,
) -> Released:
    """Let a shade go under a pull that depends on its raise and speed, until it is at the stop."""
    model = mujoco.MjModel.from_xml_string(shade_xml(panel, links, PULLED, turning_kg))
    data = mujoco.MjData(model)
    _fold(model, data, panels(panel, links))
    _run(model, data, round(SETTLING_S / STEP_S))
    samples = [(0.0, float(data.qpos[0]), 0.0)]
    for step in range(1, round(longest_s / STEP_S)):
        data.ctrl[0] = pull(float(data.qpos[0]), float(data.qvel[0]))
        mujoco.mj_step(model, data)
        samples.append((step * STEP_S, float(data.qpos[0]), float(data.qvel[0])))
        if data.qpos[0] >= panel.travel_m:
            break
    times, raises, speeds = np.array(samples).T
    return Released(time_s=times, raise_m=raises, speed_m_s=speeds)
