"""An invented shade, for the examples of the functions beside."""

from __future__ import annotations

import numpy as np

from foldwright.core.design.choices import Choices
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import Market
from foldwright.core.measure.opening import AskedSize, Mount, Opening
from foldwright.core.measure.site import Site
from foldwright.core.rig import example as rigged
from foldwright.core.safety.choices import SafetyChoices
from foldwright.core.safety.order import SafetyOrder

ORDER = SafetyOrder(
    tag="A",
    site=Site(opening=Opening(), mount=Mount(), asked=AskedSize(), habits=house_habits()),
    safety=SafetyChoices(),
    lift=rigged.LIFT,
    design=Choices(),
    size=rigged.SIZE,
    layout=rigged.LAYOUT,
    chosen=rigged.CHOSEN,
    shop=rigged.SHOP,
    habits=house_habits(),
    markets=(Market.CANADA,),
    draws=np.full((1, 16), 0.5),
    weights=rigged.WEIGHTS,
)
