import re
import time
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from tests.papers.reading import Sheet, Word, read
from tests.papers.shades import (
    EXTREMES,
    HEADER,
    OVERRIDE,
    demo_job,
    demo_plan,
    demo_tags,
    extreme,
    overridden_plan,
)

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.words import bare, in_full
from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Severity
from foldwright.core.why.telling import fill, show
from foldwright.papers.header import SIZES
from foldwright.papers.sheets import (
    Paper,
    headrail_sheet,
    safety_sheet,
    table_sheet,
    write_sheets,
)

Print = Callable[..., bytes]
SHEETS: dict[str, Print] = {
    "table": table_sheet,
    "headrail": headrail_sheet,
    "safety": safety_sheet,
}

# ISO 216 for A4 (from memory); US Letter is 8 1/2 by 11 in.
SIZES_MM = {Paper.A4: (210.0, 297.0), Paper.LETTER: (8.5 * 25.4, 11 * 25.4)}
CHECK_BOX = 3.4
BY = "\N{MULTIPLICATION SIGN}"


@cache
def printed(sheet: str, tag: str, paper: Paper, system: System = System.INCH) -> Sheet:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    return read(SHEETS[sheet](made, HEADER, paper, system))


def plain(sheet: Sheet) -> str:
    """Give the words with no blank before a point or comma that a change of letters left."""
    return re.sub(r" ([.,;:)])", r"\1", sheet.said().replace("( ", "("))


every_sheet = pytest.mark.parametrize("sheet", SHEETS)
every_paper = pytest.mark.parametrize("paper", Paper)
every_shade = pytest.mark.parametrize("tag", [*demo_tags(), *EXTREMES])


@every_sheet
@every_paper
@every_shade
def test_a_shade_takes_one_page_of_the_paper_asked_for(sheet: str, paper: Paper, tag: str) -> None:
    for system in System:
        found = printed(sheet, tag, paper, system)
        assert found.pages == 1
        assert (found.width, found.height) == pytest.approx(SIZES_MM[paper], abs=0.01)


@every_sheet
@every_paper
@every_shade
def test_nothing_is_printed_in_the_margins(sheet: str, paper: Paper, tag: str) -> None:
    found, size = printed(sheet, tag, paper), SIZES[paper]
    slack = 0.3  # half a line's width
    for word in found.words:
        assert word.left >= size.margin - slack, word
        assert word.right <= size.width - size.margin + slack, word
        assert word.top >= size.margin - slack, word
        assert word.bottom <= size.height - size.margin + slack, word
    for mark in found.marks:
        assert mark["x0"] >= (size.margin - slack) * 72 / 25.4
        assert mark["x1"] <= (size.width - size.margin + slack) * 72 / 25.4


def footed(found: Sheet) -> set[Word]:
    """Give the words of the foot."""
    start = next(w for w in found.words if w.text == "Version")
    return {word for word in found.words if word.top >= start.top - 0.5}


@every_sheet
@every_shade
def test_figures_are_eleven_points_and_words_eight_at_least(sheet: str, tag: str) -> None:
    found = printed(sheet, tag, Paper.LETTER)
    assert min(word.size_pt for word in found.words) >= 7.99
    small = [
        word.text
        for word in set(found.words) - footed(found)
        if word.size_pt < 10.99 and re.fullmatch(r"\d+( \d+)?(/\d+)?|\d+\.\d+", word.text)
    ]
    # Left are the numbers of columns and rows, and those in the names of things bought.
    names = " ".join((tag, *demo_job().shop.springs, *demo_job().shop.cords, *demo_job().shop.rods))
    assert all(text.isdecimal() or text in names for text in small), small


@every_sheet
@every_shade
def test_the_two_finished_sizes_are_the_largest_words(sheet: str, tag: str) -> None:
    found = printed(sheet, tag, Paper.A4)
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    assert made.size is not None
    largest = max(word.size_pt for word in found.words)
    words = " ".join(word.text for word in found.words if word.size_pt == largest)
    width, drop = (in_full(one, System.INCH) for one in (made.size.width, made.size.drop))
    assert words == f"{width} {drop}"
    second = max(word.size_pt for word in found.words if word.size_pt < largest)
    assert largest >= 1.2 * second


