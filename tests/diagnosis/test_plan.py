"""The next test: its gain against an enumeration, its cost, and what may come before it or not at all."""

from __future__ import annotations

import random
from itertools import product
from math import log2

import pytest

from bayleaf.diagnosis.car.car import car_of_job
from bayleaf.diagnosis.faults.matrix import matrix_of
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.plan.choose import bits_of
from bayleaf.diagnosis.plan.outcomes import Outcomes, outcomes_of, table_of
from bayleaf.diagnosis.plan.say import plan_lines
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.records import Book
from tests.diagnosis.sample import CAR, answer, book, job, value

MAKER = {"primed": {"min": 55, "max": 62, "unit": "psi", "looked_up": "…"}}


def takes(reading: str, minutes: int = 5, instrument: str = "", **more: object) -> dict:
    step = {"say": "Read it.", "takes": {"reading": reading, **({"instrument": instrument} if instrument else {})}}
    return {"title": f"Take {reading}", "minutes": {"hands": minutes}, "systems": ["port"], "steps": [step], **more}


def with_tests(**procedures: dict) -> Book:
    return book(procedures=procedures)


def proposed(the_book: Book, *readings: dict, **more: object) -> list[str]:
    return [p.action.procedure for p in judge(the_book, job(*readings, **more)).next]


def entropy(shares: dict[str, float]) -> float:
    total = sum(shares.values())
    return -sum(p / total * log2(p / total) for p in shares.values() if p > 0)


def gain(faults: list[str], shares: list[float], tables: list[list[tuple[float, ...]]]) -> float:
    """The entropy over faults now, less what is expected of it after every outcome of the tests taken together."""

    def of_faults(weights: list[float]) -> dict[str, float]:
        return {f: sum(w for g, w in zip(faults, weights, strict=True) if g == f) for f in faults}

    after = 0.0
    for outcome in product(*(range(len(table[0])) for table in tables)):
        weights = list(shares)
        for table, k in zip(tables, outcome, strict=True):
            weights = [w * row[k] for w, row in zip(weights, table, strict=True)]
        after += sum(weights) * entropy(of_faults(weights)) if sum(weights) else 0.0
    return entropy(of_faults(shares)) - after


@pytest.mark.parametrize("seed", range(40))
def test_the_gain_is_that_of_an_enumeration(seed):
    """The definition of de Kleer and Williams (1987), recalled: entropy now less the entropy expected after the test."""
    r = random.Random(seed)
    the_book = book()
    matrix = matrix_of(the_book, car_of_job(the_book, {"car": CAR}))
    rows = sorted(r.sample(range(len(matrix.rows)), r.randint(2, len(matrix.rows))))
    shares = [r.random() for _ in matrix.rows]
    total = sum(shares[i] for i in rows)
    shares = [share / total for share in shares]
    tables = []
    for _ in range(r.randint(1, 3)):
        answers = r.randint(2, 4)
        table = []
        for _row in rows:
            weights = [r.choice([0.0, r.random()]) for _ in range(answers)]
            weights[r.randrange(answers)] += 0.1
            table.append(tuple(w / sum(weights) for w in weights))
        tables.append(table)
    wanted = gain([matrix.rows[i].fault for i in rows], [shares[i] for i in rows], tables)
    assert bits_of(matrix, shares, rows, tables) == pytest.approx(wanted, abs=1e-12)


def test_silence_earns_no_test():
    """A fault that says nothing takes the mean of those that speak, so that a test none of them speaks of gives nothing."""
    the_book = book()
    matrix = matrix_of(the_book, car_of_job(the_book, {"car": CAR}))
    rows = list(range(len(matrix.rows)))
    even = tuple(1 / len(rows) for _ in rows)
    assert table_of(matrix, "hose-rise", Outcomes(("a", "b"), {}), even, rows) == []
    table = table_of(matrix, "spark-seen", Outcomes(("none", "strong", "weak"), {}), even, rows)
    # By hand: only the weak spark speaks of it, so every row predicts what it does.
    assert len(table) == len(rows) and all(row == pytest.approx((0.01, 0.01, 0.98, 0.0)) for row in table)
    assert bits_of(matrix, even, rows, [table]) == pytest.approx(0, abs=1e-12)


def test_a_coarse_instrument_may_decide_nothing():
    the_book = book()
    desk, car = Desk(the_book), car_of_job(the_book, {"car": CAR})
    typed = job(maker_bands=MAKER)
    coarse = outcomes_of(desk, car, typed, "primed", "gauge-0-100").undecided["normal"]
    fine = outcomes_of(desk, car, typed, "primed", "fine-sender").undecided["normal"]
    # By hand: two limits with 2.5 psi of guard band, or 0.4, on each, in a band of 7 psi.
    assert (coarse, fine) == (pytest.approx(2 * 2.5 / 7), pytest.approx(2 * 0.4 / 7))
    spread = outcomes_of(desk, car, job(), "primed", "gauge-0-100").undecided
    assert spread == {"normal": 1.0, "low": 0.5, "high": 0.5}  # inside a spread nothing is proved in band


def test_information_a_minute_decides():
    quick, slow = takes("hose-look", 2), takes("ground-drop", 2)
    assert proposed(with_tests(look=quick, drop=slow)) == ["drop", "look"]
    assert proposed(with_tests(look=quick, drop={**slow, "minutes": {"hands": 600}})) == ["look", "drop"]


