"""A job's replay must leave exactly what the job expects."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.replay import replay
from tests.diagnosis.sample import CAR, answer, book, job, value


def replayed(*readings: dict, expects: object, **more: object) -> list[str]:
    with_jobs = book(jobs={"a-job": job(*readings, expects={"left": expects}, **more).data})
    return [said for _job, said in replay(with_jobs)]


def test_a_replay_that_leaves_what_is_expected_says_nothing():
    assert replayed(answer("primed", "none"), expects=["pump-dead"], felt=["no-power"]) == []
    assert replayed(value("primed", 80), expects=["outside-this-book"], felt=["no-power"]) == []
    assert replayed(value("primed", 80), expects="none", felt=["no-power"]) == []


def test_a_replay_says_what_was_contradicted_and_by_what_and_what_is_left():
    (message,) = replayed(answer("primed", "none"), expects=["ground-poor", "hose-is-off"], felt=["no-power"])
    assert "ground-poor is contradicted by primed; hose-is-off is contradicted by primed; pump-dead is left" in message


def test_a_replay_that_leaves_nothing_says_so():
    (message,) = replayed(value("primed", 80), expects=["pump-dead"], felt=["no-power"])
    assert message.endswith("pump-dead is contradicted by primed; nothing is left")


def test_one_fault_too_many_or_too_few_is_enough():
    assert len(replayed(felt=["no-power"], expects=["pump-dead", "ground-poor", "spark-weak"])) == 1
    assert (
        len(
            replayed(
                felt=["no-power"], expects=["pump-dead", "ground-poor", "spark-weak", "filter-blocked", "hose-is-off"]
            )
        )
        == 1
    )


def test_a_fault_that_fits_and_is_rare_is_said_so():
    (message,) = replayed(
        felt=["no-power"], expects=["pump-dead", "ground-poor", "spark-weak", "filter-blocked", "diaphragm-leaks"]
    )
    assert message.endswith("diaphragm-leaks fits, but is not felt like this or is rare")


def test_a_retired_job_is_not_replayed():
    assert replayed(expects=["pump-dead"], status="retired", replaced_by="b-job") == []


def test_names_that_lead_nowhere_do_not_stop_a_judgement():
    lost = job(
        value("primd", 58),
        value("primed", 58, instrument="x"),
        {"repaired": "y"},
        felt=["z"],
        car={**CAR, "systems": ["port", "q"]},
        maker_bands={"u": {"min": 1, "unit": "psi", "looked_up": "…"}},
        shop=["w"],
    )
    assert len(judge(book(), lost).left) > 1
