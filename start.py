"""Set Foldwright up and start it, on a machine that has only python3 and pip.

    python3 start.py                          set up, open the app on the demo job
    python3 start.py plan JOB.toml --out DIR  compute a job and write its papers, without a screen
    python3 start.py test                     run every check and test

Uses the standard library only, in words that Python 3.7 still reads, so that an old Python
gets a clear sentence and not a syntax error.
"""

from __future__ import annotations

import errno
import hashlib
import os
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path
from typing import NoReturn

ROOT = Path(__file__).resolve().parent
PRIVATE = ROOT / ".foldwright"
CHROMIUM = Path("/usr/bin/chromium")
LEAST_PYTHON = (3, 11)
LEAST_PIP = (22, 3)
CHECKS = {
    "style": ["-m", "ruff", "check"],
    "layout of the code": ["-m", "ruff", "format", "--check"],
    "types": ["-m", "mypy"],
    "walls between the rooms": [
        "-c",
        "from importlinter.cli import lint_imports_command as c; c()",
    ],
}


class Refusal(Exception):  # noqa: N818 - it is the machine's answer, not an error of ours
    """Something on this machine stands in the way; the text says what to do."""


def main(arguments: list[str]) -> int:
    """Do what the first word asks for, and give the exit code."""
    try:
        check_python()
        if arguments[:1] == ["test"]:
            return test(arguments[1:])
        python = environment("run", ROOT / "requirements.lock")
        hand_over(python, ["-m", "foldwright.cli.main", *(arguments or ["serve", "--open"])])
    except (Refusal, OSError) as stop:
        print(f"Foldwright cannot start: {in_words(stop)}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 130


def check_python() -> None:
    """Refuse a Python that is too old."""
    if sys.version_info < LEAST_PYTHON:
        raise Refusal(
            f"it needs Python {dotted(LEAST_PYTHON)} or newer and this is Python "
            f"{dotted(sys.version_info[:2])}. Install a newer python3 and run this again with it."
        )


def environment(name: str, lock: Path) -> str:
    """Give the Python of a private environment that holds exactly what the lock names."""
    folder = PRIVATE / name
    python = folder / ("Scripts" if os.name == "nt" else "bin") / "python"
    stamp = folder / "made-from"
    wanted = fingerprint(lock)
    if not stamp.exists() or stamp.read_text() != wanted:
        print(f"Setting up in {folder.relative_to(ROOT)} (once, about a minute) ...", flush=True)
        shutil.rmtree(folder, ignore_errors=True)
        make_environment(folder, python, lock)
        stamp.write_text(wanted)
    return str(python)


def fingerprint(lock: Path) -> str:
    """Tell a lock, a Python and a place apart from all others."""
    return hashlib.sha256(lock.read_bytes() + f"{sys.version}{ROOT}".encode()).hexdigest()


def make_environment(folder: Path, python: Path, lock: Path) -> None:
    """Make the environment and fill it from the lock."""
    check_pip()
    try:
        import venv  # noqa: PLC0415 - some systems ship Python without it
    except ImportError:
        raise Refusal(
            "Python's venv module is missing. Install it (Debian, Ubuntu: apt install "
            "python3-venv) and run this again."
        ) from None
    # Without pip inside: Debian keeps the part that puts it there in another package, and
    # the pip outside can fill the environment just as well.
    venv.create(folder, with_pip=False, symlinks=os.name != "nt", clear=True)
    install(python, lock)
    packages = sysconfig.get_path("purelib", vars={"base": str(folder)}, scheme="venv")
    (Path(packages) / "foldwright.pth").write_text(f"{ROOT / 'src'}\n")


def check_pip() -> None:
    """Refuse a machine without a pip that can fill an environment from outside."""
    told = run([sys.executable, "-m", "pip", "--version"])
    if told.returncode:
        raise Refusal(
            "pip is missing. Install it (Debian, Ubuntu: apt install python3-pip) and run this "
            "again."
        )
    version = told.stdout.split()[1]
    if tuple(int(part) for part in version.split(".")[:2]) < LEAST_PIP:
        raise Refusal(
            f"pip {version} is too old, it needs {dotted(LEAST_PIP)} or newer. "
            "Run: python3 -m pip install --upgrade pip"
        )


def install(python: Path, lock: Path) -> None:
    """Fill the environment with what the lock names, each file checked against its hash."""
    pip = [sys.executable, "-m", "pip", "--python", str(python), "install", "--quiet"]
    done = run([*pip, "--disable-pip-version-check", "--no-input", "--require-hashes", "-r", lock])
    if done.returncode:
        raise Refusal(pip_words(done.stderr))


def run(words: list[str | Path]) -> subprocess.CompletedProcess[str]:
    """Run a command and keep what it says."""
    return subprocess.run(words, capture_output=True, text=True, check=False)


def pip_words(errors: str) -> str:
    """Say in a sentence why pip failed."""
    if "No space left" in errors or "Disk quota" in errors:
        return "the disk is full. Free about 500 MB and run this again; nothing is left half done."
    if "DO NOT MATCH THE HASHES" in errors:
        return f"a package differs from the one in the lock, so it was refused.\n{errors.strip()}"
    last = "\n".join(errors.strip().splitlines()[-6:])
    return (
        "pip could not fetch what it needs. Check that this machine reaches the Python package "
        f"index and run this again.\n{last}"
    )


def in_words(stop: Refusal | OSError) -> str:
    """Say in a sentence what stands in the way."""
    if isinstance(stop, Refusal):
        return str(stop)
    if stop.errno in (errno.ENOSPC, errno.EDQUOT):
        return "the disk is full. Free some space and run this again; nothing is left half done."
    if stop.errno in (errno.EACCES, errno.EROFS):
        return f"{stop.filename} cannot be written. Give yourself the right to write there."
    return str(stop)


def dotted(version: tuple[int, ...]) -> str:
    """Write a version as people do."""
    return ".".join(str(part) for part in version)


def hand_over(python: str, arguments: list[str]) -> NoReturn:
    """Let the private environment's Python go on in place of this one."""
    if os.name == "nt":
        sys.exit(subprocess.call([python, *arguments]))
    os.execv(python, [python, *arguments])


def test(arguments: list[str]) -> int:
    """Run style, types, walls and all tests; the runner's closing line comes last."""
    python = environment("test", ROOT / "requirements-test.lock")
    need_chromium()
    failed = [] if arguments else [name for name in CHECKS if check(python, name)]
    if failed:
        print(f"Not clean: {', '.join(failed)}.", file=sys.stderr, flush=True)
    wanted = arguments or ["--numprocesses=2", "--dist=loadfile"]
    return subprocess.call([python, "-m", "pytest", *wanted], cwd=ROOT) or len(failed)


def check(python: str, name: str) -> int:
    """Run one of the checks and give its exit code."""
    return subprocess.call([python, *CHECKS[name]], cwd=ROOT)


def need_chromium() -> None:
    """See that the browser for the browser tests is there; root may install Debian's."""
    if not CHROMIUM.exists() and shutil.which("apt-get") and os.geteuid() == 0:
        print("Installing Chromium for the browser tests ...", flush=True)
        quiet = dict(os.environ, DEBIAN_FRONTEND="noninteractive")
        for words in (["update"], ["install", "--yes", "--no-install-recommends", "chromium"]):
            subprocess.call(["apt-get", "--quiet=2", *words], env=quiet)  # noqa: S607 - root's own
    if not CHROMIUM.exists():
        raise Refusal(
            f"the browser tests need Chromium at {CHROMIUM}. Install it (Debian: apt install "
            "chromium) and run this again."
        )


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
