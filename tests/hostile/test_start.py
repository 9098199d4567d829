"""Setting up on machines where something is missing, and saying so in one sentence."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
from pathlib import Path

import pytest
import start

ROOT = Path(__file__).resolve().parents[2]


def test_an_old_python_is_told_what_it_needs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "version_info", (3, 9, 2, "final", 0))
    with pytest.raises(start.Refusal, match=r"needs Python 3\.11 or newer and this is Python 3\.9"):
        start.check_python()


def test_the_file_is_readable_to_an_old_python() -> None:
    compile(
        (ROOT / "start.py").read_text(), "start.py", "exec", dont_inherit=True, _feature_version=7
    )


def test_a_missing_pip_is_told(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    bare = tmp_path / "python-without-pip"
    bare.write_text(f'#!/bin/sh\nexec {sys.executable} -S "$@"\n')
    bare.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(bare))
    monkeypatch.setenv("PYTHONPATH", "")
    with pytest.raises(start.Refusal, match="pip is missing"):
        start.check_pip()


def test_an_old_pip_is_told(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "pip.py").write_text("print('pip 20.0.2 from somewhere (python 3.11)')")
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    with pytest.raises(start.Refusal, match=r"pip 20\.0\.2 is too old, it needs 22\.3"):
        start.check_pip()


def test_a_full_disk_leaves_nothing_half_done(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(start, "PRIVATE", tmp_path)
    monkeypatch.setattr(start, "ROOT", tmp_path)
    lock = tmp_path / "some.lock"
    lock.write_text("not-a-package-at-all==1.0\n")

    def full(folder: Path, python: Path, lock: Path) -> None:  # noqa: ARG001 - as called
        folder.mkdir(parents=True)
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(start, "make_environment", full)
    with pytest.raises(OSError, match="No space left") as stop:
        start.environment("run", lock)
    assert "the disk is full" in start.in_words(stop.value)
    assert not (tmp_path / "run" / "made-from").exists()


def test_pips_words_become_a_sentence() -> None:
    assert "disk is full" in start.pip_words("OSError: [Errno 28] No space left on device")
    assert "was refused" in start.pip_words("THESE PACKAGES DO NOT MATCH THE HASHES FROM ...")
    assert "reaches the Python package index" in start.pip_words("ReadTimeoutError")


def test_a_lock_without_a_hash_is_never_installed(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    lock = tmp_path / "loose.lock"
    lock.write_text("six==1.16.0\n")
    monkeypatch.setattr(start, "PRIVATE", tmp_path)
    monkeypatch.setattr(start, "ROOT", tmp_path)
    with pytest.raises(start.Refusal):
        start.environment("run", lock)
    assert not (tmp_path / "run" / "made-from").exists()


@pytest.mark.parametrize("lock", ["requirements.lock", "requirements-test.lock"])
def test_locks_name_no_address_and_hash_everything(lock: str) -> None:
    lines = (ROOT / lock).read_text().splitlines()
    assert not [line for line in lines if "://" in line]
    pins = [number for number, line in enumerate(lines) if "==" in line]
    assert len(pins) > 10
    assert all("--hash=sha256:" in lines[number + 1] for number in pins)


def test_a_taken_port_is_told_in_one_sentence(tmp_path: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        done = subprocess.run(  # noqa: S603 - our own program
            [
                sys.executable,
                "-m",
                "foldwright.cli.main",
                "serve",
                "--port",
                str(port),
                "--data",
                str(tmp_path),
            ],
            env=dict(os.environ, PYTHONPATH=str(ROOT / "src")),
            capture_output=True,
            text=True,
            timeout=60,
            check=False,
        )
    assert done.returncode == 2
    assert f"port {port}" in done.stderr
    assert "choose another with --port" in done.stderr
    assert "Traceback" not in done.stderr
