"""Serve the workroom on this machine: open the book, print the address, answer until stopped."""

from __future__ import annotations

import os
import socket
import sys
import webbrowser
from datetime import UTC, datetime
from pathlib import Path

import uvicorn

from foldwright.core.facts.records import ShopList
from foldwright.core.why.fault import Fault
from foldwright.web.app import create_app
from foldwright.web.guard import THIS_MACHINE
from foldwright.work.book import Book
from foldwright.work.files import CannotUse
from foldwright.work.shop import house_shop, load_shop

BOOK_NAME = "book.sqlite"
SHOP_FOLDER = "shop"
SECONDS_TO_FINISH = 3
EVERY_ADDRESS = ("", "0.0.0.0", "::")  # noqa: S104 - refused, never listened at


def serve(host: str, port: int, data_folder: Path, *, open_browser: bool = False) -> None:
    """Serve until stopped from the keyboard.

    Takes: the address to listen at; the folder that holds the book of jobs and, in a
    folder `shop`, the shop's own list where it has one; whether to open a browser.
    Raises: CannotUse where the address or port cannot be listened at or the shop's list
    cannot be read; BookTrouble where the book cannot be opened.
    """
    listener = _listen(host, port)
    with listener:
        data_folder.mkdir(parents=True, exist_ok=True)
        shop = _shop(data_folder / SHOP_FOLDER)
        book = Book(data_folder / BOOK_NAME, _now)
        book.enter_demo_job()
        address = f"http://{host}:{listener.getsockname()[1]}/"
        print(f"Foldwright is at {address}", "Stop it with Ctrl+C.", sep="\n", flush=True)  # noqa: T201 - the one thing a person needs
        if open_browser:
            _open(address)
        _answer(book, shop, host, listener)


def _answer(book: Book, shop: ShopList, host: str, listener: socket.socket) -> None:
    app = create_app(book, shop, _now, hosts=(*THIS_MACHINE, host))
    config = uvicorn.Config(
        app,
        access_log=False,
        lifespan="off",
        log_level="warning",
        server_header=False,
        timeout_graceful_shutdown=SECONDS_TO_FINISH,
        ws="none",
    )
    try:
        uvicorn.Server(config).run(sockets=[listener])
    finally:
        book.close()


def _listen(host: str, port: int) -> socket.socket:
    if host in EVERY_ADDRESS:
        what = f"“{host}” stands for every address, and the pages answer only under the one given"
        remedy = "Give this machine's own address in the network, such as 192.168.1.20."
        raise CannotUse((Fault(where="--host", what=what, remedy=remedy),))
    try:
        return socket.create_server((host, port))
    except OSError as trouble:
        fault = Fault(
            where=f"port {port} on {host}",
            what=f"it cannot be used ({trouble.strerror or trouble})",
            remedy="Stop the program that uses it, or choose another with --port.",
        )
        raise CannotUse((fault,)) from None


def _shop(folder: Path) -> ShopList:
    return load_shop(folder) if folder.is_dir() else house_shop()


def _open(address: str) -> None:
    """Open a browser where there is a screen to show it on."""
    if sys.platform in ("darwin", "win32") or {"DISPLAY", "WAYLAND_DISPLAY"} & os.environ.keys():
        webbrowser.open(address)


def _now() -> datetime:
    return datetime.now(UTC)
