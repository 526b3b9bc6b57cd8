"""A late pattern is like any other, and none of those in the tools is broken."""

from __future__ import annotations

import gc
import re

import pytest

from bayleaf.checks import all_rules
from bayleaf.late import Late


def test_it_finds_what_the_pattern_finds():
    late, pattern = Late(r"(\w)\1", re.I), re.compile(r"(\w)\1", re.I)
    text = "Aardvark, keel, xyzzy"
    assert [m.span() for m in late.finditer(text)] == [m.span() for m in pattern.finditer(text)]
    assert late.findall(text) == pattern.findall(text)
    assert late.match(text, 2) is pattern.match(text, 2) is None and late.match(text, 0)[0] == "Aa"


def test_it_is_compiled_at_its_first_use():
    broken = Late("(")
    assert broken.pattern == "("
    with pytest.raises(re.error):
        broken.search("x")


def test_every_late_pattern_of_the_rules_compiles():
    all_rules()
    found = [held for held in gc.get_objects() if isinstance(held, Late) and held.pattern != "("]
    assert len(found) > 60
    for late in found:
        re.compile(late.pattern, late.flags)
