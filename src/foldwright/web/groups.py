"""The groups of a job as its page shows them: the room drawn, and what each shade gives up."""

from __future__ import annotations

from dataclasses import dataclass, replace

from markupsafe import Markup

from foldwright.core.check.groups.matching import Matched, Matching
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill, show_value
from foldwright.web.opened import OpenJob
from foldwright.work.groups import rooms_of_group
from foldwright.write.svg import svg


@dataclass(frozen=True, kw_only=True)
class GroupView:
    """One group, matched, for one reader."""

    url: str
    number: int
    matching: Matching
    system: System

    @property
    def name(self) -> str:
        """Give its name as typed."""
        return self.matching.group.name

    @property
    def verdict(self) -> str:
        """Say whether its shades match, and on which lines."""
        spacing, apart = self.matching.spacing, self.matching.apart
        if spacing is None or apart is None:
            return "It cannot be matched yet."
        words = "They match as they hang" if self.matching.stands else "They would match"
        lines = f"rows {show_value(spacing, self.system)} apart"
        return f"{words}: {lines}, level within {show_value(apart, self.system)}."

    def told(self, shade: Matched) -> str:
        """Say how a shade would hang, and what it gives up."""
        return fill(shade.way.sentence, shade.way.figures, self.system)

    @property
    def pictures(self) -> dict[str, Markup]:
        """Draw the room as it is and, where that differs, as it would be."""
        return {words: Markup(text) for words, text in self.drawings.items()}  # noqa: S704 - the writer escapes

    @property
    def drawings(self) -> dict[str, str]:
        """Write the drawings, each under words of its own on the page."""
        drawn = rooms_of_group(self.matching, self.system)
        return {
            words: svg(replace(drawing, name=f"room-{self.number}-{words.replace(' ', '-')}"))
            for words, drawing in drawn.items()
        }


def group_views(job: OpenJob) -> list[GroupView]:
    """Match every group of a job that was read; none while it has faults."""
    if job.reading.job is None:
        return []
    matchings = job.desk.shelf.groups(job.entry.document, job.reading.job)
    return [
        GroupView(
            url=f"{job.url}/groups/{number}",
            number=number,
            matching=matching,
            system=job.system,
        )
        for number, matching in enumerate(matchings, start=1)
    ]
