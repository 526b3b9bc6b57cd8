"""Strict reading: what public collections of YAML oddities hold, and what could hide, hang or end the process.

The readings of YAML 1.1 and 1.2 named here are recalled from both specifications, no text was open.
"""

from __future__ import annotations

import pytest

from bayleaf.records.yaml import parser
from bayleaf.records.yaml.decode import MOST_BYTES
from bayleaf.records.yaml.strict import load_text

FULL = MOST_BYTES - 40


def codes(text: str | bytes) -> list[str]:
    """The codes of what was found, each once."""
    raw = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    return sorted({p.code for p in load_text(raw).problems})


@pytest.mark.parametrize(
    ("text", "data"),
    [
        ("a: 43.5", {"a": 43.5}),
        ("a: -0.5", {"a": -0.5}),
        ("a: 100000", {"a": 100000}),
        ("a: true", {"a": True}),
        ("a: null", {"a": None}),
        ("a: 1.5e-3", {"a": 0.0015}),
        ("a: 1,000", {"a": "1,000"}),
        ("a: 5%", {"a": "5%"}),
        ("a: note", {"a": "note"}),
        ("a: yesterday", {"a": "yesterday"}),
        ("a: 'no'", {"a": "no"}),
        ('a: "1:30"', {"a": "1:30"}),
        ("a: http://x", {"a": "http://x"}),
        ("a: b#c", {"a": "b#c"}),
        ("a: ~x", {"a": "~x"}),
        ("a: >-\n  b\n  c\n", {"a": "b c"}),
        ("a: b\r\nc: d\r\n", {"a": "b", "c": "d"}),
        ("[a, # b\n c]", ["a", "c"]),
        ("a: 'it''s'", {"a": "it's"}),
        ("a: Ω", {"a": "Ω"}),
        ("a: 😀", {"a": "😀"}),
        ("a: .5 psi", {"a": ".5 psi"}),
        ("a: 12 V", {"a": "12 V"}),
    ],
)
def test_what_both_versions_read_alike_is_read(text, data):
    assert load_text(text.encode()).data == data


@pytest.mark.parametrize(
    "word",
    [
        "no",
        "No",
        "NO",
        "yes",
        "on",
        "off",
        "OFF",
        "y",
        "N",
        "True",
        "FALSE",
        "Null",
        "~",
        "1:30",
        "1:30.5",
        "010",
        "0o7",
        "0x1F",
        "0b1",
        "1_000",
        "12e3",
        "1e3",
        "1.0e3",
        "1.0E+3",
        ".5",
        "5.",
        "+5",
        ".inf",
        "-.INF",
        ".nan",
        "2024-01-31",
        "2024-01-31 10:00:00",
        "=",
        "1234567890123456",
        "0.1234567890123456",
        "1.0e+999",
        "1.0e-999",
    ],
)
def test_what_two_versions_or_a_person_read_differently_is_refused(word):
    assert codes(f"a: {word}") == ["FILE-10"]
    assert codes(f"a: '{word}'") == []


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("a: &x b", "FILE-8"),
        ("a: !!str b", "FILE-8"),
        ("a: !<tag:x> b", "FILE-8"),
        ("&x a: b", "FILE-8"),
        ("a: &x [1]\nb: *x", "FILE-8"),
        ("a: *x", "FILE-8"),
        ("a: &x 'b'", "FILE-8"),
        ("'<<': {a: b}", "FILE-8"),
        ("%YAML 1.2\n---\na: b", "FILE-8"),
        ("a: b\n---\nc: d", "FILE-5"),
        ("", "FILE-5"),
        ("# only this", "FILE-5"),
        ("a: 1\na: 2", "FILE-7"),
        ("a: {b: 1, b: 2}", "FILE-7"),
        ("a:", "FILE-9"),
        ("a: [b, ]\nc:\n", "FILE-9"),
        ("1: a", "FILE-6"),
        ("[a]: b", "FILE-6"),
        ("{a: b}: c", "FILE-6"),
        ("? [a]\n: b", "FILE-6"),
        ("a: b: c", "FILE-6"),
        ("a: @b", "FILE-6"),
        ("a: [b", "FILE-6"),
        ("a: 'b", "FILE-6"),
        ("a:\n\t- b", "FILE-3"),
        ("a: b\rc: d", "FILE-3"),
        ('a: "\\q"', "FILE-6"),
        ('a: "\\ud800"', "FILE-6"),
        ("a: b\n...\nc: d", "FILE-6"),
    ],
)
def test_what_no_record_may_hold_is_refused(text, code):
    assert code in codes(text)


