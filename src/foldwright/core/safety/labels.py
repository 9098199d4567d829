"""What the label of each market says, and what is still missing for it.

The warnings are the tool's own words, a draft to lay the label out with: where a text is
prescribed, it must be taken from the regulation or the standard itself.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date

from foldwright.core.facts.markets import Market
from foldwright.core.safety.choices import SafetyChoices
from foldwright.core.safety.report import LabelField, LabelText
from foldwright.core.safety.rules import rule_named

ENGLISH = (
    "WARNING",
    (
        "A cord or a loop can strangle a small child. Keep cords out of reach; move cots, beds and"
        " furniture away from them; never cut, knot or untie them."
    ),
)
FRENCH = (
    "MISE EN GARDE",
    (
        "Un cordon ou une boucle peut étrangler un jeune enfant. Gardez les cordons hors de portée;"
        " éloignez-en berceaux, lits et meubles; ne les coupez, nouez ou dénouez jamais."
    ),
)


def label_texts(
    safety: SafetyChoices, tag: str, markets: Sequence[Market]
) -> tuple[LabelText, ...]:
    """Give the label of every market sold into.

    Takes: what was typed for the label; the shade's tag, its model number where none is typed;
    the markets, none for all.

    Gives: for each market the fields with what fills them, a draft of the warning, the letter
    heights that are known, and what must be read first.

    Source: sor-2019-97, ss. 10 to 15; 16-cfr-1120; en-13120-summary; au-label-manual.

    >>> canada, = label_texts(SafetyChoices(made_on=date(2026, 5, 4)), "A", (Market.CANADA,))
    >>> [field.text for field in canada.fields if field.name == "date of making"]
    ['2026-05']
    >>> [field.name for field in canada.missing]
    ["maker's name", "maker's town"]
    """
    sold_into = markets or tuple(Market)
    return tuple(LABELS[market](safety, tag) for market in Market if market in sold_into)


def _canada(safety: SafetyChoices, tag: str) -> LabelText:
    month = _date(safety.made_on, "%Y-%m")
    imported = _imported(safety)
    return LabelText(
        market=Market.CANADA,
        languages=("English", "French"),
        fields=(*_maker(safety), *imported, _model(safety, tag), month),
        warnings=(*ENGLISH, *FRENCH),
        letter_heights=(
            *rule_named("canada.signal-word").figures,
            *rule_named("canada.label").figures,
        ),
        note="Take the wording of the warning from section 15 of the regulations, in both"
        " languages. Name neither the Act nor the Regulations.",
    )


def _united_states(safety: SafetyChoices, tag: str) -> LabelText:
    day = _date(safety.made_on, "%Y-%m-%d")
    return LabelText(
        market=Market.UNITED_STATES,
        languages=("English",),
        fields=(*_maker(safety), _model(safety, tag), day),
        warnings=ENGLISH,
        letter_heights=(),
        note="A missing maker's label is a listed hazard. Take contents and wording from the"
        " regulation and from the edition of the standard that holds for the day of making.",
    )


def _europe_and_uk(safety: SafetyChoices, tag: str) -> LabelText:
    del tag
    return LabelText(
        market=Market.EUROPE_AND_UK,
        languages=("that of the country",),
        fields=_maker(safety)[:1],
        warnings=ENGLISH,
        letter_heights=(),
        note="Check the text: wording, pictures and their size stand in the standard, which was"
        " not read. A safety device carries a warning of its own.",
    )


def _australia(safety: SafetyChoices, tag: str) -> LabelText:
    del tag
    return LabelText(
        market=Market.AUSTRALIA,
        languages=("English",),
        fields=(
            _field("installer's name", safety.installer_name, "installer_name"),
            _field("how to reach the installer", safety.installer_contact, "installer_contact"),
        ),
        warnings=ENGLISH,
        letter_heights=(),
        note="Check the text: the label is known from a product manual only. Leave the warning"
        " tags on the cord.",
    )


LABELS: dict[Market, Callable[[SafetyChoices, str], LabelText]] = {
    Market.CANADA: _canada,
    Market.UNITED_STATES: _united_states,
    Market.EUROPE_AND_UK: _europe_and_uk,
    Market.AUSTRALIA: _australia,
}


def _field(name: str, text: str, key: str) -> LabelField:
    return LabelField(name=name, text=text.strip(), path=f"safety.{key}")


def _maker(safety: SafetyChoices) -> tuple[LabelField, LabelField]:
    return (
        _field("maker's name", safety.maker_name, "maker_name"),
        _field("maker's town", safety.maker_town, "maker_town"),
    )


def _imported(safety: SafetyChoices) -> tuple[LabelField, ...]:
    return (_field("importer", safety.importer, "importer"),) if safety.importer.strip() else ()


def _model(safety: SafetyChoices, tag: str) -> LabelField:
    return _field("model number", safety.model_number or tag, "model_number")


def _date(made_on: date | None, form: str) -> LabelField:
    return _field("date of making", made_on.strftime(form) if made_on else "", "made_on")
