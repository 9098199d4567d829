"""The label of each market: what fills it, what is missing, and whose words it speaks."""

from __future__ import annotations

from datetime import date

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import Length
from foldwright.core.safety.choices import SafetyChoices
from foldwright.core.safety.labels import label_texts
from foldwright.core.safety.report import LabelText

FULL = SafetyChoices(
    made_on=date(2026, 6, 1),
    maker_name="The invented workroom",
    maker_town="Nowhere",
    importer="Another, Elsewhere",
    installer_name="The same",
    installer_contact="At the shop",
)


def label(market: Market, safety: SafetyChoices = FULL) -> LabelText:
    (text,) = label_texts(safety, "Bay", (market,))
    return text


def fields(market: Market, safety: SafetyChoices = FULL) -> dict[str, str]:
    return {field.name: field.text for field in label(market, safety).fields}


def test_canada_asks_for_two_languages_and_the_date_as_year_and_month() -> None:
    """Source: sor-2019-97, ss. 10 to 13."""
    text = label(Market.CANADA)
    assert text.languages == ("English", "French")
    assert fields(Market.CANADA) == {
        "maker's name": "The invented workroom",
        "maker's town": "Nowhere",
        "importer": "Another, Elsewhere",
        "model number": "Bay",
        "date of making": "2026-06",
    }
    assert [height.value for height in text.letter_heights] == [Length.mm(5), Length.mm("2.5")]
    assert {"WARNING", "MISE EN GARDE"} <= set(text.warnings)
    assert "section 15" in text.note


def test_the_united_states_ask_for_maker_town_date_and_model() -> None:
    found = fields(Market.UNITED_STATES)
    assert list(found) == ["maker's name", "maker's town", "model number", "date of making"]
    assert found["date of making"] == "2026-06-01"


def test_europe_says_check_the_text_and_australia_asks_for_the_installer() -> None:
    assert "Check the text" in label(Market.EUROPE_AND_UK).note
    assert list(fields(Market.AUSTRALIA)) == ["installer's name", "how to reach the installer"]


def test_what_is_empty_is_missing_and_says_where_to_type_it() -> None:
    for market in Market:
        assert label(market).missing == ()
        empty = label(market, SafetyChoices())
        assert empty.missing
        assert all(hasattr(FULL, each.path.removeprefix("safety.")) for each in empty.missing)


def test_an_importer_is_named_only_where_there_is_one() -> None:
    assert "importer" not in fields(Market.CANADA, SafetyChoices())


def test_a_model_number_goes_before_the_tag() -> None:
    assert fields(Market.CANADA, SafetyChoices(model_number="M 7"))["model number"] == "M 7"


def test_no_warning_prints_the_numbers_that_only_the_regulation_may_word() -> None:
    for market in Market:
        assert not any(character.isdigit() for text in label(market).warnings for character in text)
