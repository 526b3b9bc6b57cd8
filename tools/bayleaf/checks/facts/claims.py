"""What faults claim: their stages system by system, and what the graph says of the readings beside them."""

from __future__ import annotations

from functools import cache, cached_property

from bayleaf.diagnosis.car.car import Car, car_of_system, places_of, present, readings_of, usable
from bayleaf.diagnosis.car.layout import Layout
from bayleaf.diagnosis.faults.isolate import Isolation, isolation_of
from bayleaf.diagnosis.faults.matrix import one_sided
from bayleaf.diagnosis.faults.spared import Why, why_of
from bayleaf.diagnosis.faults.stages import Answers, healthy_of, is_diagnosis, own_of, parts_of
from bayleaf.diagnosis.verdicts.verdict import NORMAL
from bayleaf.records import Book, listed, mapped


class Claims:
    """The claims of every usable fault of a book. Each answer is worked out once, when first asked for."""

    def __init__(self, book: Book, layout: Layout) -> None:
        self.book, self.layout = book, layout
        self.faults = [id for id, record in self.book.of("faults").items() if usable(record)]
        self.systems = cache(self._systems)
        self.parts = cache(self._parts)
        self.stages = cache(self._stages)
        self.readings = cache(self._readings)
        self._there = cache(self._exists)
        self.offered = cache(self._offered)
        self.spoken = cache(self._spoken)
        self.why = cache(self._why)
        self.car = cache(self._car)
        self.isolation = cache(self._isolation)
        self.blind = cache(self._blind)
        self.healthy = cache(self._healthy)

    def _car(self, system: str) -> Car:
        return car_of_system(self.book, system)

    def _systems(self, fault: str) -> list[str]:
        """The sound systems that a fault can occur in: those it names, else those with a path through its part."""
        data = self.book.of("faults")[fault].data
        named = listed(data.get("systems")) or sorted({system for system, _path in self.layout.paths(data["part"])})
        systems = self.book.of("systems")
        return [
            s for s in named if s in systems and systems[s].sound and present(self.layout, self.car(s), data["part"])
        ]

    def _parts(self, fault: str, system: str) -> dict[str, tuple[Answers, Answers]]:
        """For each stage of a fault on a system, what it says and what the graph alone says."""
        return parts_of(self.book, self.layout, self.car(system), fault, list(self.offered(system)))

    def _stages(self, fault: str, system: str) -> dict[str, Answers]:
        return {stage: spared | said for stage, (said, spared) in self.parts(fault, system).items()}

    def said(self, fault: str, system: str) -> dict[str, Answers]:
        """What each stage of a fault says on a system, by itself, by its effects or as another reading."""
        return {stage: said for stage, (said, _spared) in self.parts(fault, system).items()}

    def own(self, fault: str, system: str) -> dict[str, Answers]:
        """The same without its effects, which give way to the graph."""
        return own_of(self.book, self.layout, self.car(system), fault)

    def _why(self, fault: str, reading: str, system: str) -> Why:
        """What the graph says of a reading on a car with this system and this fault."""
        faults, readings = self.book.of("faults"), self.book.of("readings")
        return why_of(self.book, self.layout, (system,), faults[fault], readings[reading])

    def _readings(self, system: str) -> list[str]:
        """The readings for diagnosis that a system offers when it is looked at on its own."""
        readings = self.book.of("readings")
        return [r for r in self.offered(system) if is_diagnosis(readings[r])]

    def _offered(self, system: str) -> dict[str, None]:
        """All readings that a system offers, in the book's order."""
        return dict.fromkeys(readings_of(self.book, self.layout, self.car(system)))

    def _spoken(self, system: str) -> set[str]:
        """The readings of which some fault itself speaks on this system."""
        return set().union(
            *(answers for fault in self._in.get(system, ()) for answers in self.said(fault, system).values())
        )

    @cached_property
    def _in(self) -> dict[str, list[str]]:
        """Each system to the faults that can occur in it."""
        result: dict[str, list[str]] = {}
        for fault in self.faults:
            for system in self.systems(fault):
                result.setdefault(system, []).append(fault)
        return result

    def _isolation(self, system: str) -> Isolation:
        return isolation_of(self.book, self.car(system))

    def _blind(self, system: str) -> dict[str, str]:
        """Readings whose band in this system has a limit on one side only, and the answer that it cannot give."""
        return one_sided(self.book, self.car(system))

    def _healthy(self, system: str, reading: str) -> frozenset[str]:
        """The answers of a healthy car with this system."""
        return healthy_of(self.book, reading, (system,))

    def shows(self, fault: str, reading: str) -> bool:
        """Whether a fault is, in some stage on some system, sure to make this reading other than normal."""
        return any(
            self.sure(system, reading, stage.get(reading))
            for system in self.systems(fault)
            for stage in self.stages(fault, system).values()
        )

    def sure(self, system: str, reading: str, answers: frozenset[str] | None) -> bool:
        """Whether these answers exclude every healthy one, in a system whose band may lack a side."""
        if answers is None:
            return False
        blind = self.blind(system).get(reading)
        return self.healthy(system, reading).isdisjoint(answers - {blind} | {NORMAL} if blind in answers else answers)

    def pointing(self, reading: str) -> set[str]:
        """The faults in some stage of which this reading is surely other than normal."""
        return self.pointing_by.get(reading, set())

    @cached_property
    def pointing_by(self) -> dict[str, set[str]]:
        """Each reading to the faults in some stage of which it is surely other than healthy."""
        result: dict[str, set[str]] = {}
        for fault in self.faults:  # what the graph says is healthy
            for system in self.systems(fault):
                for answers in self.said(fault, system).values():
                    for reading, may in answers.items():
                        if self.healthy(system, reading).isdisjoint(may):
                            result.setdefault(reading, set()).add(fault)
        return result

    @cached_property
    def named(self) -> set[str]:
        """The readings of which some fault speaks on some system."""
        return set().union(*(self.spoken(system) for system in self._in))

    @cached_property
    def felt(self) -> dict[str, list[str]]:
        """Each symptom to the faults that are felt so, in the book's order."""
        result: dict[str, list[str]] = {}
        for fault in self.faults:
            for symptom in mapped(self.book.of("faults")[fault].data["felt_as"]):
                result.setdefault(symptom, []).append(fault)
        return result

    def exists(self, reading: str, systems: list[str]) -> bool:
        """Whether a car with one of these systems can offer a reading, by itself or with a system of another family."""
        return self._there(reading, tuple(systems))

    def _exists(self, reading: str, systems: tuple[str, ...]) -> bool:
        record = self.book.of("readings").get(reading)
        if not usable(record) or any(reading in self.offered(s) for s in systems):
            return True  # an id that is wrong or retired is said by LINK-1 and LINK-3
        families = {self.book.of("systems")[s].data["family"] for s in systems}
        on = {
            self.book.of("systems")[s].data["family"]
            for c in places_of(self.book, reading)
            for s, _path in self.layout.paths(c)
            if s in self.book.of("systems") and self.book.of("systems")[s].sound
        }
        return not systems or (bool(on) and not on & families)
