"""What all tests share."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

# Times belong to the machine: on a busy one an example that took long failed where nothing was wrong.
settings.register_profile("untimed", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("untimed")
