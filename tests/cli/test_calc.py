"""`bayleaf calc`: what it prints, and one line with exit 2 for whatever cannot be calculated."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from bayleaf.cli import main

ROOT = Path(__file__).resolve().parents[2]
RAIL = "regulator-rail-pressure"


@pytest.fixture(scope="module")
def book(tmp_path_factory) -> Path:
    """A book with the project's vocabulary and two of its calculators."""
    root = tmp_path_factory.mktemp("book")
    (root / "kb" / "calculators").mkdir(parents=True)
    (root / "kb" / "vocabulary").mkdir()
    for file in (
        "vocabulary/quantities.yaml",
        "vocabulary/sources.yaml",
        f"calculators/{RAIL}.yaml",
        "calculators/coil-resistance.yaml",
    ):
        shutil.copy(ROOT / "kb" / file, root / "kb" / file)
    (root / "schemas").symlink_to(ROOT / "schemas")
    return root


@pytest.fixture
def calc(book, capsys):
    """calc(*words) runs the command; gives exit status, standard output and error output."""

    def run(*words: str) -> tuple[int, str, str]:
        status = main(["calc", *words, "--root", str(book)])
        out, err = capsys.readouterr()
        return status, out, err

    return run


def results(out: str) -> dict[str, float]:
    return {name: result["value"] for name, result in json.loads(out)["results"].items()}


def test_the_rail_of_a_manifold_referenced_regulator_at_idle(calc):
    status, out, err = calc(RAIL, "set_pressure=43.5 psi", "manifold_vacuum=18 inHg")
    assert (status, err) == (0, "")
    assert "34.7 psi (239 kPa)" in out  # 43.5 - 18 x 3.386389 / 6.894757, worked by hand


def test_defaults_are_shown_and_called_so(calc):
    out = calc(RAIL, "set_pressure=43.5 psi")[1]
    assert [line for line in out.splitlines() if "(default)" in line] == [
        "  manifold_vacuum  18 inHg (61 kPa)   (default)   manifold vacuum",
        "  boost            0 psi (0 kPa)   (default)   boost pressure",
    ]


def test_where_it_holds_and_fails_is_said_without_brackets(calc):
    out = calc(RAIL)[1]
    assert "Holds: " in out and "Fails: " in out and "[[" not in out


def test_json_holds_the_value_the_unit_and_si(calc):
    status, out, _ = calc(RAIL, "set_pressure=300 kPa", "manifold_vacuum=60 kPa", "--format", "json")
    said = json.loads(out)
    assert status == 0
    assert said["inputs"]["set_pressure"] == {"value": 300.0, "unit": "kPa", "si": 300000.0, "default": False}
    assert said["results"]["rail"]["si"] == pytest.approx(240000)
    assert said["warnings"] == []


@pytest.mark.parametrize(
    "text", ["18 inHg", "18inHg", "18 in Hg", "18 in. Hg", "60.955 kPa", "609.55 mbar", "457.2 mmHg"]
)
def test_any_accepted_spelling_of_a_unit_gives_the_same(calc, text):
    assert results(calc(RAIL, f"manifold_vacuum={text}", "--format", "json")[1])["rail"] == pytest.approx(
        34.659, abs=1e-3
    )


def test_a_temperature_is_read_on_its_own_scale(calc):
    told = calc("coil-resistance", "at_20=14 ohm", "temperature=176 degF", "--format", "json")[1]
    assert results(told)["resistance"] == pytest.approx(17.301, abs=1e-3)  # 176 degF are 80 degC


def test_what_excludes_each_other_yields_or_is_refused_with_both_named(calc):
    # 43.5 psi over 10 psi of boost is 53.5 psi, by hand: under boost there is no vacuum, whatever its default is.
    assert results(calc(RAIL, "boost=10 psi", "--format", "json")[1])["rail"] == pytest.approx(53.5)
    status, out, err = calc(RAIL, "boost=10 psi", "manifold_vacuum=18 inHg")
    assert (status, out) == (2, "")
    assert err == "bayleaf: manifold_vacuum 18 inHg and boost 10 psi exclude each other; give one of them\n"


def test_the_formula_and_the_meaning_of_each_name_are_printed(calc):
    out = calc(RAIL)[1]
    assert "  rail = gauge(manifold_vacuum) + above_ambient(boost) + set_pressure" in out.splitlines()
    assert "   pressure across the injector" in out and "   fuel rail pressure" in out


def test_values_that_contradict_each_other_are_refused_with_both_named(capsys):
    words = ["calc", "verdict-with-gauge-error", "low=62 psi", "high=55 psi", "--root", str(ROOT)]
    assert main(words) == 2
    assert capsys.readouterr().err == (
        "bayleaf: low 62 psi and high 55 psi cannot be: the low limit lies below the high one; it needs low < high\n"
    )


