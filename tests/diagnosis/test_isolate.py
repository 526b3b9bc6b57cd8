"""Detection and isolation figures against cases worked by hand.

The style is that of IEEE Std 1522 (recalled): with failure rates λ, the share detected is Σ λ of the detected faults
over Σ λ of all, and the share isolated to L is Σ λ of the detected faults in groups of at most L over Σ λ detected.
"""

from __future__ import annotations

import pytest

from bayleaf.diagnosis.car.car import car_of_system
from bayleaf.diagnosis.faults.isolate import isolation_of
from bayleaf.records import Book
from tests.data import book_of
from tests.diagnosis.sample import asked, book, fault


def table(faults: dict[str, tuple[str, dict]], normal: str = "ok", bands: object = "none", **readings: dict) -> Book:
    """A book of one system from a fault table: fault → (commonness, {reading: answer})."""
    names = {r for _c, row in faults.values() for r in row} | set(readings)
    return book_of(
        {
            "systems": {
                "s": {
                    "title": "S",
                    "paths": [{"name": "p", "carries": "signal", "through": ["box"]}],
                    "has": "none",
                    "bands": bands,
                }
            },
            "components": {"box": {"title": "Box"}},
            "symptoms": {"ill": {"title": "Ill"}},
            "readings": {
                r: readings.get(r) or asked(r, ["ok", "bad", "worse"], normal, at="box") for r in sorted(names)
            },
            "faults": {
                f: fault(f, "box", {"only": row}, {"ill": "always"}, commonness=c) for f, (c, row) in faults.items()
            },
        }
    )


def figures(the_book: Book):
    return isolation_of(the_book, car_of_system(the_book, "s")).whole


def test_a_case_worked_by_hand():
    # Signatures over t1 t2 t3 (1 = not normal): A 100, B 100, C 010, D 011, E 000. λ: 9, 3, 9, 1, 3.
    # Detected: A B C D = 22 of 25. Groups: {A B}, {C}, {D}. Isolated to 1: 10 of 22; to 2: 22 of 22.
    the_book = table(
        {
            "a": ("common", {"t1": "bad", "t2": "ok", "t3": "ok"}),
            "b": ("occasional", {"t1": "bad", "t2": "ok", "t3": "ok"}),
            "c": ("common", {"t1": "ok", "t2": "bad", "t3": "ok"}),
            "d": ("rare", {"t1": "ok", "t2": "bad", "t3": "bad"}),
            "e": ("occasional", {"t1": "ok", "t2": "ok", "t3": "ok"}),
        }
    )
    found = figures(the_book)
    assert found.weight == 25
    assert found.detected == pytest.approx(22 / 25)
    assert found.isolated == {1: pytest.approx(10 / 22), 2: pytest.approx(1), 3: pytest.approx(1)}
    assert found.groups == (("a", "b"),)
    assert found.unseen == ("e",)


def test_groups_of_four_are_not_isolated_to_three():
    the_book = table({f: ("common", {"t1": "bad"}) for f in "abcd"} | {"e": ("common", {"t1": "worse"})})
    found = figures(the_book)
    assert found.isolated[3] == pytest.approx(1 / 5)
    assert found.groups == (("a", "b", "c", "d"),)


def test_may_be_either_is_not_surely_told_apart():
    # a shows bad or ok, b shows bad, c shows ok: a may be left with b or with c, b and c are told apart.
    the_book = table(
        {"a": ("common", {"t1": ["ok", "bad"]}), "b": ("common", {"t1": "bad"}), "c": ("common", {"t1": "ok"})}
    )
    found = figures(the_book)
    assert found.alike == {"a": ("b", "c"), "b": ("a",), "c": ("a",)}
    assert found.detected == pytest.approx(1 / 3)
    assert found.groups == (("a", "b", "c"),)


def test_a_silent_fault_is_never_told_apart():
    the_book = table({"a": ("common", {"t1": "bad"}), "b": ("common", {"t2": "bad"})})
    assert figures(the_book).alike == {"a": ("b",), "b": ("a",)}


def test_none_is_not_surely_told_from_low():
    only = {
        "a": fault("A", "pump", {"s": {"idle": "none"}}, {"no-power": "always"}),
        "b": fault("B", "pump", {"s": {"idle": "low"}}, {"no-power": "always"}),
    }
    the_book = book(faults=dict.fromkeys(book().of("faults")) | only)
    assert isolation_of(the_book, car_of_system(the_book, "port")).whole.alike == {"a": ("b",), "b": ("a",)}


def test_the_side_without_a_limit_reads_normal():
    # ground-drop has only an upper limit: a fault that says low there cannot be seen.
    the_book = book(
        faults={"low-drop": fault("Low drop", "ground", {"s": {"ground-drop": "low"}}, {"no-power": "always"})}
    )
    assert "low-drop" in isolation_of(the_book, car_of_system(the_book, "port")).whole.unseen


def test_each_symptom_has_figures_over_its_own_faults():
    found = isolation_of(book(), car_of_system(book(), "port"))
    assert found.symptoms["long-crank"].weight == 1
    assert found.symptoms["no-power"].weight == 9 * 4


def test_readings_with_one_column_are_named_once():
    the_book = table({"a": ("common", {"t1": "bad", "t2": "bad"}), "b": ("common", {"t1": "ok", "t2": "ok"})})
    assert isolation_of(the_book, car_of_system(the_book, "s")).same == (("t1", "t2"),)


def test_a_reading_that_distinguishes_nothing_is_idle():
    the_book = table(
        {"a": ("common", {"t1": "bad", "t2": "ok"}), "b": ("common", {"t1": "ok", "t2": "ok"})},
        t3=asked("t3", ["ok", "bad"], "ok", at="box"),
    )
    assert isolation_of(the_book, car_of_system(the_book, "s")).idle == ("t2", "t3")
