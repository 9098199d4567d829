"""Every JSON Schema, by the name of its file; run as a module to write them to a folder."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from foldwright.core.check.boards.board import SharedBoard
from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.facts.records import ShopList
from foldwright.core.lift.givens import LiftCase
from foldwright.core.quantity.rounding import System
from foldwright.work.answers import (
    BoardsAnswer,
    FaultsAnswer,
    GroupsAnswer,
    LayoutsAnswer,
    PlanAnswer,
    WhyAnswer,
)
from foldwright.work.cut_answer import CutAnswer
from foldwright.work.document import typed_habits
from foldwright.work.job import JobHead
from foldwright.work.lifting import LiftAnswer
from foldwright.work.schema import DIALECT, AnswerWriter, PlainWriter, Schema, TypedWriter
from foldwright.work.stock_answer import StockAnswer


def schemas() -> dict[str, Schema]:
    """Give every schema by the name of its file."""
    return {
        "job.schema.json": _job(),
        "shop.schema.json": _shop(),
        "lift-case.schema.json": _lift_case(),
        "lift-answer.schema.json": AnswerWriter().document(LiftAnswer, "A lift, answered"),
        "plan-answer.schema.json": AnswerWriter().document(PlanAnswer, "A job, planned"),
        "layouts-answer.schema.json": AnswerWriter().document(
            LayoutsAnswer, "Layouts of a job, searched"
        ),
        "cut-answer.schema.json": AnswerWriter().document(CutAnswer, "Cloths of a job, cut"),
        "stock-answer.schema.json": AnswerWriter().document(StockAnswer, "Stock lengths, cut"),
        "groups-answer.schema.json": AnswerWriter().document(
            GroupsAnswer, "Groups of a job, matched"
        ),
        "boards-answer.schema.json": AnswerWriter().document(
            BoardsAnswer, "Shared boards of a job, marked"
        ),
        "why-answer.schema.json": AnswerWriter().document(WhyAnswer, "A figure, explained"),
        "faults.schema.json": AnswerWriter().document(FaultsAnswer, "What could not be used"),
    }


def schema_text(schema: Schema) -> str:
    """Give a schema as it stands in its file."""
    return json.dumps(schema, indent=2, ensure_ascii=False) + "\n"


def _job() -> Schema:
    writer = TypedWriter()
    shades = {"type": "array", "items": writer.record(ShadeSpec)}
    properties = {
        "job": writer.record(JobHead),
        "habits": writer.record(typed_habits()),
        "shades": shades,
        "rolls": {"type": "array", "items": writer.record(ReceivedRoll)},
        "groups": {"type": "array", "items": writer.record(ShadeGroup)},
        "boards": {"type": "array", "items": writer.record(SharedBoard)},
    }
    return _whole(writer, "A job file", properties, ["job"])


def _shop() -> Schema:
    writer = TypedWriter()
    writer.record(ShopList)
    lists = writer.definitions.pop("ShopList")["properties"]
    system = {"enum": [system.value for system in System]}
    return _whole(writer, "A file of the shop's list", {"system": system, **lists}, ["system"])


def _lift_case() -> Schema:
    writer = PlainWriter()
    writer.record(LiftCase)
    case = writer.definitions.pop("LiftCase")
    properties = {"name": {"type": "string"}, **case["properties"]}
    return _whole(writer, "One lift, in SI", properties, case["required"])


def _whole(
    writer: TypedWriter | PlainWriter, title: str, properties: dict[str, Any], required: list[str]
) -> Schema:
    return {
        "$schema": DIALECT,
        "title": title,
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": False,
        "$defs": writer.definitions,
    }


def write_schemas(folder: Path) -> None:
    """Write every schema into a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, schema in schemas().items():
        (folder / name).write_text(schema_text(schema), encoding="utf-8")


if __name__ == "__main__":
    write_schemas(Path(sys.argv[1]))
