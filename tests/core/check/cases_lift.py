"""What must be chosen of lift, headrail and safety for each of their findings to fire."""

from __future__ import annotations

from tests.core.check.sound import Order

EVERYWHERE = ("Canada", "United States", "Europe and United Kingdom", "Australia")
NO_BRAKE = {"lift.brake": "none"}

LIFT = {
    "lift.accessible": Order(of="spring"),
    "lift.chain-loop": Order(of="chain"),
    "lift.lock-two-way": Order(of="spring"),
    "lift.motor-mains": Order(of="wide"),
    "lift.wound-spring": Order(of="spring"),
    "rig.gap-when-locked": Order(of="spring"),
    "safety.test": Order(of="spring"),
    "lift.brake-drag": Order(of="spring", typed={"lift.spring": "Willow 32"}),
    "lift.brake-none": Order(of="spring", typed=NO_BRAKE),
    "lift.brake-unknown": Order(of="spring", typed={"lift.brake": "don't know"}),
    "lift.chain-pull": Order(of="chain", typed={"lift.hand_force_limit_n": "1 N"}),
    "lift.clutch": Order(of="chain", typed={"lift.clutch": None}),
    "lift.clutch-too-weak": Order(of="chain", typed={"lift.clutch": "Weak clutch"}),
    "lift.cord": Order(of="spring", typed={"materials.cord": None}),
    "lift.hand-force": Order(
        of="spring", typed={"lift.hand_force_limit_n": "34 N", "lift.turns": 24}
    ),
    "lift.kind": Order(of="spring", typed={"lift.kind": None}),
    "lift.load-ratio": Order(of="spring", typed={"materials.bar": "Light flat"}),
    "lift.lock-none": Order(of="spring", typed={"lift.lock": "none"}),
    "lift.lock-unknown": Order(of="spring", typed={"lift.lock": "don't know"}),
    "lift.motor": Order(of="wide", typed={"lift.motor": None}),
    "lift.motor-does-not-fit": Order(of="wide", typed={"lift.motor": "Thick motor"}),
    "lift.motor-too-weak": Order(of="wide", typed={"lift.motor": "Weak motor"}),
    "lift.narrow": Order(of="spring", typed={"lift.hand_force_limit_n": "32 N"}),
    "lift.nothing-fits": Order(of="spring", typed={"lift.spring": "Wound wire 1.9"}),
    "lift.sag-board": Order(of="wide", typed={"materials.board": "Lath"}),
    "lift.sag-bottom-bar": Order(of="spring", typed={"materials.bar": "Soft bar"}),
    "lift.spring": Order(of="spring", typed={"lift.spring": None}),
    "lift.spring-contradicts": Order(of="spring", typed={"lift.spring": "Says two things"}),
    "lift.spring-does-not-go-in": Order(of="spring", typed={"lift.spring": "Long"}),
    "lift.spring-sheet": Order(of="spring", typed={"lift.spring": "Rowan 20 N"}),
    "lift.spring-strength": Order(of="spring", typed={"lift.spring": "No limit"}),
    "lift.spring-too-strong": Order(
        of="spring", typed={"lift.spring": "Too strong", "lift.hand_force_limit_n": "400 N"}
    ),
    "lift.tube": Order(of="spring", typed={"materials.tube": None}),
    "lift.turns-outside": Order(of="spring", typed={"lift.turns": 1}),
    "lift.turns-unsure": Order(of="spring", typed={"lift.turns": 10}),
    "lift.wire-strength": Order(of="spring", typed={"lift.spring": "Wound wire 2.1"}),
    "rig.brackets-overloaded": Order(of="spring", typed={"materials.bracket": "Weak bracket"}),
    "rig.choose-bracket": Order(of="spring", typed={"materials.bracket": None}),
    "rig.clips-nearer-than-usual": Order(of="spring", typed={"design.column_count": 8}),
    "rig.cloth-and-cords-apart": Order(of="spring", typed={"mount.cord_side": "window"}),
    "rig.columns-too-close": Order(
        of="spring", typed={"materials.cord": "Thick cord", "design.column_count": 12}
    ),
    "rig.cradle": Order(
        of="wide", typed={"materials.tube": "Thin tube", "lift.motor": "Long motor"}
    ),
    "rig.drop-beyond-tube": Order(of="spring", typed={"materials.cord": "Thick cord"}),
    "rig.rings-at-rail": Order(of="spring", habits={"head_allowance_beyond_rail": "0"}),
    "rig.safety-wraps": Order(of="spring", habits={"safety_wraps": 2}),
    "rig.shorter-when-locked": Order(
        of="spring", typed={"mount.place": "outside", "mount.height_rule": None, "mount.below": "2"}
    ),
    "rig.sill-in-release": Order(
        of="spring", typed={"asked.drop": "55", "asked.given_by": "the client"}
    ),
    "rig.spring-end": Order(
        of="spring", typed={"lift.spring": "Right hand", "mount.control_side": "right"}
    ),
    "rig.spring-hand": Order(of="spring", typed={"lift.spring": "Says middle"}),
    "rig.tube-fouls-board": Order(of="spring", typed={"materials.bracket": "High bracket"}),
    "rig.tube-too-short": Order(of="spring", typed={"lift.spring": "Long"}),
    "rig.wraps-at-bracket": Order(of="spring", typed={"materials.bracket": "Long bracket"}),
    "safety.chain-device": Order(of="chain", typed={"safety.chain_device": None}),
    "safety.chain-length": Order(
        of="chain", typed={"safety.chain_loop_length": None}, markets=("Europe and United Kingdom",)
    ),
    "safety.chain-loose": Order(of="chain", typed={"safety.chain_device": "none"}),
    "safety.chain-near-children": Order(of="chain", typed={"safety.children": "yes"}),
    "safety.chain-too-long": Order(
        of="chain",
        typed={"safety.chain_loop_length": "60"},
        markets=("Europe and United Kingdom",),
    ),
    "safety.children": Order(of="chain", typed={"safety.children": "don't know"}),
    "safety.cord-drawn-out": Order(of="spring", typed={"safety.cord_guard": "none"}),
    "safety.cord-too-long": Order(
        of="spring", typed={"safety.cord_guard": "none", "design.row_count": 5}, markets=("Canada",)
    ),
    "safety.label": Order(of="spring", typed={"safety.maker_name": None}),
    "safety.no-chain-allowed": Order(
        of="chain",
        typed={"safety.chain_device": "breakaway", "opening.floor_to_head": "65"},
        markets=("Australia",),
    ),
}
