"""The steps of the sewing that the layers behind the face ask for."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import RodPocket
from foldwright.core.design.layout import LayerCut, Layout, PocketPlan, SewingStep
from foldwright.core.design.linings import SECOND_LAYER, blackout_cloth
from foldwright.core.design.making import HoleCover
from foldwright.core.design.order import Order
from foldwright.core.facts.panel_limits import LIGHT_TEST
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived


def lining_steps(order: Order, layout: Layout) -> Iterator[SewingStep]:
    """Tell how the layers are joined and laid in, before the sides are turned over them.

    Takes: the order; its layout.

    Gives: the steps, the layer next to the face first.

    Source: common practice.
    """
    cuts = {cut.layer: cut for cut in layout.cuts}
    for layer in ("interlining", SECOND_LAYER, "lining"):
        if layer in cuts:
            yield from _join(cuts[layer])
    if "interlining" in cuts:
        yield _interlining(cuts["interlining"])
    yield from _cover(layout)
    if layout.pockets is not None and layout.pockets.place is RodPocket.LINING:
        yield from _carrying_the_rods(order, layout, layout.pockets)
    elif "lining" in cuts:
        yield _lining(order, cuts["lining"])


def _carrying_the_rods(order: Order, layout: Layout, pockets: PocketPlan) -> Iterator[SewingStep]:
    """Make the lining up by itself, and tack the face to its pockets."""
    yield SewingStep(
        title="Sew the pockets of the lining",
        instruction="Hem the lining's sides, {0} at each. From its bottom edge mark the middle of"
        " {1} pockets, the lowest at {2}; fold along each mark and stitch {3} from the fold. Then"
        " trim the lining square.",
        figures=(
            order.habits.pocket_lining_hem,
            pockets.count,
            pockets.marks[0],
            _half(pockets.allowance),
        ),
    )
    yield SewingStep(
        title="Lay the lining on",
        instruction="Lay it on the back of the face, bottom edges together and its pockets towards"
        " you, {0} short of the width in all. Pin along every pocket, and tack face and lining"
        " together there at each of {1} columns.",
        figures=(order.habits.pocket_lining_less, layout.columns.count),
    )


def pocket_steps(layout: Layout) -> Iterator[SewingStep]:
    """Tell how pockets are folded from all layers, before rows and columns are marked anew.

    Takes: the layout.

    Gives: a step, or none where no pocket is folded from the face.

    Source: common practice.
    """
    pockets = layout.pockets
    if pockets is None or pockets.place is RodPocket.LINING:
        return
    side = "the back" if pockets.place is RodPocket.TO_THE_BACK else "the room"
    yield SewingStep(
        title="Sew the rod pockets",
        instruction="Baste all layers together. Fold them along each of {0} pocket lines, the"
        " lowest {1} above the bottom edge of the flat cloth, so that the fold stands to"
        f" {side}; stitch {{2}} from the fold, and leave the ends open.",
        figures=(pockets.count, pockets.marks[0], _half(pockets.allowance)),
    )


def _half(allowance: Figure[Length]) -> Figure[Length]:
    value, because = allowance.value / 2, "Half of the {0} that a pocket takes."
    return derived("depth of a rod pocket", value, Unit.LENGTH, because, allowance)


def hole_steps(order: Order) -> Iterator[SewingStep]:
    """Tell what is done about holes in a blackout once the rings are on.

    Takes: the order.

    Gives: the steps; none where nothing blacks out.

    Source: long-shades-diary (few holes by hand, painted over); common practice.
    """
    if blackout_cloth(order) is None:
        return
    if order.making.holes is HoleCover.PAINTED:
        yield SewingStep(
            title="Paint the holes",
            instruction="Dab black paint on every hole of the needle, on the coated side, and let"
            " it dry before the shade is raised.",
        )
    if order.making.holes is not HoleCover.ACCEPTED:
        yield SewingStep(
            title="Test for light",
            instruction="Hang it in a dark room with a lamp behind it: no hole is to be seen from"
            " {0} away.",
            figures=(LIGHT_TEST,),
        )


def stitched_through(order: Order) -> str:
    """Tell through which layers the rings are stitched, as the end of a sentence.

    Takes: the order.

    Gives: text; empty where nothing blacks out.

    Source: common practice.
    """
    if blackout_cloth(order) is None:
        return ""
    return {
        HoleCover.COVER: " Stitch through the cover strips.",
        HoleCover.SECOND_LAYER: " Stitch through both black layers.",
        HoleCover.PAINTED: " By hand alone, with the finest needle that does it.",
        HoleCover.SIDE_TURNS: " Stitch them to the side turns, and through nothing that is coated.",
        HoleCover.NOT_STITCHED: " Do not stitch through the blackout.",
    }.get(order.making.holes or HoleCover.ACCEPTED, "")


def _join(cut: LayerCut) -> Iterator[SewingStep]:
    if cut.widths is None or cut.widths.value == 1:
        return
    if cut.lap is None:
        yield SewingStep(
            title=f"Join the {cut.layer}",
            instruction=f"Sew the {cut.layer} from {{0}} widths, none in the centre, and press the"
            " seams open.",
            figures=(cut.widths,),
        )
        return
    how = "catch it flat" if cut.layer == "interlining" else "glue it: no needle goes near"
    yield SewingStep(
        title=f"Join the {cut.layer}",
        instruction=f"Lap the {{0}} widths of the {cut.layer} by {{1}}, none in the centre, and"
        f" {how}.",
        figures=(cut.widths, cut.lap),
    )


def _interlining(cut: LayerCut) -> SewingStep:
    return SewingStep(
        title="Lay the interlining in",
        instruction="Lay the interlining, {0} wide, on the back of the face up to the folds, catch"
        " it down the sides, and cut it off at the fold of the hem and at the top line.",
        figures=(cut.width,),
    )


def _cover(layout: Layout) -> Iterator[SewingStep]:
    """Lay what keeps the light from the holes between the face and the lining."""
    strips = [piece for piece in layout.pieces if piece.name == "cover strip"]
    for piece in strips:
        yield SewingStep(
            title="Glue the cover strips",
            instruction="Glue {0} strips of the blackout, {1} long, to the inside of the coated"
            " layer, their middle on the rows: the lowest at {2} from the bottom edge.",
            figures=(piece.count, piece.length, (layout.rows.cloth_marks or layout.rows.marks)[0]),
        )
    if any(cut.layer == SECOND_LAYER for cut in layout.cuts):
        yield SewingStep(
            title="Lay the second layer in",
            instruction="Lay the second layer of blackout flat under the first; no needle goes"
            " through it but at the rings.",
        )


def _lining(order: Order, cut: LayerCut) -> SewingStep:
    return SewingStep(
        title="Lay the lining in",
        instruction="Lay the lining, {0} wide, on the pressed face with its raw edges short of the"
        " fold by half of {1} at each side.",
        figures=(cut.width, order.habits.lining_less_than_width),
    )
