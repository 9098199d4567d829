"""The served workroom as a person starts it: the address is told, and a taken port too."""

from __future__ import annotations

import re
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from foldwright.web.serving import EVERY_ADDRESS, SHOP_FOLDER, serve
from foldwright.work.files import CannotUse

# As from a terminal: a runner in the background may have told its children not to hear Ctrl+C.
HEARING = """
import signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)
from foldwright.cli.main import main
sys.exit(main())
"""


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[subprocess.Popen[str], str]]:
    command = [sys.executable, "-c", HEARING, "serve", "--port", "0"]
    program = subprocess.Popen(  # noqa: S603 - this very program
        [*command, "--data", str(tmp_path / "data")],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert program.stdout is not None
    told = program.stdout.readline()
    yield program, told
    program.kill()
    program.communicate()


def test_the_address_is_told_and_answers_with_the_demo(
    served: tuple[subprocess.Popen[str], str],
) -> None:
    _, told = served
    address = re.search(r"http://127\.0\.0\.1:\d+/", told)
    assert address is not None
    assert "Guesthouse at the weir" in httpx.get(address[0]).text


def test_it_stops_at_the_keyboard_without_a_word_of_its_insides(
    served: tuple[subprocess.Popen[str], str],
) -> None:
    program, _ = served
    program.send_signal(signal.SIGINT)
    _, complaints = program.communicate(timeout=10)
    assert "Traceback" not in complaints


def test_a_taken_port_is_told_with_what_to_do(tmp_path: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        with pytest.raises(CannotUse, match=f"port {port}") as refusal:
            serve("127.0.0.1", port, tmp_path)
    assert "--port" in str(refusal.value)


@pytest.mark.parametrize("host", EVERY_ADDRESS)
def test_an_address_under_which_no_page_would_answer_is_refused(host: str, tmp_path: Path) -> None:
    with pytest.raises(CannotUse, match="own address"):
        serve(host, 0, tmp_path)


def test_a_list_that_cannot_be_read_is_told_before_any_address(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / SHOP_FOLDER).mkdir()
    with pytest.raises(CannotUse, match="no shop list"):
        serve("127.0.0.1", 0, tmp_path)
    assert capsys.readouterr().out == ""
