"""What must be typed in an order for each finding of the last look over it to fire."""

from __future__ import annotations

from typing import Any

from tests.core.check.sound import Order

PRINT, TWILL, WIDE = "Weighed print", "Playroom twill, sea", "Harbour linen, slate"


def roll(cloth: str, name: str = "R1", **more: Any) -> dict[str, Any]:
    """Give a roll in hand."""
    return {"name": name, "cloth": cloth, **more}


CHECK = {
    "check.band-hidden": Order(of="spring", typed={"making.band_height": "2"}),
    "check.band-off-shade": Order(of="spring", typed={"making.side_band_width": "30"}),
    "check.bar-at-handle": Order(
        of="spring",
        typed={"opening.obstruction_above_sill": "1", "opening.obstruction_projection": "1/2"},
    ),
    "check.bar-out-of-reach": Order(of="spring", typed={"opening.floor_to_head": "100"}),
    "check.bar-too-long": Order(of="spring", habits={"bar_less_than_width": "1/4"}),
    "check.beside-unmeasured": Order(
        of="spring", typed={"beside": "B0"}, before=({"opening.floor_to_head": None},)
    ),
    "check.blackout-holes": Order(
        of="spring", typed={"materials.lining": "Blackout lining, three coats"}
    ),
    "check.cloth-off-square": Order(of="spring", rolls=(roll(TWILL, bow_or_skew="3/4"),)),
    "check.column-on-band": Order(
        of="spring", typed={"making.side_band_width": "2", "design.edge_distance": "2"}
    ),
    "check.cords-unequal": Order(of="spring", typed={"lift.cords_apart": "1/8"}),
    "check.dark-overlap-left": Order(
        of="outside",
        typed={"materials.lining": "Blackout lining, three coats", "mount.overlap_left": "2"},
    ),
    "check.dark-overlap-right": Order(
        of="outside",
        typed={"materials.lining": "Blackout lining, three coats", "mount.overlap_right": "2"},
    ),
    "check.does-not-pass": Order(of="spring", typed={"delivery.longest_passage": "35"}),
    "check.fixing-near-end": Order(of="spring", typed={"fixing.from_end": "1/2"}),
    "check.fixing-unrated": Order(of="spring", typed={"opening.substrate": "masonry"}),
    "check.fixings-overloaded": Order(
        of="spring", typed={"materials.fixing": "Feeble anchor", "opening.substrate": "steel stud"}
    ),
    "check.fixings-unchosen": Order(of="spring", typed={"materials.fixing": None}),
    "check.flaps-without-returns": Order(of="outside", typed={"making.return_flaps": True}),
    "check.half-drop": Order(of="wide", typed={"materials.face": "Half drop"}),
    "check.hems-differ": Order(
        of="spring", typed={"beside": "B0"}, before=({"opening.floor_to_head": "80 1/2"},)
    ),
    "check.interlining-bare": Order(
        of="spring",
        typed={"materials.lining": None, "materials.interlining": "Brushed interlining"},
    ),
    "check.interlining-in-hem": Order(
        of="spring",
        typed={
            "materials.interlining": "Brushed interlining",
            "making.interlining_in_hem": True,
        },
    ),
    "check.lining-shows": Order(of="spring", habits={"lining_less_than_width": "1/8"}),
    "check.lots-mixed": Order(
        of="spring",
        typed={"cutting.roll": "R1"},
        rolls=(roll(TWILL, lot="1"), roll(TWILL, "R2", lot="2")),
        before=({"cutting.roll": "R2"},),
    ),
    "check.motif-cut": Order(
        of="print", typed={"cutting.motif_height": "8", "cutting.motif_above_hem": "2"}
    ),
    "check.motif-ends-mixed": Order(
        of="print",
        typed={"cutting.pattern_along": "from the head"},
        before=({"cutting.pattern_along": "from the hem"},),
    ),
    "check.motif-on-fold": Order(
        of="print", typed={"cutting.motif_height": "4", "cutting.motif_above_hem": "5"}
    ),
    "check.motifs-differ": Order(
        of="print",
        typed={"cutting.motif_above_hem": "5"},
        before=({"cutting.motif_above_hem": "8"},),
    ),
    "check.naps-mixed": Order(
        of="print", typed={"cutting.nap": "up"}, before=({"cutting.nap": "down"},)
    ),
    "check.no-screw": Order(of="spring", typed={"opening.substrate": "tile"}),
    "check.outlet-side": Order(of="wide", typed={"opening.outlet_side": "left"}),
    "check.override-idle": Order(
        of="spring",
        overrides=({"finding": "check.no-screw", "name": "the maker", "reason": "It is glued."},),
    ),
    "check.parcel-short": Order(of="spring", typed={"delivery.box_length": "38"}),
    "check.repeat-differs": Order(of="print", rolls=(roll(PRINT, vertical_repeat="19 3/4"),)),
    "check.rod-too-long": Order(
        of="spring",
        typed={"design.rods": "at rows", "materials.rod": "Glass-fibre rod 4"},
        habits={"rod_less_than_width": "1/4"},
    ),
    "check.roll-of-another-cloth": Order(
        of="spring", typed={"cutting.roll": "R1"}, rolls=(roll(WIDE),)
    ),
    "check.rings-beyond-turns": Order(
        of="spring",
        typed={
            "materials.lining": "Blackout lining, three coats",
            "making.holes": "rings in the side turns only",
        },
    ),
    "check.roll-short": Order(of="spring", rolls=(roll(TWILL, length="30"),)),
    "check.roll-too-narrow": Order(of="spring", rolls=(roll(TWILL, usable_width="36"),)),
    "check.row-on-band": Order(
        of="spring", typed={"making.band_height": "2", "making.band_above_hem": "4"}
    ),
    "check.rows-differ": Order(
        of="spring", typed={"beside": "B0", "design.row_count": 8}, before=({},)
    ),
    "check.seam-at-hardware": Order(
        of="wide",
        typed={
            "asked.width": "62 3/4",
            "asked.given_by": "the client",
            "materials.bracket": "Long bracket",
        },
    ),
    "check.shrinkage-untested": Order(of="print", typed={"design.shrinkage": None}),
    "check.shrinks-apart": Order(
        of="spring", typed={"design.shrinkage": 0.03, "cutting.lining_shrinkage": 0.01}
    ),
    "check.stack-in-sash": Order(of="spring", typed={"opening.inward_sash_below_head": "5"}),
    "check.too-many-flaws": Order(of="spring", rolls=(roll(TWILL, length="400", flaws=4),)),
    "check.too-thick-to-sew": Order(
        of="spring",
        typed={"materials.face": "Board cloth"},
    ),
    "check.tape-against-wall": Order(
        of="outside", typed={"making.top": "hook and loop", "mount.board_edge": "window"}
    ),
    "check.tape-overloaded": Order(
        of="spring", typed={"making.top": "hook and loop"}, habits={"hand_force_limit_n": 90}
    ),
    "check.tape-wider-than-board": Order(
        of="spring", typed={"making.top": "hook and loop", "materials.board": "Lath"}
    ),
    "check.turned-pattern": Order(of="print", typed={"cutting.turned": True}),
    "check.turned-too-long": Order(of="spring", typed={"cutting.turned": True}),
    "check.valance-kind": Order(of="spring", typed={"making.valance_depth": "8"}),
    "check.valance-short": Order(
        of="spring", typed={"making.valance": "attached", "making.valance_depth": "2"}
    ),
    "check.valance-stands-out": Order(
        of="spring",
        typed={
            "making.valance": "separate",
            "opening.depth_head": "4 1/4",
            "opening.depth_sill": "4 1/4",
        },
    ),
    "check.valance-without-returns": Order(of="outside", typed={"making.valance": "attached"}),
}
