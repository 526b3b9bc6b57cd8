"""A first look never misses what the pattern behind it finds."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayleaf.checks.context import Context
from bayleaf.checks.prose.signs import EVERY, plain_of, sign, signs_of, words_of
from bayleaf.checks.rules.safe import emission_defeated as defeat
from bayleaf.checks.rules.safe import ordered_outside_steps as ordered
from bayleaf.checks.rules.safe import refused_practice as refused
from bayleaf.checks.rules.unit import number_in_step as number
from bayleaf.checks.rules.word import vague
from bayleaf.checks.rules.word import word_twice as twice
from bayleaf.records import load
from tests.checks.small import lay_out

FEW = settings(max_examples=60, deadline=None, derandomize=True, database=None)
AROUND = st.sampled_from(["", "Then ", "Read it. (", "x; ", "Do this - ", "\n"])


def found(pattern: str, flags: re.RegexFlag = re.IGNORECASE | re.DOTALL):
    """Texts that a pattern finds, among words."""
    return (
        st.tuples(AROUND, st.from_regex(re.compile(pattern, flags)), AROUND)
        .map("".join)
        .filter(re.compile(pattern, flags).search)
    )


@pytest.mark.parametrize("row", range(len(refused.REFUSED)))
def test_refused_practices(row):
    @FEW
    @given(found(refused.REFUSED[row][0]))
    def holds(text):
        assert refused.REFUSED[row][1] in [name for _pattern, name, _instead in refused._likely(signs_of(text))]

    holds()


@FEW
@given(found(defeat.DEFEAT.pattern))
def test_defeats(text):
    signs = signs_of(text)
    assert signs & defeat._ALONE or (signs & defeat._WITH and signs & defeat._WHAT)


@FEW
@given(found(number._number_with_unit().pattern, re.NOFLAG))
def test_numbers_with_a_unit(text):
    assert signs_of(text) & number._DIGIT


@FEW
@given(found(vague._VAGUE.pattern))
def test_vague_words(text):
    assert vague._may(plain_of(text), words_of(text))


@FEW
@given(found(ordered._ORDER.pattern))
def test_orders_outside_the_steps(text):
    assert ordered._may(text)


@FEW
@given(found(twice._TWICE.pattern, re.NOFLAG))
def test_words_twice(text):
    assert not text.isascii() or twice._may(words_of(text))


def test_synonyms_are_found_by_their_longest_word(tmp_path):
    book = load(lay_out(tmp_path))
    record = next(iter(book.of("components").values()))
    others = Context(book).synonyms
    assert others
    for other in others:
        for text in (other, f"({other.upper()}).", f"a-{other}/b", f"[[x|{other}]]"):
            record.data["summary"] = f"About {text}"
            context = Context(book)
            assert context.synonym_pattern.search(context.all_prose(record)) and context.may_hold_synonyms(record)


def test_a_letter_outside_ascii_may_be_any_sign():
    assert signs_of("\u017fiphon") == EVERY  # a long s, which patterns take for an s
    assert re.search("s", "\u017f", re.IGNORECASE)


def test_a_sign_is_the_beginning_of_a_word_or_of_a_part_of_one():
    bit = sign("frobnic")
    assert all(signs_of(text) & bit for text in ("Frobnicate it.", "un-frobnicated", "a/frobnic,b", "'FROBNIC'"))
    seven = sign("7")
    assert signs_of("7") & seven and signs_of("x, 77") & seven
    assert not any(signs_of(text) & bit for text in ("unfrobnicated", "frob nic", "", "x_frobnic"))
