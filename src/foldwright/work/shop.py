"""The shop's list: a folder of TOML files, one table for each line of a supplier's sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from functools import cache
from pathlib import Path
from typing import Any

from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.work.contradictions import typed_at
from foldwright.work.files import CannotUse, read_toml
from foldwright.work.walk import Walk
from foldwright.work.wording import short, suggestion

HOUSE_SHOP = Path(__file__).parent.parent / "shop"

LIST_OF_FIELD = {
    "materials.face": "cloths",
    "materials.lining": "cloths",
    "materials.interlining": "cloths",
    "materials.band": "cloths",
    "materials.valance": "cloths",
    "materials.bar": "bars",
    "materials.rod": "rods",
    "materials.board": "boards",
    "materials.bracket": "brackets",
    "materials.tube": "tubes",
    "materials.cord": "cords",
    "materials.tape": "tapes",
    "materials.fixing": "fixings",
    "lift.spring": "springs",
    "lift.clutch": "clutches",
    "lift.motor": "motors",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class ShopHead:
    """What is true of a whole shop file: the units of its bare lengths."""

    system: System


def load_shop(folder: Path) -> ShopList:
    """Read every TOML file of a folder into one list.

    Takes: the folder.
    Gives: the list, each record by its name.
    Raises: CannotUse with every fault of every file.
    """
    files = sorted(folder.glob("*.toml"))
    if not files:
        what = "there is no shop list here"
        remedy = "Name a folder that holds the shop's .toml files."
        raise CannotUse((Fault(where=str(folder), what=what, remedy=remedy),))
    lists, faults = _gather(files)
    if faults:
        raise CannotUse(tuple(faults))
    return ShopList(**lists)


@cache
def house_shop() -> ShopList:
    """Give the invented list that comes along, for the demo and until the shop has its own."""
    return load_shop(HOUSE_SHOP)


def _gather(files: list[Path]) -> tuple[dict[str, dict[str, Any]], list[Fault]]:
    lists: dict[str, dict[str, Any]] = {slot.name: {} for slot in fields(ShopList)}
    faults: list[Fault] = []
    for file in files:
        try:
            shelf = _read_file(file, faults)
        except CannotUse as trouble:
            faults.extend(trouble.faults)
            continue
        for name, records in shelf.items():
            faults.extend(_twice(file.name, name, lists[name], records))
            lists[name].update(records)
    return lists, faults


def _read_file(file: Path, faults: list[Fault]) -> dict[str, dict[str, Any]]:
    """Read one file; its faults are added, each led by the name of the file."""
    typed = read_toml(file)
    walk = Walk(system=System.METRIC)
    head = walk.record(ShopHead, {k: v for k, v in typed.items() if k == "system"}, "")
    walk.system = head.system if head else System.METRIC
    lists = {key: value for key, value in typed.items() if key != "system"}
    read = walk.record(ShopList, lists, "")
    faults.extend(_in_file(fault, file.name) for fault in walk.faults)
    return {slot.name: getattr(read, slot.name) for slot in fields(ShopList)} if read else {}


def _in_file(fault: Fault, name: str) -> Fault:
    return Fault(where=f"{name}, {fault.where}", what=fault.what, remedy=fault.remedy)


def _twice(file: str, name: str, known: dict[str, Any], more: dict[str, Any]) -> Iterator[Fault]:
    for word in known.keys() & more.keys():
        yield Fault(
            where=f"{file}, {name}",
            what=f"“{short(word)}” is also in another file of this folder",
            remedy="Give one of the two another name.",
        )


def unlisted_names(shade: dict[Any, Any], shop: ShopList, where: str) -> Iterator[Fault]:
    """Give a fault for each name in a shade as typed that the shop's list does not hold."""
    for path, list_name in LIST_OF_FIELD.items():
        yield from _unlisted(shade, path, list_name, shop, where)


def unlisted_cloth(roll: dict[Any, Any], shop: ShopList, where: str) -> Iterator[Fault]:
    """Give a fault where a roll as typed is of a cloth that the shop's list does not hold."""
    yield from _unlisted(roll, "cloth", "cloths", shop, where)


def _unlisted(
    table: dict[Any, Any], path: str, list_name: str, shop: ShopList, where: str
) -> Iterator[Fault]:
    name, listed = typed_at(table, path), getattr(shop, list_name)
    if isinstance(name, str) and name not in listed:
        yield Fault(
            where=f"{where}.{path}",
            what=f"“{short(name)}” is not among the shop's {list_name}",
            remedy=suggestion(name, listed, _listed(listed, list_name)),
        )


def _listed(listed: dict[str, Any], list_name: str) -> str:
    if not listed:
        return f"The shop's list holds no {list_name}; add one to its file."
    return "Listed are: " + ", ".join(listed) + "."
