"""What a reader says when a text cannot be used as typed."""

from __future__ import annotations


class Unreadable(ValueError):  # noqa: N818 - it is told to the person who typed, as it stands
    """A text that cannot be read as the quantity it should be.

    `what` says in one clause what is wrong, without a full stop; `remedy` is a
    sentence that says what to type instead.

    >>> str(Unreadable(what="3/15 is on no tape", remedy="Type 35 3/16."))
    '3/15 is on no tape. Type 35 3/16.'
    """

    def __init__(self, *, what: str, remedy: str) -> None:
        super().__init__(f"{what}. {remedy}")
        self.what = what
        self.remedy = remedy
