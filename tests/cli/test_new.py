"""`bayleaf new`: a record to fill in that already has the right shape."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.checks import check
from bayleaf.cli import main
from bayleaf.records import RECORD_KINDS, load
from bayleaf.records.shape import Shapes
from bayleaf.records.template import template
from tests.checks.small import lay_out

PROJECT = Path(__file__).resolve().parents[2]


@pytest.fixture
def root(tmp_path) -> Path:
    return lay_out(tmp_path / "book")


@pytest.fixture
def new(root, capsys):
    """new(*words) runs the command; gives exit status, standard output and error output."""

    def run(*words: str) -> tuple[int, str, str]:
        status = main(["new", *words, "--root", str(root)])
        out, err = capsys.readouterr()
        return status, out, err

    return run


@pytest.mark.parametrize("kind", RECORD_KINDS)
def test_a_new_record_of_any_kind_is_sound_before_it_is_filled_in(new, root, kind):
    status, out, err = new(kind, "a-new-one")
    assert (status, err) == (0, "")
    (root / "kb" / kind).mkdir(exist_ok=True)
    (root / "kb" / kind / "a-new-one.yaml").write_text(out, encoding="utf-8")
    book = load(root)
    assert [f for f in book.findings if f.record == "a-new-one"] == []
    assert book.of(kind)["a-new-one"].sound


def test_what_the_examples_name_is_in_the_book(tmp_path):
    """A contributor who keeps an example keeps a name that exists."""
    shapes = Shapes(PROJECT / "schemas")
    for kind in RECORD_KINDS:
        path = tmp_path / "kb" / kind / f"a-new-one-of-{kind}.yaml"
        path.parent.mkdir(parents=True)
        path.write_text("\n".join(template(shapes.schema(kind), kind, {})), encoding="utf-8")
    found = [f for f in check(load(PROJECT, [tmp_path])) if f.record.startswith("a-new-one-of-")]
    named = {
        (f.record, f.code, f.message) for f in found if f.code.startswith(("FILE", "SHAPE", "LINK", "UNIT", "BASIS"))
    }
    assert named == {("a-new-one-of-codes", "SHAPE-14", "the code P0171 stands in the record a-new-one-of-codes")}


def test_every_field_says_what_it_is_for(new):
    out = new("readings", "a-new-one")[1]
    assert "# What the record is called, as people of the trade say it.\ntitle: " in out
    assert "\n# also_called: " in out  # may be left out, so it is a comment


def test_a_fault_is_drafted_by_part_and_mechanism(new, root):
    status, out, _ = new("faults", "filter-new", "--part", "fuel-filter", "--mechanism", "restricts")
    assert status == 0
    assert "part: fuel-filter\n" in out
    assert "    rail-pressure-primed:  # [normal, low]? on the path supply\n" in out
    assert "pump-supply-voltage" not in out  # nothing that the filter carries reaches it
    (root / "kb" / "faults" / "filter-new.yaml").write_text(out, encoding="utf-8")
    assert {f.code for f in load(root).findings if f.record == "filter-new"} == {"FILE-9"}  # a blank is no answer
    answered = out.replace(":  # [normal, low]? on", ": [normal, low]  # on").replace(":  # only a", ": low  # a")
    (root / "kb" / "faults" / "filter-new.yaml").write_text(answered, encoding="utf-8")
    assert "rail-pressure-idle" in load(root).of("faults")["filter-new"].data["stages"]["first-stage"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("fault", "x-y"), "there is no kind of record 'fault'; did you mean faults?"),
        (("faults", "X Y"), "'X Y' is no id; use lower-case letters, digits and single hyphens"),
        (
            ("faults", "regulator-hose-off"),
            "the id regulator-hose-off is already used by kb/faults/regulator-hose-off.yaml",
        ),
        (
            ("faults", "x-y", "--part", "fuel-filtr", "--mechanism", "leaks"),
            "there is no component 'fuel-filtr'; did you mean fuel-filter?",
        ),
        (
            ("faults", "x-y", "--part", "fuel-filter", "--mechanism", "leak"),
            "there is no mechanism 'leak'; did you mean leaks?",
        ),
        (("faults", "x-y", "--part", "fuel-filter"), "--part and --mechanism go together, and only with faults"),
        (
            ("codes", "x-y", "--part", "fuel-filter", "--mechanism", "leaks"),
            "--part and --mechanism go together, and only with faults",
        ),
    ],
)
def test_what_cannot_be_is_one_line(new, words, said):
    assert new(*words) == (2, "", f"bayleaf: {said}\n")