@every_sheet
def test_the_head_names_shade_room_job_and_mount(sheet: str) -> None:
    said = plain(printed(sheet, "Garden", Paper.A4))
    for words in ("Garden room", HEADER.job, "cloth from the room edge of the board"):
        assert words in said
    assert printed(sheet, "Garden", Paper.A4).title.endswith("Garden, Guesthouse at the weir")


@every_sheet
def test_the_foot_says_which_print_it_is(sheet: str) -> None:
    said = plain(printed(sheet, "Garden", Paper.A4))
    assert "Version 3, replaces version 2. Printed 2026-05-04 14:10." in said
    assert "Overridden" not in said


@every_sheet
def test_a_stop_that_is_answered_for_is_printed_with_who_and_why(sheet: str) -> None:
    said = plain(read(SHEETS[sheet](overridden_plan(), HEADER, Paper.A4, System.INCH)))
    assert "STOP" not in said
    assert "Overridden: “" in said
    assert f"{OVERRIDE.name} answers for it: {OVERRIDE.reason}" in said


@every_sheet
def test_a_first_print_replaces_nothing(sheet: str) -> None:
    first = replace(HEADER, replaces="")
    said = plain(read(SHEETS[sheet](demo_plan("Garden"), first, Paper.A4, System.INCH)))
    assert "Version 3. Printed" in said


@every_sheet
@every_paper
@pytest.mark.parametrize("tag", ["Library", "thirteen rows, eight columns"])
def test_an_open_stop_is_printed_with_its_remedy(sheet: str, paper: Paper, tag: str) -> None:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    stop = next(f for f in made.findings if f.severity is Severity.STOP)
    said = plain(printed(sheet, tag, paper))
    assert f"STOP {stop.stage.value}:" in said
    remedy = stop.remedies[0]
    for sentence, figures in ((stop.sentence, stop.figures), (remedy.sentence, remedy.figures)):
        assert re.sub(r" ([.,;:)])", r"\1", fill(sentence, figures, System.INCH)) in said


@every_sheet
def test_without_a_stop_none_is_printed(sheet: str) -> None:
    clear = replace(demo_plan("Kitchen"), findings=())
    assert "STOP" not in read(SHEETS[sheet](clear, HEADER, Paper.A4, System.INCH)).said()


@every_sheet
def test_the_file_can_be_read_aloud_and_has_one_font(sheet: str) -> None:
    found = printed(sheet, "Garden", Paper.A4)
    assert found.tagged
    assert found.universal
    assert {word.font.split("+")[-1].split("-")[0] for word in found.words} == {"Inter"}


@every_sheet
def test_the_same_shade_prints_the_same_bytes(sheet: str) -> None:
    prints = {SHEETS[sheet](demo_plan("Garden"), HEADER, Paper.A4, System.INCH) for _ in range(2)}
    assert len(prints) == 1


@every_sheet
@every_shade
def test_a_sheet_is_set_within_a_second(sheet: str, tag: str) -> None:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    start = time.process_time()  # of this work alone, however busy the machine
    SHEETS[sheet](made, HEADER, Paper.LETTER, System.METRIC)
    assert time.process_time() - start < 1.0


def marks_of(made: ShadePlan) -> tuple[list[str], list[str]]:
    assert made.layout is not None
    rows, columns = made.layout.rows, made.layout.columns
    return (
        [bare(mark, System.INCH) for mark in rows.cloth_marks or rows.marks],
        [bare(mark, System.INCH) for mark in columns.cloth_marks or columns.marks],
    )


@every_shade
def test_marks_are_cumulative_and_those_of_the_plan(tag: str) -> None:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    rows, columns = marks_of(made)
    said = printed("table", tag, Paper.A4).said()
    assert " ".join(["0", *rows, *columns]) in said


def test_the_drawing_is_at_the_scale_it_states() -> None:
    made, found = demo_plan("Kitchen"), printed("table", "Kitchen", Paper.A4)
    assert made.layout is not None
    scale = float(re.findall(r"Scale 1 : ([\d.]+)", found.said())[0])
    marks = [mark.value.in_millimetres for mark in made.layout.rows.marks]
    named = [word for word in found.words if word.text == "row"][: len(marks)]
    middles = [(word.top + word.bottom) / 2 for word in named]
    assert (middles[0] - middles[-1]) * scale == pytest.approx(marks[-1] - marks[0], rel=0.002)