@pytest.mark.parametrize(
    "mark",
    [
        "\0",
        "\x1b",
        "\x7f",
        "\x85",
        "\xa0",
        "\xad",
        "\u034f",
        "\u061c",
        "\u115f",
        "\u180e",
        "\u2003",
        "\u200b",
        "\u200d",
        "\u200e",
        "\u2028",
        "\u202e",
        "\u202f",
        "\u2060",
        "\u2066",
        "\u2800",
        "\u3000",
        "\u3164",
        "\ue000",
        "\ufe0f",
        "\ufeff",
        "\uffa0",
        "\ufff9",
        "\U000e0041",
        "\U000f0000",
    ],
)
def test_hidden_characters_are_refused_typed_and_as_escapes(mark):
    assert codes(f"a: b{mark}c") == ["FILE-2"]
    assert codes(f'a: "b\\U{ord(mark):08x}c"') == ["FILE-2"]


@pytest.mark.parametrize(
    "raw",
    [
        b"\xff\xfea\0",
        "a: b".encode("utf-16"),
        "a: b".encode("utf-32"),
        b"a: \xc0\x80",
        b"a: \xed\xa0\x80",
        b"\xef\xbb\xbfa: b",
    ],
)
def test_other_encodings_are_refused(raw):
    assert codes(raw) == ["FILE-1"]


@pytest.mark.parametrize(
    "text",
    [
        "[" * FULL,
        "{a: " * (FULL // 4),
        "- " * (FULL // 2),
        "? " * (FULL // 2),
        "[" * 41 + "]" * 41,
        '"' * FULL,
        ": " * (FULL // 2),
        "&a " * (FULL // 3),
        "!" * FULL,
        "a" * FULL + ": 1",
        "\n" * FULL,
        " " * FULL,
        "a: " + "9" * (FULL - 10),
        "a: 0." + "1" * (FULL - 10),
        "a: " + "1:" * (FULL // 2 - 10) + "1",
        "a: 1" + "_1" * (FULL // 2 - 10),
        "[" + "1," * (FULL // 2 - 5) + "1]",
        "a: &a [x]\nb: " + "*a " * (FULL // 4),
        "x" * (MOST_BYTES + 1),
    ],
    ids=lambda text: f"{text[:6]!r}",
)
def test_bombs_end_in_findings(text):
    """Each at the limit of size; 50,000 open brackets would end the process inside the C parser if they were let in."""
    assert codes(text)


def test_the_least_nesting_that_is_too_much_is_named():
    assert codes("[" * 40 + "]" * 40) == []
    assert codes("[" * 41 + "]" * 41) == ["FILE-4"]


@pytest.mark.parametrize("levels", [39, 40, 41, 42, 900])
@pytest.mark.parametrize(("opened", "closed"), [("[", "]"), ("{a: ", "}"), ("- ", ""), ("[{a: ", "}]")])
def test_nesting_is_counted_in_every_style(opened, closed, levels):
    text = opened * (levels // len(closed or "x")) + "b" + closed * (levels // len(closed or "x"))
    assert (codes(text) == ["FILE-4"]) == (levels >= 40)


def test_values_are_counted_and_the_least_number_that_is_too_much_is_named():
    assert codes("[" + ",".join("a" * (parser.MOST_NODES - 1)) + "]") == []
    assert codes("[" + ",".join("a" * parser.MOST_NODES) + "]") == ["FILE-4"]


def test_several_things_wrong_are_all_said():
    assert codes("a: no\nb: &x c\nd:\ne: 1\ne: 2") == ["FILE-10", "FILE-7", "FILE-8", "FILE-9"]


def test_a_problem_is_said_at_its_line_and_column():
    problem = load_text(b"a: 1\nb:\n  - [x, no]\n").problems[0]
    assert (problem.start, problem.end) == ((3, 9), (3, 11))


def test_columns_count_code_points():
    problem = load_text('a: "Ω😀"\nb: {Ω: no}'.encode()).problems[0]
    assert problem.start == (2, 8)


def test_a_number_is_remembered_as_it_was_typed_where_python_writes_it_differently():
    loaded = load_text(b"a: 43.50\nb: [1.0, {c: 100.00}]\nd: 43.5\n")
    assert loaded.typed == {("a",): "43.50", ("b", 1, "c"): "100.00"}
