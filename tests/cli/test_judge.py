"""`bayleaf judge`: a job of the book or a technician's own file, and one line where a job cannot be judged."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from bayleaf.checks import check_record
from bayleaf.cli import main
from bayleaf.records import load, load_job
from tests.checks.small import lay_out

OWN = """title: Grey van
summary: No power on hills since last week.
status: draft
vehicle: parks-van
shop: [gauge-0-100]
felt: [loss-of-power]
readings:
  - {reading: rail-pressure-primed, value: 35, unit: psi, instrument: gauge-0-100}
  - {reading: fuel-in-regulator-hose, answer: dry}
"""


@pytest.fixture(scope="module")
def root(tmp_path_factory) -> Path:
    return lay_out(tmp_path_factory.mktemp("book"))


@pytest.fixture
def judge(root, capsys):
    """judge(*words) runs the command; gives exit status, standard output and error output."""

    def run(*words: str) -> tuple[int, str, str]:
        status = main(["judge", *words, "--root", str(root)])
        out, err = capsys.readouterr()
        return status, out, err

    return run


@pytest.fixture
def own(tmp_path):
    """own(text) writes a technician's file whose name is no id, and gives its path."""

    def write(text: str) -> str:
        path = tmp_path / "Grey van, Monday.yaml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def test_a_job_of_the_book_is_judged_by_its_id(judge):
    status, out, err = judge("parks-van-no-power")
    assert (status, err) == (0, "")
    assert out.startswith("Parks van, no power on hills\n")
    assert "35 psi, low." in out
    assert "A cause outside this book: " in out
    assert out.index("Fits every reading") < out.index("What was read")


def test_the_reasons_come_with_why(judge):
    short, long = judge("parks-van-no-power")[1], judge("parks-van-no-power", "--why")[1]
    assert "Judged against" not in short
    assert "Judged against" in long
    assert len(short.splitlines()) < len(long.splitlines())


def test_a_job_of_the_book_is_judged_by_its_file(judge, root):
    assert judge(str(root / "kb" / "jobs" / "parks-van-no-power.yaml")) == judge("parks-van-no-power")


def test_a_technicians_own_file_is_judged_whatever_its_name(judge, own):
    status, out, err = judge(own(OWN))
    assert (status, err) == (0, "")
    assert out.startswith("Grey van\n")
    assert "Fuel filter restricted" in out


def test_the_same_judgement_as_data(judge, own):
    status, out, _ = judge(own(OWN), "--format", "json")
    data = json.loads(out)
    assert status == 0
    assert data["problems"] == []
    assert data["judgement"]["readings"][0]["verdict"] == "low"
    assert "fuel-filter-restricted" in data["judgement"]["left"]


@pytest.mark.parametrize(
    ("good", "bad", "line", "said"),
    [
        ("reading: rail-pressure-primed", "reading: rail-presure-primed", 8, "rail-presure-primed"),
        ("unit: psi", "unit: V", 8, "'V' is not a unit"),
        ("instrument: gauge-0-100}", "instrument: gauge-0-1000}", 8, "gauge-0-1000"),
        ("answer: dry", "answer: damp", 9, "damp"),
        ("value: 35", "value: low", 8, "low"),
        ("felt: [loss-of-power]", "felt: [loss-of-powr]", 6, "loss-of-powr"),
        ("status: draft", "status: draft\ntrue_cause: [fuel-filter-restricted]", 4, "true_cause"),
        ("vehicle: parks-van", "vehicle: [parks-van", 4, ""),
    ],
)
def test_a_job_with_an_error_is_not_judged_and_the_line_is_named(judge, own, good, bad, line, said):
    status, out, err = judge(own(OWN.replace(good, bad, 1)))
    assert status == 1
    assert f"Grey van, Monday.yaml:{line}:" in out or "vehicle: [" in bad
    assert said in out
    assert "The job cannot be judged: " in out
    assert "Traceback" not in out + err


def test_an_error_is_data_too(judge, own):
    status, out, _ = judge(own(OWN.replace("unit: psi", "unit: V")), "--format", "json")
    data = json.loads(out)
    assert (status, data["judgement"]) == (1, None)
    assert data["problems"][0]["line"] == 8


def test_an_impossible_value_is_a_verdict_and_not_an_error(judge, own):
    text = OWN.replace("value: 35", "value: 3500").replace("instrument: gauge-0-100", "instrument: fuel-pressure-gauge")
    status, out, _ = judge(own(text.replace("shop: [gauge-0-100]", "shop: [fuel-pressure-gauge]")))
    assert status == 0
    assert "3500 psi, not plausible." in out


def test_a_job_that_is_nowhere_is_one_line(judge):
    status, out, err = judge("parks-van-no-powr")
    assert (status, out) == (2, "")
    assert err == "bayleaf: parks-van-no-powr: no such file, and no job of the book; did you mean parks-van-no-power?\n"


def test_a_title_cannot_move_the_cursor(judge, own):
    status, out, _ = judge(own(OWN.replace("title: Grey van", 'title: "Grey \\e[31m van"')))
    assert "\x1b" not in out
    assert status in (0, 1)


@pytest.mark.parametrize(
    "slip", [("status: ", "stand: "), ("title: ", "title: [")], ids=["a wrong shape", "broken YAML"]
)
def test_a_judgement_says_which_records_took_no_part(judge, root, tmp_path, slip):
    """A fault that cannot be read is missing among the faults left; silence would clear it."""
    fault = "kb/faults/fuel-filter-restricted.yaml"
    (tmp_path / "kb/faults").mkdir(parents=True)
    (tmp_path / fault).write_text((root / fault).read_text(encoding="utf-8").replace(*slip), encoding="utf-8")
    job = tmp_path / "own.yaml"
    job.write_text(OWN, encoding="utf-8")
    status, out, _ = judge(str(job), "--overlay", str(tmp_path))
    assert status == 0
    assert f"/{fault}; run bayleaf check." in out.splitlines()[-1]
    left_out = json.loads(judge(str(job), "--overlay", str(tmp_path), "--format", "json")[1])["left_out"]
    assert [(root / file).resolve() for file in left_out] == [tmp_path / fault]
    assert json.loads(judge(str(job), "--format", "json")[1])["left_out"] == []


def test_a_huge_file_is_refused_unread(judge, tmp_path):
    with open(tmp_path / "job.yaml", "wb") as handle:
        handle.truncate(50 * 1024**3)  # sparse: it takes no room on the disk
    status, out, _ = judge(str(tmp_path / "job.yaml"))
    assert status == 1 and "error FILE-4" in out


def test_an_unknown_complaint_lists_the_nearest_by_id_or_by_words(judge, own):
    out = judge(own(OWN.replace("[loss-of-power]", "[no-powr-on-hils]")))[1]
    assert "The nearest complaints are " in out
    assert "loss-of-power (" in out


def test_rules_of_style_do_not_judge_a_technicians_own_file(judge, own, root):
    said = "No power on the the hills since last week."
    status, out, _ = judge(own(OWN.replace("No power on hills since last week.", said)))
    assert status == 0
    assert "WORD-" not in out
    job, _found = load_job(Path(own(OWN.replace("No power on hills since last week.", said))), book := load(root))
    job.id, job.sound = "own", True
    book.add(job)
    assert any(f.code.startswith("WORD-") for f in check_record(book, job))  # the rules would speak