def test_the_table_sheet_lists_every_layer_as_cut() -> None:
    made = demo_plan("Dining")
    assert made.layout is not None
    said = plain(printed("table", "Dining", Paper.A4))
    for cut in made.layout.cuts:
        size = f"{in_full(cut.width, System.INCH)} {BY} {in_full(cut.length, System.INCH)}"
        assert f"{cut.layer}, {cut.cloth} {size}" in said


def test_the_table_sheet_says_seams_and_rods() -> None:
    made = demo_plan("Dining")
    assert made.layout is not None
    said = printed("table", "Dining", Paper.A4).said()
    for seam in made.layout.widths.seams:
        assert f"seam {bare(seam, System.INCH)}" in said
    assert f"{len(made.layout.rows.rod_marks)} at rows" in said


def test_the_table_sheet_lists_the_pockets_of_a_lining() -> None:
    made = extreme("rods in the lining")
    assert made.layout is not None
    assert made.layout.pockets is not None
    said = printed("table", "rods in the lining", Paper.A4).said()
    for mark in made.layout.pockets.marks:
        assert f"{mark.name} {show(mark, System.INCH)}" in said


def test_the_table_sheet_says_why_in_the_words_of_the_figure() -> None:
    made = demo_plan("Kitchen")
    assert made.layout is not None
    spacing = made.layout.rows.spacing
    why = fill(spacing.because, spacing.inputs, System.INCH)
    told = f"{spacing.name} {show(spacing, System.INCH)}: {why}"
    assert told in plain(printed("table", "Kitchen", Paper.A4))


def test_the_table_layout_says_that_it_is_seen_from_the_back() -> None:
    assert "Seen from the back, face down." in printed("table", "Bay", Paper.A4).said()


def check_boxes(found: Sheet) -> int:
    side = CHECK_BOX * 72 / 25.4
    return sum(
        mark["width"] == pytest.approx(side, abs=0.2)
        and mark["height"] == pytest.approx(side, abs=0.2)
        for mark in found.marks
    )


@every_shade
def test_every_step_is_printed_with_a_box_to_tick(tag: str) -> None:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    assert made.headrail is not None
    found = printed("headrail", tag, Paper.A4)
    said = plain(found)
    for step in made.headrail.steps:
        told = fill(step.instruction, step.figures, System.INCH)
        assert f"{step.number} {step.title}. {told}" in said  # with no turning word broken
    assert check_boxes(found) == len(made.headrail.steps)


def test_the_table_sheet_has_boxes_for_each_cut_and_stage() -> None:
    made = demo_plan("Dining")
    assert made.layout is not None
    assert check_boxes(printed("table", "Dining", Paper.A4)) == len(made.layout.cuts) + 4


def test_a_figure_is_never_broken_across_lines() -> None:
    made = demo_plan("Parlour")
    assert made.headrail is not None
    lines = printed("headrail", "Parlour", Paper.LETTER).text.splitlines()
    for step in made.headrail.steps:
        for figure in step.figures:
            words = fill("{0}", [figure], System.INCH)
            assert any(words in line for line in lines), words


@every_shade
def test_clips_and_cords_are_marked_as_in_the_plan(tag: str) -> None:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    assert made.headrail is not None
    said = printed("headrail", tag, Paper.A4).said()
    for name, field in (("clips", "clip"), ("cords", "column")):
        marks = [bare(getattr(line, field), System.INCH) for line in made.headrail.lines]
        assert f"{name} {' '.join(marks)}" in said


def test_both_views_and_the_spring_end_say_whence_they_are_seen() -> None:
    said = printed("headrail", "Garden", Paper.A4).said()
    for words in ("Seen from the back", "Seen from the room", "Seen at the spring end"):
        assert words in said


