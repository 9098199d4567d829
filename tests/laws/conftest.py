"""Laws are checked for truth here; speed is the benchmarks' affair."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("laws", deadline=None)
settings.load_profile("laws")