def test_a_count_is_whole_and_a_larger_wire_is_not_number_0(capsys):
    assert main(["calc", "injector-pulse-width", "cylinders=3.5", "--root", str(ROOT)]) == 2
    assert capsys.readouterr().err == "bayleaf: cylinders: '3.5' is counted; write a whole number\n"
    assert main(["calc", "wire-drop", "gauge_number=00", "--root", str(ROOT)]) == 2
    assert "00 is -1" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("typed", "rail"), [(".3 MPa", 300.0), ("3e2 kPa", 300.0), ("0,300 kPa", None), ("3,000 mbar", 300.0)]
)
def test_a_number_is_read_as_people_type_it(calc, typed, rail):
    # Against 0 vacuum the rail shows its set pressure; the unit conversions are decimal.
    status, out, _ = calc(RAIL, f"set_pressure={typed}", "manifold_vacuum=0 inHg", "--format", "json")
    assert (status == 0) == (rail is not None)
    if rail is not None:
        assert json.loads(out)["results"]["rail"]["si"] == pytest.approx(rail * 1000)


def test_without_an_id_the_calculators_are_listed(calc):
    status, out, _ = calc()
    assert status == 0
    assert out.splitlines() == [
        "coil-resistance          Coil resistance at temperature",
        "regulator-rail-pressure  Rail pressure with a manifold-referenced regulator",
    ]
    assert list(json.loads(calc("--format", "json")[1])) == ["coil-resistance", RAIL]


CANNOT = [
    (
        [RAIL, "manifold_vacuum=27 inHg"],
        "manifold_vacuum: '27 inHg'; this holds from 0 to 25 inHg",
    ),
    (["regulator-rail"], "there is no calculator 'regulator-rail'; did you mean regulator-rail-pressure?"),
    (["coil-resistence"], "there is no calculator 'coil-resistence'; did you mean coil-resistance?"),
    (["zzz"], "there is no calculator 'zzz'; run bayleaf calc for the list"),
    ([RAIL, "sat_pressure=3 bar"], "there is no input 'sat_pressure'; did you mean set_pressure?"),
    ([RAIL, "zzz=3 bar"], "there is no input 'zzz'; there are set_pressure, manifold_vacuum, boost"),
    ([RAIL, "set_pressure"], "'set_pressure' is no input; write NAME=VALUE, as set_pressure=\"43.5 psi\""),
    ([RAIL, "set_pressure="], 'set_pressure has no value; write it as set_pressure="43.5 psi"'),
    ([RAIL, "boost=1 psi", "boost=2 psi"], "boost is given twice; keep one"),
    ([RAIL, "set_pressure=43.5"], "set_pressure: '43.5' has no unit; write 43.5 psi, kPa, bar, MPa, kgf/cm2 or mbar"),
    (
        [RAIL, "set_pressure=43,5 psi"],
        "set_pressure: '43,5 psi' has a comma in its number; write a point; a comma only as in 1,000",
    ),
    (
        [RAIL, "set_pressure=43.5 kpa"],
        "set_pressure: 'kpa' is not a unit of pressure across the injector; did you mean kPa?",
    ),
    ([RAIL, "set_pressure=inf psi"], "set_pressure: 'inf psi' is not a number with a unit; write it like 43.5 psi"),
    ([RAIL, "set_pressure=nan psi"], "set_pressure: 'nan psi' is not a number with a unit; write it like 43.5 psi"),
    (
        [RAIL, "set_pressure=4000 psi"],
        "set_pressure: '4000 psi' cannot be; pressure across the injector lies within 0 to 160 psi",
    ),
    ([RAIL, "manifold_vacuum=-18 inHg"], "manifold_vacuum: '-18 inHg': a vacuum is a positive number; write 18 inHg"),
    (
        ["coil-resistance", "temperature=-300 degC"],
        "temperature: '-300 degC' cannot be; temperature of a part lies within -60 to 1400 °C",
    ),
    (
        [RAIL, "--format", "xml"],
        "argument --format: invalid choice: 'xml' (choose from 'text', 'json') (see bayleaf calc --help)",
    ),
]


@pytest.mark.parametrize(("words", "line"), CANNOT)
def test_what_cannot_be_is_one_line_and_exit_2(calc, words, line):
    status, out, err = calc(*words)
    assert (status, out) == (2, "")
    assert err == f"bayleaf: {line}\n"


def test_a_number_too_long_for_any_float_is_one_line(calc):
    status, out, err = calc(RAIL, f"set_pressure={'9' * 400} psi")
    assert (status, out, err.count("\n")) == (2, "", 1)
    assert "cannot be" in err


def test_a_formula_that_does_not_close_is_one_line(book, tmp_path, capsys):
    root = tmp_path / "broken"
    shutil.copytree(book, root, symlinks=True)
    file = root / "kb" / "calculators" / f"{RAIL}.yaml"
    file.write_text(file.read_text().replace("above_ambient(boost)", "boost"))
    assert main(["calc", RAIL, "--root", str(root)]) == 2
    assert capsys.readouterr().err.startswith(f"bayleaf: kb/calculators/{RAIL}.yaml: the calculator cannot be used: ")


def test_a_calculator_that_fails_its_own_worked_checks_gives_no_figure(calc, book, tmp_path):
    file = f"kb/calculators/{RAIL}.yaml"
    (tmp_path / "kb/calculators").mkdir(parents=True)
    before = (book / file).read_text(encoding="utf-8")
    assert before.count("+ set_pressure") == 1
    (tmp_path / file).write_text(before.replace("+ set_pressure", "+ 2 * set_pressure"), encoding="utf-8")
    status, out, err = calc(RAIL, "--overlay", str(tmp_path))
    assert (status, out) == (2, "") and err.count("\n") == 1
    assert f"/{file}:" in err and "mend it first" in err
