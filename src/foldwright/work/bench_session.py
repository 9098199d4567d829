"""One session at the bench: the card of the shade, laid over what was noted so far."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from functools import cached_property
from typing import Any

from foldwright.core.facts.proving import MOST_TURNS_COUNTED
from foldwright.core.prove.accepting import judge
from foldwright.core.prove.card_fields import is_sprung
from foldwright.core.prove.card_step import CardOrder, CardStep, Judged, Outcome, Reading
from foldwright.core.prove.kinds import turns_now
from foldwright.core.prove.observing import Observation
from foldwright.core.quantity.rounding import System
from foldwright.work.bench import Entry, Kind, Record
from foldwright.work.bench_observing import Observed, observed
from foldwright.work.bench_reading import read_step

A_YEAR = timedelta(days=365.25)
YEARS_WITHOUT_RECORD = 25.0  # as long as shades hang: the spring may have lost all it can lose
OPEN, PART = "open", "part"
NOT_KNOWN = -1.0  # turns that no spring has


@dataclass(frozen=True, kw_only=True)
class Session:
    """A card and a record; what is made of both is worked out when it is asked for."""

    order: CardOrder
    steps: tuple[CardStep, ...]
    record: Record | None
    system: System  # of the job: what a bare number was typed in
    earlier: tuple[Record, ...] = ()  # what was noted before this session began, oldest first
    all_steps: tuple[CardStep, ...] = ()  # of the whole card, by which the earlier ones are read

    def typed(self, step: CardStep) -> dict[str, str]:
        """Give what stands in the fields of a step."""
        return self.record.typed_at(step.id) if self.record else {}

    def readings(self, step: CardStep) -> dict[str, Reading]:
        """Give the readings of a step."""
        return read_step(step, self.typed(step), self.system)[0]

    def judged(self, step: CardStep) -> Judged:
        """Hold the readings of a step against their limits."""
        return self._judged[step.id]

    @cached_property
    def _judged(self) -> dict[str, Judged]:
        return {step.id: judge(step.id, self.readings(step), self.order) for step in self.steps}

    def state(self, step: CardStep) -> str:
        """Tell how a step stands: open, begun, or what it came to."""
        outcome, read = self.judged(step).outcome, self.readings(step)
        if not self.typed(step):
            return OPEN
        wanted = {ask.name for ask in step.asks if not (ask.usual or ask.optional)}
        if outcome in {None, Outcome.PASS} and not wanted <= set(read):
            return PART
        return outcome.value if outcome else PART

    def after(self, step_id: str) -> str:
        """Give the step that follows one, or nothing after the last."""
        ids = [step.id for step in self.steps]
        return ids[ids.index(step_id) + 1] if step_id in ids[:-1] else ""

    @property
    def resume(self) -> str:
        """Give the step to go on with: the first after the last one noted that is not done."""
        ids = [step.id for step in self.steps]
        last = self.record.last.step if self.record and self.record.last else ""
        start = ids.index(last) if last in ids else 0
        waiting = [step.id for step in self.steps if self.state(step) in {OPEN, PART}]
        later = [one for one in ids[start:] if one in waiting]
        return next(iter(later or waiting), ids[-1])

    def words(self, entry: Entry) -> str:
        """Tell an entry as it was typed, field by field."""
        step = next((one for one in self.steps if one.id == entry.step), None)
        asks = step.asks if step else ()
        told = (_told(ask.label, ask.group, _shown(ask.options, entry.typed.get(ask.name, "")))
                for ask in asks)  # fmt: skip
        return "; ".join(filter(None, told)) or "; ".join(entry.typed.values())

    @cached_property
    def observed(self) -> tuple[Observed, ...]:
        """Give all that was noted as observations, each with its entry."""
        if self.record is None:
            return ()
        return observed(self.record, self.steps, self.order, self.system)

    @property
    def is_visit(self) -> bool:
        """Tell whether a shade that has hung for years is looked at again."""
        return self.record is not None and self.record.kind is Kind.VISIT

    @property
    def years(self) -> float:
        """Give the years from the first session on record to this one; many without a record."""
        if self.record is None or not self.earlier:
            return YEARS_WITHOUT_RECORD
        return (self.record.begun_at - self.earlier[0].begun_at) / A_YEAR

    @cached_property
    def observed_earlier(self) -> tuple[Observed, ...]:
        """Give what was noted in earlier sessions of the same shade."""
        return tuple(
            one
            for record in self.earlier
            for one in observed(record, self.all_steps, self.order, self.system)
        )

    @property
    def is_wound(self) -> bool:
        """Tell whether turns were ever counted: until then those planned stand in."""
        return any(hasattr(one.observation, "turns") for one in self._all_observed)

    @property
    def _all_observed(self) -> tuple[Observed, ...]:
        return (*self.observed_earlier, *self.observed)

    @cached_property
    def turns_now(self) -> float | None:
        """Give the turns that are in the spring by the last entry that counted them."""
        if not is_sprung(self.order):
            return None
        planned = self.order.headrail.pretension_turns
        counted = [
            one.observation for one in self._all_observed if not _is_miscounted(one.observation)
        ]
        found = turns_now(counted, planned.value if planned else NOT_KNOWN)
        return None if found == NOT_KNOWN else found

    @property
    def everything(self) -> Mapping[str, Any]:
        """Give all that has figures in it, under names that stay the same."""
        return {"steps": {step.id: step for step in self.steps}, "judged": self._judged}


def _is_miscounted(observation: Observation) -> bool:
    return getattr(observation, "turns", 0.0) > MOST_TURNS_COUNTED.value


def _told(label: str, group: str, text: str) -> str:
    place = f"{group}, {label[:1].lower()}{label[1:]}" if group else label
    return f"{place}: {text}" if text else ""


def _shown(options: tuple[tuple[str, str], ...], text: str) -> str:
    return dict(options).get(text, text)