@pytest.mark.parametrize("lock", [Lock.ONE_WAY, Lock.TWO_WAY, Lock.UNKNOWN])
@pytest.mark.parametrize("brake", list(Brake))
def test_lock_and_brake_are_told(lock: Lock, brake: Brake) -> None:
    made = demo_plan("Garden")
    asked = replace(
        made, spec=replace(made.spec, lift=replace(made.spec.lift, lock=lock, brake=brake))
    )
    said = read(headrail_sheet(asked, HEADER, Paper.A4, System.INCH)).said()
    assert f"Lock {lock.value}" in said
    assert f"Speed brake {brake.value}" in said


def test_turns_are_told_or_that_none_fit() -> None:
    made = demo_plan("Garden")
    assert made.headrail is not None
    assert made.headrail.pretension_turns is not None
    turns = show(made.headrail.pretension_turns, System.INCH)
    assert f"Turns at the up-stop {turns}" in printed("headrail", "Garden", Paper.A4).said()
    assert "Turns at the up-stop none fit" in printed("headrail", "Library", Paper.A4).said()


def test_each_caution_is_printed_once_and_every_step_refers_to_its_own() -> None:
    made = demo_plan("Garden")
    assert made.headrail is not None
    said = plain(printed("headrail", "Garden", Paper.A4))
    letters = {}
    for step in made.headrail.steps:
        told = fill(step.instruction, step.figures, System.INCH)
        after = said.split(f"{step.title}. {told}")[1]
        cited = re.match(r" \(([A-Z, ]+)\)", after)
        assert bool(cited) == bool(step.caution)
        if cited:
            letters[step.caution] = re.findall("[A-Z]", cited[1])
    for caution, cited_letters in letters.items():
        cautions = [
            re.split(rf"(?<=[.!]) {letter} ", f". {said.split('Cautions ')[1]}")[1]
            for letter in cited_letters
        ]
        together = " ".join(cautions)
        assert all(part.strip() in together for part in re.findall(r"[^.]+\.", caution))
        assert said.count(caution) <= 1


def test_every_adjustment_is_printed() -> None:
    made = demo_plan("Garden")
    assert made.headrail is not None
    said = plain(printed("headrail", "Garden", Paper.A4))
    for one in made.headrail.adjustments:
        action, amount = show(one.action, System.INCH), show(one.amount, System.INCH)
        assert f"{one.symptom}: {action}, {amount}" in said
        assert show(one.end, System.INCH) in said


def test_no_turns_left_is_told_in_words_alone() -> None:
    said = plain(printed("headrail", "Library", Paper.A4))
    assert "none are left for this shade, so lighten it or change the spring;" in said
    assert "spring, 0 turns" not in said


def test_a_shade_not_far_enough_is_refused_with_what_to_do() -> None:
    bare_plan = ShadePlan(spec=demo_plan("Garden").spec)
    with pytest.raises(ValueError, match="Garden has no layout yet: see its findings"):
        table_sheet(bare_plan, HEADER, Paper.A4, System.INCH)
    with pytest.raises(ValueError, match="Garden has no headrail yet: see its findings"):
        headrail_sheet(bare_plan, HEADER, Paper.A4, System.INCH)
    unsized = replace(demo_plan("Garden"), size=None)
    with pytest.raises(ValueError, match="no finished size yet: measure it"):
        headrail_sheet(unsized, HEADER, Paper.A4, System.INCH)


def test_all_sheets_of_a_job_are_written_in_its_order(tmp_path: Path) -> None:
    plans = [
        demo_plan("Garden"),
        ShadePlan(spec=demo_plan("Bay").spec),
        replace(demo_plan("Bay"), headrail=None),
        replace(demo_plan("Bay"), spec=replace(demo_plan("Bay").spec, tag="Bay / left?")),
    ]
    folder = tmp_path / "new" / "papers"
    written = write_sheets(plans, HEADER, folder, Paper.LETTER, System.METRIC)
    assert [path.name for path in written] == [
        "01-Garden-table-layout.pdf",
        "01-Garden-headrail.pdf",
        "01-Garden-safety.pdf",
        "03-Bay-table-layout.pdf",
        "03-Bay-safety.pdf",
        "04-Bay-left-table-layout.pdf",
        "04-Bay-left-headrail.pdf",
        "04-Bay-left-safety.pdf",
    ]
    assert all(path.read_bytes().startswith(b"%PDF") for path in written)
