"""What is typed survives the form, and a field that was not touched keeps its own value."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.web.fields import Kind, every_field
from foldwright.web.forms import echo_of, filled_fields, shade_from_form, text_at

TYPED = {one.path: one for one in every_field() if one.kind in (Kind.LENGTH, Kind.NUMBER)}
SAVED = {
    "tag": "A",
    "opening": {"width_top": "35 3/16", "sill": False},
    "mount": {"returns": True},
    "design": {"row_count": 8, "fullness": 1.5},
}


def as_shown(shade: dict[str, object]) -> dict[str, str]:
    shown = {one.path: text_at(shade, one) for one in every_field()}
    return {path: text for path, text in shown.items() if text}


def test_a_form_sent_back_untouched_changes_nothing() -> None:
    assert shade_from_form(as_shown(SAVED), SAVED) == SAVED


def test_a_changed_field_is_kept_as_typed() -> None:
    form = as_shown(SAVED) | {"opening.width_top": " 35-1/4 "}
    assert shade_from_form(form, SAVED)["opening"]["width_top"] == "35-1/4"


def test_an_emptied_field_is_left_out_and_so_is_an_emptied_table() -> None:
    form = as_shown(SAVED) | {"design.row_count": "", "design.fullness": ""}
    assert "design" not in shade_from_form(form, SAVED)


def test_a_tick_taken_away_is_left_out() -> None:
    form = as_shown(SAVED)
    del form["mount.returns"]
    assert "mount" not in shade_from_form(form, SAVED)


def test_a_field_that_the_form_does_not_have_keeps_its_value() -> None:
    assert shade_from_form({"tag": "A", "mount.returns": "yes"}, SAVED) == SAVED


def test_no_sill_is_an_answer_and_not_an_empty_field() -> None:
    form = as_shown(SAVED) | {"opening.sill": "no"}
    assert shade_from_form(form, {})["opening"]["sill"] is False


def test_a_key_that_the_form_does_not_know_stays() -> None:
    saved = SAVED | {"colour": "flax"}
    assert shade_from_form(as_shown(SAVED), saved)["colour"] == "flax"


def test_the_saved_shade_itself_is_never_changed() -> None:
    before = repr(SAVED)
    shade_from_form({"tag": "B"}, SAVED)
    assert repr(SAVED) == before


@given(st.dictionaries(st.sampled_from(sorted(TYPED)), st.text(max_size=30), max_size=8))
def test_anything_typed_is_shown_again_as_typed(form: dict[str, str]) -> None:
    shade = shade_from_form(form, {})
    shown = {path: text_at(shade, one) for path, one in TYPED.items()}
    assert {p: t for p, t in shown.items() if t} == {
        p: t.strip() for p, t in form.items() if t.strip()
    }


def test_a_length_is_read_back_in_both_units() -> None:
    assert echo_of("35-3/16", System.INCH) == "35 3/16 in · 893.8 mm"
    assert echo_of("894", System.METRIC) == "894 mm · 35 3/16 in"


def test_what_cannot_be_read_has_no_echo() -> None:
    assert echo_of("35 3/15", System.INCH) == ""


def test_a_fault_stands_beside_its_own_field_only() -> None:
    fault = Fault(where="shades.2.opening.width_top", what="it is no length", remedy="Mend it.")
    shown = filled_fields({}, (fault,), "shades.2", System.INCH)
    assert [path for path, filled in shown.items() if filled.faults] == ["opening.width_top"]
