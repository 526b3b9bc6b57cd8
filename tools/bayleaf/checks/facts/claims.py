"""What faults claim: their stages system by system, and the readings about which a fault may not be silent."""

from __future__ import annotations

from functools import cache, cached_property

from bayleaf.diagnosis.car.car import Car, car_of_system, places_of, present, readings_of, usable
from bayleaf.diagnosis.car.layout import Layout
from bayleaf.diagnosis.faults.isolate import Isolation, isolation_of
from bayleaf.diagnosis.faults.matrix import one_sided
from bayleaf.diagnosis.faults.stages import Answers, lies_on, normal_of, places_on, said_of, stages_of
from bayleaf.diagnosis.verdicts.verdict import NORMAL
from bayleaf.records import Book, Record, listed, mapped

Pair = tuple[str, str]  # a system and the name of one of its paths


class Claims:
    """The claims of every usable fault of a book. Each answer is worked out once, when first asked for."""

    def __init__(self, book: Book, layout: Layout) -> None:
        self.book, self.layout = book, layout
        self.faults = [id for id, record in self.book.of("faults").items() if usable(record)]
        self.systems = cache(self._systems)
        self.stages = cache(self._stages)
        self.readings = cache(self._readings)
        self.paths = cache(self._paths)
        self._there = cache(self._exists)
        self.offered = cache(self._offered)
        self.spoken = cache(self._spoken)
        self._near = cache(self._beside)
        self.car = cache(self._car)
        self.isolation = cache(self._isolation)
        self.blind = cache(self._blind)
        self._normal: dict[str, str] = {}

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

    def _stages(self, fault: str, system: str) -> dict[str, Answers]:
        return stages_of(self.book, self.layout, self.car(system), fault, [system])

    def _paths(self, system: str) -> set[str]:
        """The names of the paths that a car with this system may have: its own, and those of sound systems that can stand beside it."""
        systems = self.book.of("systems")
        family = systems[system].data["family"]
        beside = (
            s
            for s, record in systems.items()
            if record.sound and (family == "layer" or record.data["family"] != family)
        )
        return self.layout.named([system, *beside])

    def _readings(self, system: str) -> list[str]:
        """The readings for diagnosis that a system offers when it is looked at on its own."""
        readings = self.book.of("readings")
        return [r for r in self.offered(system) if is_diagnosis(readings[r])]

    def _offered(self, system: str) -> dict[str, None]:
        """All readings that a system offers, in the book's order."""
        return dict.fromkeys(readings_of(self.book, self.layout, self.car(system)))

    def _spoken(self, system: str) -> set[str]:
        """The readings of which some fault speaks on this system."""
        return set().union(
            *(answers for fault in self._in.get(system, ()) for answers in self.stages(fault, system).values())
        )

    @cached_property
    def _in(self) -> dict[str, list[str]]:
        """Each system to the faults that can occur in it."""
        found: dict[str, list[str]] = {}
        for fault in self.faults:
            for system in self.systems(fault):
                found.setdefault(system, []).append(fault)
        return found

    def beside(self, fault: str, system: str) -> list[str]:
        """The readings on each path through the fault's part, and on every path that shares a component with one."""
        return self._near(self.book.of("faults")[fault].data["part"], system)

    def _beside(self, part: str, system: str) -> list[str]:
        through = {p for p in self.layout.paths(part) if p[0] == system}
        parts = {
            c
            for path in listed(self.book.of("systems")[system].data["paths"])
            if (system, path["name"]) in through
            for c in listed(path["through"])
        }
        near = through | {p for c in parts for p in self.layout.paths(c) if p[0] == system}
        beside = {r for path in near for r in self._lying.get(path, ())}
        return [
            r
            for r in self.readings(system)
            if r in beside or (r in self._spread and lies_on(self.book, self.layout, r, near))
        ]

    @cached_property
    def _lying(self) -> dict[Pair, list[str]]:
        """Each path to the readings that lie on it, but for those that lie where several others lie."""
        found: dict[Pair, list[str]] = {}
        for reading in self.book.of("readings"):
            places = places_on(self.book, self.layout, reading)
            for path in places[0] if len(places) == 1 else ():
                found.setdefault(path, []).append(reading)
        return found

    @cached_property
    def _spread(self) -> set[str]:
        """The readings that lie on a path only where each of several others does."""
        return {r for r in self.book.of("readings") if len(places_on(self.book, self.layout, r)) > 1}

    def _isolation(self, system: str) -> Isolation:
        return isolation_of(self.book, self.car(system))

    def _blind(self, system: str) -> dict[str, str]:
        """Readings whose band in this system has a limit on one side only, and the answer that it cannot give."""
        return one_sided(self.book, self.car(system))

    def normal(self, reading: str) -> str:
        """The answer of a healthy car."""
        if reading not in self._normal:
            self._normal[reading] = normal_of(self.book, reading)
        return self._normal[reading]

    def shows(self, fault: str, reading: str) -> bool:
        """Whether a fault is, in some stage on some system, sure to make this reading other than normal."""
        return any(
            self.sure(system, reading, stage.get(reading))
            for system in self.systems(fault)
            for stage in self.stages(fault, system).values()
        )

    def sure(self, system: str, reading: str, answers: frozenset[str] | None) -> bool:
        """Whether these answers exclude the normal one, in a system whose band may lack a side."""
        if answers is None:
            return False
        blind = self.blind(system).get(reading)
        return self.normal(reading) not in (answers - {blind} | {NORMAL} if blind in answers else answers)

    def pointing(self, reading: str) -> set[str]:
        """The faults in some stage of which this reading is surely other than normal."""
        return self._pointing.get(reading, set())

    @cached_property
    def _pointing(self) -> dict[str, set[str]]:
        found: dict[str, set[str]] = {}
        for fault in self.faults:  # what `elsewhere` says is normal
            said = {
                id(s): s
                for system in self.systems(fault)
                if (s := said_of(self.book, self.layout, self.car(system), fault))
            }
            for reading, may in [
                pair for stages in said.values() for answers in stages.values() for pair in answers.items()
            ]:
                if self.normal(reading) not in may:
                    found.setdefault(reading, set()).add(fault)
        return found

    @cached_property
    def named(self) -> set[str]:
        """The readings of which some fault speaks on some system."""
        return set().union(*(self.spoken(system) for system in self._in))

    @cached_property
    def felt(self) -> dict[str, list[str]]:
        """Each symptom to the faults that are felt so, in the book's order."""
        found: dict[str, list[str]] = {}
        for fault in self.faults:
            for symptom in mapped(self.book.of("faults")[fault].data["felt_as"]):
                found.setdefault(symptom, []).append(fault)
        return found

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


def is_diagnosis(record: Record) -> bool:
    """Whether a reading is taken for diagnosis."""
    return record.data.get("purpose", "diagnosis") == "diagnosis"