def test_a_test_whose_reading_was_taken_or_cannot_be_is_not_proposed_again():
    the_book = with_tests(look=takes("hose-look"), drop=takes("ground-drop"))
    assert "look" not in proposed(the_book, answer("hose-look", "dry"), felt=["no-power"])
    assert "look" not in proposed(the_book, {"reading": "hose-look", "cannot": "no room"}, felt=["no-power"])


def test_a_test_whose_instrument_the_shop_lacks_is_not_proposed():
    the_book = with_tests(drop=takes("ground-drop", instrument="meter"))
    assert proposed(the_book, felt=["no-power"], shop=["meter"]) == ["drop"]
    assert proposed(the_book, felt=["no-power"], shop=["gauge-0-100"]) == []


def test_a_repair_is_no_test():
    the_book = book(procedures={"renew-it": {"title": "Renew the part", **takes("ground-drop")}})
    assert proposed(the_book, felt=["no-power"]) == []


def test_of_two_tests_as_good_the_one_that_opens_nothing_goes_first():
    looks = takes("ground-drop", 5)
    opens = takes("ground-drop", 4.8)
    opens["steps"] = [{"say": "Open.", "act": "open-joint"}, *opens["steps"]]
    assert proposed(with_tests(a_opens=opens, b_looks=looks), felt=["no-power"])[0] == "b_looks"
    much_quicker = {**opens, "minutes": {"hands": 2}}
    assert proposed(with_tests(a_opens=much_quicker, b_looks=looks), felt=["no-power"])[0] == "a_opens"


def test_the_standing_beginning_comes_before_all_else():
    begins = takes("hose-look", 9, tasks=["look-and-listen-first"])
    drop = takes("ground-drop", 1)
    the_book = book(
        procedures={"look": begins, "drop": drop},
        tasks={"look-and-listen-first": {"title": "Look first", "first": True}},
    )
    assert proposed(the_book) == ["look", "drop"]


def test_a_connection_that_must_be_made_costs_its_minutes():
    states = {"gauge-on": {"title": "Gauge connected", "connection": True}}
    reads = takes("primed", 3, needs={"states": ["gauge-on"]})
    makes = {
        "title": "Connect",
        "minutes": {"hands": 12},
        "systems": ["port"],
        "steps": [{"say": "Fit it."}],
        "leaves": ["gauge-on"],
    }
    ends = {
        "title": "Take off",
        "minutes": {"hands": 5},
        "systems": ["port"],
        "steps": [{"say": "Take it off."}],
        "ends": ["gauge-on"],
    }
    the_book = book(states=states, procedures={"reads": reads, "makes": makes, "ends": ends})
    (proposal,) = judge(the_book, job(felt=["no-power"], maker_bands=MAKER)).next
    assert (proposal.action.setup, proposal.minutes) == (17, 20)
    without = book(states=states, procedures={"reads": reads})
    assert judge(without, job(felt=["no-power"], maker_bands=MAKER)).next == ()  # nobody can make the connection


def test_waiting_counts_and_so_does_what_is_followed():
    # By hand: 3 + 10 of its own, 6 + 60 of what it follows, once, though the two follow each other.
    reads = takes("primed", 3)
    reads["minutes"]["waiting"] = 10
    reads["steps"] = [{"follow": "relieve"}, *reads["steps"]]
    relieve = {
        "title": "Relieve",
        "minutes": {"hands": 6, "waiting": 60},
        "systems": ["port"],
        "steps": [{"follow": "reads"}],
    }
    the_book = book(procedures={"reads": reads, "relieve": relieve})
    proposals = judge(the_book, job(felt=["no-power"], maker_bands=MAKER)).next
    assert [p.minutes for p in proposals if p.action.procedure == "reads"] == [79]


def test_a_short_look_stays_the_beginning_though_the_engine_has_to_warm_up():
    look, drop = takes("primed", 8, tasks=["look-and-listen-first"]), takes("ground-drop", 1)
    look["minutes"]["waiting"] = 10
    the_book = book(
        procedures={"look": look, "drop": drop}, tasks={"look-and-listen-first": {"title": "Look first", "first": True}}
    )
    assert proposed(the_book, maker_bands=MAKER)[0] == "look"


def test_testing_stops_where_one_repair_holds_nine_tenths():
    the_book = with_tests(drop=takes("ground-drop"))
    judgement = judge(
        the_book, job(answer("hose-look", "wet"), value("ground-drop", 0.1, "V", "meter"), felt=["long-crank"])
    )
    assert judgement.repairs[0].enough
    assert any(
        line.startswith("Stop testing and repair: Fit a new regulator") for line in plan_lines(judgement, the_book)
    )


def test_what_no_test_parts_is_said():
    judgement = judge(book(), job(value("primed", 50), felt=["no-power"], maker_bands=MAKER))
    (group,) = judgement.alike
    assert set(group) == {"pump-dead", "filter-blocked", "ground-poor"}  # there is no procedure that takes a reading
    parted = judge(
        with_tests(drop=takes("ground-drop")), job(value("primed", 50), felt=["no-power"], maker_bands=MAKER)
    )
    assert not any("ground-poor" in g for g in parted.alike)
