"""Bayleaf: a checked book of specifications, procedures and arithmetic for the service bay."""

from __future__ import annotations

__version__ = "0.1.0"
