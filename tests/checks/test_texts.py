"""First looks at the prose of a record never miss what the pattern behind them finds."""

from __future__ import annotations

import re

from bayleaf.checks.context import Context
from bayleaf.records import load
from tests.checks.small import lay_out


def test_a_synonym_is_found_by_its_longest_word(tmp_path):
    book = load(lay_out(tmp_path))
    record = next(iter(book.of("components").values()))
    others = Context(book).texts.synonyms
    assert others
    for other in others:
        for text in (other, f"({other.upper()}).", f"a-{other}/b", f"[[x|{other}]]", f"{other}\u017f"):
            record.data["summary"] = f"About {text}"
            texts = Context(book).texts
            assert texts.may_hold_synonyms(record)
            assert texts.synonym_pattern.search(texts.all_prose(record)) or not text.isascii()


def test_a_text_outside_ascii_may_hold_any_synonym(tmp_path):
    book = load(lay_out(tmp_path))
    record = next(iter(book.of("components").values()))
    record.data["summary"] = "About a \u017fpark"  # a long s, which patterns take for an s
    assert Context(book).texts.may_hold_synonyms(record)


def test_prose_is_handed_out_only_where_the_pattern_is_found_in_it(tmp_path):
    texts, word = Context(book := load(lay_out(tmp_path))).texts, re.compile(r"\bdirt\b")
    records = [record for record in book.records() if record.sound]
    holding = [r for r in records if any(word.search(text) for _path, text in texts.prose(r))]
    assert 0 < len(holding) < len(records)
    assert [r for r in records if texts.with_match(r, word)] == holding
