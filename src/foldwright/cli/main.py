"""The same use cases from a terminal: plan, cut, stock, lift, why, layouts, groups, boards, serve.

Each command loads what it needs when it runs, so that help and mistakes answer at once.
"""

from __future__ import annotations

import argparse
import contextlib
import os
import sys
from collections.abc import Sequence
from importlib import import_module
from io import TextIOWrapper
from pathlib import Path

from foldwright import __version__
from foldwright.cli.codes import BAD_INPUT, GOOD, INTERRUPTED

GREATEST_PORT = 65_535
LONGEST_SEARCH_S = 3600


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; give 0 where it could be done and 2 where the input must be mended."""
    for channel in (sys.stdout, sys.stderr):
        if isinstance(channel, TextIOWrapper):  # a terminal that lacks a letter shows another
            channel.reconfigure(errors="replace")
    options = _parser().parse_args(argv)
    try:
        code = int(import_module(f"foldwright.cli.{options.command}").run(options))
        sys.stdout.flush()
    except KeyboardInterrupt:
        return INTERRUPTED
    except BrokenPipeError:  # the reader has seen enough
        _let_go_of_the_answer()
        return GOOD
    except OSError as trouble:
        _let_go_of_the_answer()
        sys.stderr.write(f"The answer could not be given: {trouble.strerror or trouble}.\n")
        return BAD_INPUT
    return code


def _let_go_of_the_answer() -> None:
    """Keep the rest of an answer that nobody takes from being pressed on them at the end."""
    with contextlib.suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="foldwright",
        description="Carries a custom soft shade from the measured window to a shade that rises.",
    )
    parser.add_argument("--version", action="version", version=f"foldwright {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    _add_plan(commands.add_parser("plan", help="plan a job and write its papers"))
    _add_cut(commands.add_parser("cut", help="plan where every piece is cut from the cloths"))
    _add_stock(commands.add_parser("stock", help="plan what is cut from stock lengths"))
    _add_lift(commands.add_parser("lift", help="answer lifts given as plain SI numbers"))
    _add_why(commands.add_parser("why", help="tell why a figure is what it is"))
    _add_layouts(
        commands.add_parser("layouts", help="search the best layout of a shade and two others")
    )
    _add_groups(
        commands.add_parser("groups", help="match shades that are to look like one, and draw them")
    )
    _add_boards(commands.add_parser("boards", help="hang several shades on one board, and mark it"))
    _add_serve(commands.add_parser("serve", help="open the shop's pages in a browser"))
    return parser


def _add_plan(parser: argparse.ArgumentParser) -> None:
    _add_job(parser)
    parser.add_argument("--out", type=Path, metavar="DIR", help="write the papers into this folder")
    parser.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="the size of the papers"
    )
    _add_common(parser)


def _add_cut(parser: argparse.ArgumentParser) -> None:
    _add_job(parser)
    _add_seconds(parser, 20.0)
    parser.add_argument(
        "--if-repeat-longer",
        metavar="LENGTH",
        help="what if the repeat is so much longer, such as 2 mm; with a minus, shorter",
    )
    parser.add_argument(
        "--if-flaw",
        action="append",
        nargs=5,
        default=[],
        metavar=("ROLL", "ALONG", "ACROSS", "LENGTH", "WIDTH"),
        help="what if this flaw is on a roll in hand",
    )
    parser.add_argument(
        "--if-piece",
        action="append",
        nargs=3,
        default=[],
        metavar=("PIECE", "WIDTH", "LENGTH"),
        help="what if a piece is cut to this size",
    )
    _add_common(parser)


def _add_stock(parser: argparse.ArgumentParser) -> None:
    _add_job(parser)
    _add_seconds(parser, 10.0)
    parser.add_argument(
        "--rack",
        type=Path,
        metavar="FILE.toml",
        help="write the offcut rack as it is after the job, as a file of the shop's list",
    )
    _add_common(parser)


def _add_job(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "job", nargs="?", type=Path, metavar="JOB.toml", help="the job file; without it, the demo"
    )


def _add_seconds(parser: argparse.ArgumentParser, usual: float) -> None:
    parser.add_argument(
        "--seconds",
        type=_seconds,
        default=usual,
        help=f"how long to look for a better plan; {usual:g} unless said otherwise",
    )


def _add_lift(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "file",
        nargs="?",
        default="-",
        metavar="FILE",
        help="one JSON object, or one on each line; - or nothing reads what is piped in",
    )
    parser.add_argument("--json", action="store_true", help="answer in JSON, one object a line")


def _add_why(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", type=Path, metavar="JOB.toml", help="the job file")
    parser.add_argument("shade", metavar="SHADE", help="the shade's tag")
    parser.add_argument(
        "figure",
        nargs="?",
        metavar="FIGURE",
        help="its name, such as “finished width”, or its place; without it, all are listed",
    )
    _add_common(parser)


def _add_boards(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", type=Path, metavar="JOB.toml", help="the job file")
    _add_common(parser)


def _add_groups(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", type=Path, metavar="JOB.toml", help="the job file")
    parser.add_argument(
        "--out", type=Path, metavar="DIR", help="draw the rooms into this folder, as SVG"
    )
    _add_common(parser)


def _add_layouts(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", type=Path, metavar="JOB.toml", help="the job file")
    parser.add_argument(
        "shade", nargs="?", metavar="SHADE", help="the shade's tag; without it, every shade"
    )
    _add_common(parser)


def _add_common(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--shop", type=Path, metavar="DIR", help="a folder with the shop's own list"
    )
    parser.add_argument("--json", action="store_true", help="answer in JSON")


def _add_serve(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--host", default="127.0.0.1", help="this machine's address to listen at")
    parser.add_argument("--port", type=_port, default=8137, help="the port to listen at")
    parser.add_argument(
        "--data",
        type=Path,
        default=Path.home() / "Foldwright",
        metavar="DIR",
        help="the folder with the book of jobs and, in a folder “shop”, the shop's own list",
    )
    parser.add_argument("--open", action="store_true", help="open the browser too")


def _seconds(text: str) -> float:
    """Read a time to look for a plan: 0 takes the first one."""
    with contextlib.suppress(ValueError):
        seconds = float(text)
        if 0 <= seconds <= LONGEST_SEARCH_S:
            return seconds
    message = f"“{text}” is no time to plan. Give seconds from 0 to {LONGEST_SEARCH_S}."
    raise argparse.ArgumentTypeError(message)


def _port(text: str) -> int:
    """Read a port; 0 lets the machine choose one."""
    if text.isascii() and text.isdigit() and int(text) <= GREATEST_PORT:
        return int(text)
    message = f"“{text}” is no port. Give a number from 1024 to {GREATEST_PORT}."
    raise argparse.ArgumentTypeError(message)


if __name__ == "__main__":
    sys.exit(main())
