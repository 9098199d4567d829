"""What the guide quotes is said by the tool, and where it leads there is something."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from tests.docs.reading import ROOT
from tests.docs.said import everything, run

DOCS = ROOT / "docs"
GUIDE = DOCS / "guide"
PAGES = sorted(GUIDE.glob("[0-9]*.md"))
TOLD = [GUIDE / "README.md", *PAGES]  # the table of findings is held elsewhere
LINKING = [ROOT / "README.md", *sorted(GUIDE.glob("*.md"))]
LARGEST_PICTURE_BYTES = 200_000

FENCED = re.compile(r"^```.*?^```$", re.DOTALL | re.MULTILINE)
SESSION = re.compile(r"^```console\n(.*?)^```$", re.DOTALL | re.MULTILINE)
SET_OFF = re.compile(r"^ *> (.*(?:\n *> .*)*)", re.MULTILINE)
QUOTED = re.compile(r"“([^”]+)”")
TYPED = re.compile(r"`[^`]*`")
LINK = re.compile(r"!?\[[^]]*\]\((?!https?:)([^)#]*)(#[^)]*)?\)")
FINE_FIGURE = re.compile(r"\b\d+( \d+/\d+|\.\d+) (in|mm|cm|turns?|lbf|lb|oz|ft·lbf|in·lb|s)\b")
HOUSE_FIGURES = ("2 9/16 in", "16 7/8 in")  # the same for every shade


def text_of(page: Path) -> str:
    return page.read_text(encoding="utf-8")


def spaced(text: str) -> str:
    """Set words apart as the pages are, whose every part stands for itself."""
    return " ".join(text.split())


def loosely(text: str) -> str:
    """Leave out the blanks that come of putting a page's parts together."""
    return re.sub(r"\s+", "", text)


def quotes(page: Path) -> list[str]:
    text = FENCED.sub("", text_of(page))
    set_off = [re.sub(r"\n *> ", " ", one) for one in SET_OFF.findall(text)]
    return [spaced(one) for one in (*set_off, *QUOTED.findall(SET_OFF.sub("", text)))]


@pytest.mark.parametrize("page", TOLD, ids=lambda page: page.stem)
def test_what_is_quoted_is_said_somewhere(page: Path) -> None:
    said = loosely(everything())
    assert [one for one in quotes(page) if loosely(one) not in said] == []


@pytest.mark.parametrize("page", TOLD, ids=lambda page: page.stem)
def test_every_figure_of_the_demo_job_is_quoted(page: Path) -> None:
    text = FENCED.sub("", text_of(page))
    for told in (SET_OFF, QUOTED, TYPED):
        text = told.sub("", text)
    figures = [found[0] for found in FINE_FIGURE.finditer(text)]
    assert [figure for figure in figures if figure not in HOUSE_FIGURES] == []


SESSIONS = [(page.stem, found) for page in TOLD for found in SESSION.findall(text_of(page))]


def test_there_are_sessions() -> None:
    assert len(SESSIONS) > 5


@pytest.mark.parametrize(("page", "session"), SESSIONS)
def test_a_command_says_what_is_printed_under_it(page: str, session: str) -> None:
    commands = re.split(r"^\$ python3 start\.py ", session, flags=re.MULTILINE)
    assert commands[0] == "", page
    for command in commands[1:]:
        words, _, printed = command.partition("\n")
        assert printed_in(printed, run(*shlex.split(words))), f"{page}: {words}"


def printed_in(printed: str, said: str) -> bool:
    """Tell whether an output holds the printed lines in order; “...” leaves lines out."""
    pieces = [re.escape(piece) for piece in re.split(r"^\.\.\.\n", printed, flags=re.MULTILINE)]
    return re.fullmatch("(?:.*\n)*?".join(pieces), said) is not None


def test_left_out_lines_are_told_from_others() -> None:
    said = "one\ntwo\nthree\n"
    assert printed_in("one\n...\nthree\n", said)
    assert printed_in(said, said)
    assert not printed_in("one\nthree\n", said)
    assert not printed_in("two\n...\n", said)
    assert not printed_in("one\n...\nfour\n", said)


@pytest.mark.parametrize(
    "page", [ROOT / "README.md", *GUIDE.glob("*.md")], ids=lambda one: one.stem
)
def test_every_link_and_picture_leads_somewhere(page: Path) -> None:
    for target, heading in LINK.findall(text_of(page)):
        found = page.parent / target if target else page
        assert found.exists(), target
        if heading:
            assert heading[1:] in headings(found), f"{target}{heading}"


def headings(page: Path) -> set[str]:
    titles = re.findall(r"^#+ (.+)$", text_of(page), re.MULTILINE)
    return {re.sub(r"[^\w -]", "", title.lower()).replace(" ", "-") for title in titles}


def test_the_index_leads_to_every_page_in_order() -> None:
    listed = re.findall(r"^\d+\. \[[^]]+\]\((.+?)\)$", text_of(GUIDE / "README.md"), re.MULTILINE)
    assert listed == [page.name for page in PAGES]


def test_every_page_has_the_number_of_its_file() -> None:
    assert [text_of(page).split(".")[0] for page in PAGES] == [
        f"# {number}" for number in range(1, len(PAGES) + 1)
    ]


@pytest.mark.parametrize("picture", sorted(DOCS.rglob("*.png")), ids=lambda picture: picture.stem)
def test_every_picture_is_small_and_shown_and_can_be_taken_again(picture: Path) -> None:
    shown = "".join(text_of(page) for page in (ROOT / "README.md", *TOLD))
    assert picture.stat().st_size <= LARGEST_PICTURE_BYTES
    assert picture.name in shown
    assert f'"{picture.name}"' in text_of(DOCS / "pictures.py")
