"""The schemas in the docs are those of the code, and hold for what is read and answered."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from jsonschema import Draft202012Validator
from jsonschema.exceptions import ValidationError
from tests.work.documents import documents, with_field

from foldwright.work.document import read_document
from foldwright.work.jobfile import DEMO_JOB
from foldwright.work.schemas import schema_text, schemas
from foldwright.work.shop import HOUSE_SHOP

FOLDER = Path(__file__).parents[2] / "docs" / "schema"
REFRESH = "python -m foldwright.work.schemas docs/schema"


@pytest.mark.parametrize("name", list(schemas()))
def test_the_schema_in_the_docs_is_that_of_the_code(name: str) -> None:
    written = (FOLDER / name).read_text(encoding="utf-8")
    assert written == schema_text(schemas()[name]), f"write them anew: {REFRESH}"


def test_the_docs_hold_no_other_schema() -> None:
    assert {file.name for file in FOLDER.glob("*.json")} == set(schemas())


@pytest.mark.parametrize("schema", schemas().values(), ids=list(schemas()))
def test_each_is_a_schema(schema: dict[str, Any]) -> None:
    Draft202012Validator.check_schema(schema)


def validate(document: Any, name: str) -> None:
    Draft202012Validator(schemas()[name]).validate(document)


def test_the_demo_job_holds_to_its_schema() -> None:
    validate(tomllib.loads(DEMO_JOB.read_text(encoding="utf-8")), "job.schema.json")


@pytest.mark.parametrize("file", sorted(HOUSE_SHOP.glob("*.toml")), ids=lambda file: file.name)
def test_the_shop_s_files_hold_to_their_schema(file: Path) -> None:
    validate(tomllib.loads(file.read_text(encoding="utf-8")), "shop.schema.json")


@given(documents())
def test_what_can_be_read_holds_to_the_schema(document: dict[str, Any]) -> None:
    validate(json.loads(json.dumps(document)), "job.schema.json")


@pytest.mark.parametrize(
    ("path", "typed"),
    [
        ("opening.widht_top", "3"),
        ("opening.width_top", True),
        ("opening.width_top", -1),
        ("mount.place", "insde"),
        ("design.row_count", 0),
        ("tag", "x" * 61),
    ],
)
def test_the_schema_refuses_what_the_reader_refuses(path: str, typed: Any) -> None:
    document = with_field(path, typed)
    assert read_document(document).faults
    with pytest.raises(ValidationError):
        validate(document, "job.schema.json")
