"""The book as it stands, as the tests of pages use it: made once for a module."""

from __future__ import annotations

import pytest

from bayleaf.pages.building.uses import Uses
from bayleaf.pages.tree import pages
from tests.pages.shown import real_book


@pytest.fixture(scope="module")
def view():
    return Uses(real_book())


@pytest.fixture(scope="module")
def made():
    return pages(real_book())
