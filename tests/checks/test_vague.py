"""The first look for vague words misses none that the pattern finds: it would silence the rule. Our own rule, no outside source."""

from __future__ import annotations

import pytest

from bayleaf.checks.rules.word import vague


@pytest.mark.parametrize(
    "phrase",
    [
        *("as necessary", "if required", "when needed", "where applicable", "as appropriate", "properly", "Adequately"),
        *("suitable", "sufficiently", "approx. 3", "reasonably", "carefully", "etc", "and/or", "and so on"),
    ],
)
def test_what_the_pattern_finds_has_one_of_the_stems(phrase):
    assert vague._VAGUE.search(phrase) and any(stem in phrase.lower() for stem in vague._STEMS)
