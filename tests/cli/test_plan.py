"""`bayleaf plan`: the next test of a job, and one line where a job cannot be planned."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.cli import main
from tests.checks.small import lay_out
from tests.cli.test_judge import OWN


@pytest.fixture(scope="module")
def root(tmp_path_factory) -> Path:
    return lay_out(tmp_path_factory.mktemp("book"))


@pytest.fixture
def plan(root, capsys):
    """plan(*words) runs the command; gives exit status, standard output and error output."""

    def run(*words: str) -> tuple[int, str, str]:
        status = main(["plan", *words, "--root", str(root)])
        out, err = capsys.readouterr()
        return status, out, err

    return run


@pytest.fixture
def own(tmp_path):
    def write(text: str) -> str:
        path = tmp_path / "grey van.yaml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def test_where_one_repair_is_left_it_says_to_stop_testing(plan):
    status, out, err = plan("parks-van-no-power")
    assert (status, err) == (0, "")
    assert out.startswith("Parks van, no power on hills\nStop testing and repair: ")
    assert "Verify the repair with: " in out


def test_before_anything_is_read_a_test_is_proposed_with_its_minutes(plan, own):
    head = OWN[: OWN.index("readings:")]
    status, out, err = plan(own(head + "readings: none\n"))
    assert (status, err) == (0, "")
    assert "Do this next: " in out
    assert " minute" in out


def test_a_job_with_an_error_is_not_planned_and_the_line_is_named(plan, own):
    status, out, err = plan(own(OWN.replace("unit: psi", "unit: V")))
    assert status == 1
    assert "grey van.yaml:8:" in out and "'V' is not a unit" in out
    assert "The job cannot be planned: " in out
    assert "Traceback" not in out + err


def test_a_job_that_is_nowhere_is_one_line(plan):
    status, out, err = plan("parks-van-no-powr")
    assert (status, out) == (2, "")
    assert err == "bayleaf: parks-van-no-powr: no such file, and no job of the book; did you mean parks-van-no-power?\n"
