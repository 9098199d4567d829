"""`foldwright serve`: open the shop's pages, for this machine alone unless told otherwise."""

from __future__ import annotations

import argparse

from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.telling import tell_faults
from foldwright.core.why.fault import Fault
from foldwright.web.serving import serve
from foldwright.work.book import BookTrouble
from foldwright.work.files import CannotUse


def run(options: argparse.Namespace) -> int:
    """Serve until stopped from the keyboard."""
    try:
        serve(options.host, options.port, options.data, open_browser=options.open)
    except CannotUse as trouble:
        tell_faults(trouble.faults, as_json=False)
        return BAD_INPUT
    except BookTrouble as trouble:
        return _refuse(options, str(trouble).rstrip("."))
    except OSError as trouble:
        return _refuse(options, f"the folder cannot be used ({trouble.strerror})")
    return GOOD


def _refuse(options: argparse.Namespace, what: str) -> int:
    remedy = "Mend that, or name another folder with --data."
    tell_faults((Fault(where=str(options.data), what=what, remedy=remedy),), as_json=False)
    return BAD_INPUT
