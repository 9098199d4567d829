"""What is wrong with something typed: what, where, and what to do."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True, slots=True)
class Fault:
    """One thing that cannot be used as typed.

    `where` is the dotted path in the job file, for example
    `shades.2.opening.width_top`; shades are counted from 1.
    """

    where: str
    what: str
    remedy: str

    @property
    def sentence(self) -> str:
        """Give the fault as it is shown.

        >>> Fault(where="shades.1.tag", what="it is empty", remedy="Type a tag.").sentence
        'shades.1.tag: it is empty. Type a tag.'
        """
        return f"{self.where}: {self.what}. {self.remedy}"
