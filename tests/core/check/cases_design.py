"""What must be typed in a design for each finding of the layout and the scale to fire."""

from __future__ import annotations

from tests.core.check.sound import Order

DESIGN = {
    "design.all-rows-tied": Order(
        of="london", typed={"asked.drop": "28", "design.tied_rows": 3, "design.row_count": 3}
    ),
    "design.asked-over-cap": Order(of="spring", typed={"design.largest_row_spacing": "12"}),
    "design.bar-in-a-swag": Order(of="relaxed", typed={"materials.bar": "Flat steel"}),
    "design.cloth-too-narrow": Order(
        of="spring", typed={"materials.face": "Ribbon"}, habits={"seam_allowance": "1"}
    ),
    "design.columns-crowded": Order(of="spring", typed={"design.column_count": 10}),
    "design.columns-too-far-apart": Order(of="spring", typed={"design.column_count": 3}),
    "design.dip-too-deep": Order(of="relaxed", typed={"design.dip": "20"}),
    "design.drop-too-short": Order(of="looped", typed={"asked.drop": "5 1/2", "design.skirt": "2"}),
    "design.edge-too-near": Order(of="spring", typed={"design.edge_distance": "1 1/2"}),
    "design.face-missing": Order(of="spring", typed={"materials.face": None}),
    "design.fold-depth": Order(of="spring", typed={"design.row_count": 12}),
    "design.folds-sag": Order(
        of="spring", typed={"design.largest_pitch": "18", "design.column_count": 3}
    ),
    "design.head-too-short": Order(of="spring", typed={"design.head_allowance": "3"}),
    "design.headrail-stands-out": Order(of="spring", typed={"opening.depth_head": "1 1/2"}),
    "design.lock-without-repeat": Order(of="spring", typed={"design.alike_after": 2}),
    "design.loop-below-hem": Order(of="looped", typed={"design.skirt": "1/2"}),
    "design.loop-too-long": Order(
        of="looped",
        typed={"design.row_count": 6, "design.fullness": 2.0, "design.largest_row_spacing": None},
    ),
    "design.middle-too-wide": Order(of="wide", typed={"design.middle_piece": "60"}),
    "design.scallops-too-deep": Order(
        of="austrian", typed={"asked.drop": "12", "design.scallop": "20"}
    ),
    "design.pockets-without-lining": Order(
        of="spring",
        typed={
            "materials.lining": None,
            "design.rods": "at rows",
            "design.rod_pocket": "in the lining",
            "materials.rod": "Glass-fibre rod 4",
        },
    ),
    "design.rod-pockets": Order(
        of="looped",
        typed={
            "design.rods": "at rows",
            "design.rod_pocket": "folded from all layers, to the back",
            "materials.rod": "Glass-fibre rod 4",
        },
    ),
    "design.pattern-unlocked": Order(of="print", typed={"design.alike_after": 3}),
    "design.pleats-too-small": Order(
        of="london", typed={"design.pleat_allowance": "1/2", "design.dip": "8"}
    ),
    "design.pouf-too-long": Order(of="london", typed={"asked.drop": "24", "design.pouf": "39"}),
    "design.rod-missing": Order(of="spring", typed={"design.rods": "at rows"}),
    "design.rods-in-a-swag": Order(
        of="relaxed", typed={"design.rods": "at rows", "materials.rod": "Glass-fibre rod 4"}
    ),
    "design.rods-in-loops": Order(
        of="looped", typed={"design.rods": "mid-fold", "materials.rod": "Glass-fibre rod 4"}
    ),
    "design.row-in-pocket": Order(of="looped", typed={"design.skirt": "0"}),
    "design.rows-over-asked": Order(
        of="spring", typed={"design.row_count": 7, "design.largest_row_spacing": "6"}
    ),
    "design.rows-too-far-apart": Order(of="spring", typed={"design.row_count": 4}),
    "design.rows-too-many": Order(of="looped", typed={"asked.drop": "14", "design.row_count": 60}),
    "design.seam-on-column": Order(of="wide", typed={"design.edge_distance": "15"}),
    "design.sides-draw-in": Order(
        of="relaxed", typed={"design.widened_hem": None, "design.dip": "8"}
    ),
    "design.stack-on-glass": Order(of="spring", typed={"opening.glass_below_head": "2"}),
    "design.stack-over-allowed": Order(
        of="spring",
        typed={"opening.glass_below_head": "2", "design.stack_allowed_on_glass": "1"},
    ),
    "design.stack-stands-out": Order(
        of="spring", typed={"materials.interlining": "Heavy bump", "opening.depth_head": "2 3/4"}
    ),
    "design.stiffness-unknown": Order(
        of="spring",
        typed={
            "materials.face": "Half drop",
            "design.largest_pitch": "14",
            "design.column_count": 4,
        },
    ),
    "design.tapered-gap": Order(of="relaxed", typed={"design.widened_hem": None}),
    "design.too-narrow": Order(of="spring", typed={"design.edge_distance": "18"}),
    "weigh.bound": Order(of="relaxed"),
    "weigh.bar": Order(of="spring", typed={"materials.bar": None}),
    "weigh.stiff": Order(of="spring", typed={"materials.face": "Board cloth"}),
    "weigh.stiffness": Order(of="spring", typed={"materials.interlining": "Unknown bump"}),
    "weigh.swatch": Order(of="spring", typed={"materials.lining": "Sateen lining, ivory"}),
}
