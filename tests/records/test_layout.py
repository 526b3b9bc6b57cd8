"""Laying a record out changes its layout and nothing else."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayleaf.records.format import CannotLayOut, laid_out
from bayleaf.records.shape import Shapes
from bayleaf.records.yaml.strict import load_text
from tests.checks.small import SCHEMAS, SMALL

SHAPES = Shapes(SCHEMAS)
LINE = "# yaml-language-server: $schema=../../schemas/components.schema.json\n"


def lay(text: str, kind: str = "components") -> str:
    return laid_out(text.encode(), kind, SHAPES.schema(kind)).decode()


def test_fields_stand_in_the_order_of_the_schema():
    assert (
        lay("found: Here.\ntitle: Pump\nmistaken_for: none\ndoes: It pumps.\n")
        == f"{LINE}title: Pump\ndoes: It pumps.\nfound: Here.\nmistaken_for: none\n"
    )


def test_lists_and_maps_are_indented_by_two_and_flow_is_spaced_alike():
    said = lay(
        "title: Pump\nfails:\n- Wears.\n-   Leaks.\nmistaken_for:\n    -   because: Same can\n        component:   filter\n    - { because: x,component: z  }\n"
    )
    assert said == (
        f"{LINE}title: Pump\nfails:\n  - Wears.\n  - Leaks.\nmistaken_for:\n  - component: filter\n    because: Same can\n"
        "  - {because: x, component: z}\n"
    )


def test_numbers_and_quotes_keep_their_bytes():
    said = lay(
        'altitude: {value: 120.50,unit: \'m\', basis: {invented: true}}\ntitle: "A \\"van\\""\nbands: {r: { min: 1.0e+3, max: 2000, unit: "psi"}}\n',
        "vehicles",
    )
    assert "value: 120.50, unit: 'm'" in said and '"A \\"van\\""' in said and "min: 1.0e+3, max: 2000" in said


def test_remarks_move_with_the_field_below_them_and_stay_behind_their_value():
    said = lay(
        "title: Pump\n\n# where\nfound: Here. # really\ndoes: It pumps.   # always\nfails: # ways\n  # first\n  - Wears.\n# end\n"
    )
    assert said == (
        f"{LINE}title: Pump\ndoes: It pumps.  # always\n\n# where\nfound: Here.  # really\nfails:  # ways\n  # first\n  - Wears.\n# end\n"
    )


def test_texts_over_several_lines_keep_their_words():
    text = "title: Pump\ndoes: |-\n    one\n      two # no remark\n\n    three\nfound: >\n  folded\n  text\nfails:\n  - plain text\n    goes on\n  - 'quoted\n\n    text'\n"
    assert load_text(lay(text).encode()).data == load_text(text.encode()).data


def test_the_first_line_is_written_once():
    assert lay(LINE + LINE + "title: Pump\n") == LINE + "title: Pump\n"


@pytest.mark.parametrize("text", ["a: [", "a: b\na: c", "- a", "", "a: &x b", "a: off"])
def test_a_file_with_errors_is_left_alone(text):
    with pytest.raises(CannotLayOut):
        lay(text)


@pytest.mark.parametrize("path", sorted(SMALL.glob("*/*.yaml")), ids=lambda path: path.stem)
def test_the_small_book_keeps_its_meaning_and_a_second_time_changes_nothing(path):
    kind = path.stem if path.parent.name == "vocabulary" else path.parent.name
    once = laid_out(path.read_bytes(), kind, SHAPES.schema(kind))
    assert load_text(once).data == load_text(path.read_bytes()).data
    assert laid_out(once, kind, SHAPES.schema(kind)) == once


scalars = st.sampled_from(
    [
        "1.50",
        "-3",
        "'a'",
        '"b"',
        "plain text",
        "none",
        "[1, 2.0]",
        "{a: 1,b: [c ,d]}",
        "|\n{i}  x\n{i}  # y\n",
        ">-\n{i}  x\n\n{i}  z\n",
        "a\n{i}  b",
        "'a\n{i}  b'",
        "true  # c",
    ]
)
fields = st.lists(
    st.sampled_from(["title", "found", "does", "fails", "x", "summary", "status", "part_of"]),
    unique=True,
    min_size=1,
    max_size=5,
)


@st.composite
def documents(draw: st.DrawFn, depth: int = 0, pad: str = "") -> str:
    """YAML as people write it: any indentation, remarks and blank lines anywhere, maps and lists in block style."""
    lines = []
    for name in draw(fields):
        lines.append(draw(st.sampled_from(["", "", "\n", f"{pad}# remark\n", f"\n{pad}# one\n{pad}# two\n"])))
        step = draw(st.sampled_from(["  ", "    ", " "]))
        match draw(st.sampled_from(["scalar", "scalar", "map", "list"])) if depth < 3 else "scalar":
            case "scalar":
                lines.append(f"{pad}{name}: {draw(scalars).replace('{i}', pad)}".rstrip("\n") + "\n")
            case "map":
                lines.append(
                    f"{pad}{name}:{draw(st.sampled_from(['', ' # m']))}\n{draw(documents(depth + 1, pad + step))}"
                )
            case "list":
                inner = pad + draw(st.sampled_from(["", step]))
                items = draw(
                    st.lists(
                        st.one_of(
                            st.sampled_from(["a", "1.0", "{b: c}", "'q'  # r", "- x"]),
                            documents(depth + 2, inner + "  ").map(str.lstrip),
                        ),
                        min_size=1,
                        max_size=3,
                    )
                )
                lines.append(f"{pad}{name}:\n" + "".join(f"{inner}- {item.rstrip()}\n" for item in items))
    return "".join(lines)


@settings(max_examples=300, deadline=None, derandomize=True, database=None)
@given(documents())
def test_anything_that_can_be_laid_out_says_the_same(text):
    before = load_text(text.encode())
    try:
        once = laid_out(text.encode(), "components", SHAPES.schema("components"))
    except CannotLayOut:
        return
    after = load_text(once)
    assert (
        json.dumps(after.data, sort_keys=True) == json.dumps(before.data, sort_keys=True)
        and after.typed == before.typed
    )
    assert once.decode().count("#") - 1 == text.count("#")
    assert laid_out(once, "components", SHAPES.schema("components")) == once
