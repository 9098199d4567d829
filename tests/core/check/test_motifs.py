"""When the motifs of a room stand at one height, and when nobody can tell."""

from __future__ import annotations

import pytest
from tests.core.check.sound import Order, Typed, ids, planned

HEM, HEAD = "from the hem", "from the head"
TOLD = {"check.motifs-differ", "check.motif-ends-mixed"}


def motif(along: str, above_hem: str) -> Typed:
    return {"cutting.pattern_along": along, "cutting.motif_above_hem": above_hem}


@pytest.mark.parametrize(
    ("own", "other", "told"),
    [
        (motif(HEM, "8"), motif(HEM, "8"), set()),
        (motif(HEM, "8"), motif(HEM, "9"), {"check.motifs-differ"}),
        (motif(HEAD, "8"), motif(HEM, "8"), {"check.motif-ends-mixed"}),
        (motif(HEAD, "8"), motif(HEM, "9"), {"check.motif-ends-mixed"}),
        # placed from the head a motif stands on the top line, whatever was typed of the hem
        (motif(HEAD, "8"), motif(HEAD, "9"), set()),
    ],
)
def test_motifs_of_a_room_are_compared_from_one_end(
    own: Typed, other: Typed, told: set[str]
) -> None:
    assert ids(planned(Order(of="print", typed=own, before=(other,)).document)) & TOLD == told
