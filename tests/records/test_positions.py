"""Places in a text: where one look at a line tells a place, it is the place that the parser tells."""

from __future__ import annotations

import pytest

from bayleaf.records import load
from bayleaf.records.record import Record, Source
from bayleaf.records.yaml.strict import load_text
from tests.checks.small import lay_out


def both(raw: bytes, name: str, key: bool) -> tuple:
    """(what one look tells, what the parser tells)."""
    record = Record("components", "x", load_text(raw).data, Source("kb/components/x.yaml", raw))
    looked = record.source.spot(name, key)
    record.source.root = record.source.node((), False)
    return looked, record.spot((name,), key)


def test_every_field_of_the_small_book_has_the_place_that_the_parser_tells(tmp_path):
    looks = 0
    for record in load(lay_out(tmp_path)).records():
        for name in record.data if not record.prefix else ():
            for key in (False, True):
                looked, told = both(record.source.raw, name, key)
                assert looked in (None, told), f"{record.file} {name}"
                looks += looked is not None
    assert looks > 500


@pytest.mark.parametrize(
    "text",
    [
        "title: Plain",
        "title:   Far  off  ",
        "title: Ends here # and this is a comment",
        "title: 'quoted'",
        'title: "a: b"',
        "title: {a: b}",
        "title: [a, b]",
        "title: |\n  a block\n  of text",
        "title: >-\n  folded",
        "title: goes\n  on below",
        "title:\n  below",
        "title: 12.5",
        "title: a:b",
        "title: x#y",
        "title: Ümläut",
        "title: [\n  a, b]",
        "title:\n- a",
        "title: goes\n\n  on",
        "title: before\n# a comment",
    ],
)
@pytest.mark.parametrize("ending", ["\n", "\r\n"])
def test_what_is_not_plain_is_left_to_the_parser(text, ending):
    raw = f"# first line\n{text}\nsummary: Last\n".replace("\n", ending).encode()
    for name in ("title", "summary"):
        for key in (False, True):
            looked, told = both(raw, name, key)
            assert looked in (None, told)


def test_a_name_that_stands_twice_at_the_start_of_a_line_is_left_to_the_parser():
    raw = b'# first line\nsummary: "a text\ntitle: that goes on"\ntitle: Real\n'
    assert both(raw, "title", False) == (None, (4, 8, 12))
