"""The page of a shade tells every rule on children that speaks of it, and what no longer holds."""

from __future__ import annotations

import re
from html import unescape

from starlette.testclient import TestClient

KITCHEN, NURSERY = 5, 8


def words(client: TestClient, job: int, shade: int) -> str:
    html = client.get(f"/jobs/{job}/shades/{shade}").text
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", html)))


def test_the_rules_and_their_verdicts_are_told(client: TestClient, job: int) -> None:
    told = words(client, job, NURSERY)
    assert "Rules on children: nothing here certifies the shade" in told
    assert "must be tested" in told
    assert "vacated 2023-09-12, not in force" in told
    assert "law, text read" in told
    assert "16-cfr-1120" in told


def test_a_rule_on_chains_is_told_of_a_chain_alone(client: TestClient, job: int) -> None:
    chain = "A continuous loop has a tension device"
    assert chain in words(client, job, KITCHEN)
    assert chain not in words(client, job, NURSERY)


def test_the_label_says_what_is_typed_and_whose_words_to_take(client: TestClient, job: int) -> None:
    told = words(client, job, KITCHEN)
    assert "maker's name: The invented workroom" in told
    assert "the prescribed wording is taken from the rule itself" in told


def test_the_form_asks_for_children_and_guards(client: TestClient, job: int) -> None:
    told = words(client, job, KITCHEN)
    assert "Safety of children" in told
    assert "held at every ring, yet free to run when raised" in told
