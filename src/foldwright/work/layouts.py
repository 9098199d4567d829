"""Search the layouts that a shade may have."""

from __future__ import annotations

from foldwright.core.check.layouts.offers import Offers
from foldwright.core.check.layouts.proposing import propose_layouts
from foldwright.core.check.plan import ShadePlan
from foldwright.core.check.review import Review
from foldwright.work.job import Job


def offer_layouts(job: Job, plan: ShadePlan) -> Offers | None:
    """Offer the best layout of a planned shade and two others; None where none can be drawn."""
    return propose_layouts(Review(plan=plan, shop=job.shop, habits=job.habits, markets=job.markets))
