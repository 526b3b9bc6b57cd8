"""Which records speak of which: the indexes that make every link go both ways."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from itertools import combinations

from bayleaf.diagnosis.car.car import Car, car_of_system, inputs_of, places_of
from bayleaf.diagnosis.car.layout import Layout, layout_of
from bayleaf.diagnosis.faults.isolate import Isolation, isolation_of
from bayleaf.diagnosis.faults.matrix import Matrix, matrix_of, matrix_of_system
from bayleaf.formulas.calculator.compile import compile_calculator
from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.language.errors import FormulaError
from bayleaf.pages.building.view import View
from bayleaf.records import Record
from bayleaf.records.named import links_of

# What a path carries, as a heading; a part on several paths stands under the first.
CARRIES = {
    "fuel": "Fuel",
    "air": "Air",
    "exhaust": "Exhaust",
    "vapour": "Vapour",
    "vacuum": "Vacuum",
    "oil": "Oil",
    "coolant": "Coolant",
    "current": "Power and ground",
    "signal": "Signals",
}


class Uses(View):
    """A view with everything that can be derived from the whole book, each worked out once."""

    @cached_property
    def referrers(self) -> dict[str, list[Record]]:
        """Id to the records that name it in a field or link to it in prose."""
        referrers: dict[str, dict[str, Record]] = {}
        for record in self.book.records():
            if not record.sound or record.data.get("status") == "retired":
                continue
            for link in links_of(record):
                referrers.setdefault(link.id, {})[record.id] = record
        return {id: list(others.values()) for id, others in referrers.items()}

    @cached_property
    def takers(self) -> dict[str, list[Record]]:
        """Reading to the procedures that take it; a computed one is taken by those that take what it needs last."""
        takers: dict[str, list[Record]] = {}
        for record in self.live("procedures"):
            for step in record.data.get("steps", []):
                reading = step.get("takes", {}).get("reading")
                if reading and record not in takers.setdefault(reading, []):
                    takers[reading].append(record)
        for record in self.live("readings"):
            inputs = inputs_of(self.book, record.id)
            sources = [procedure for reading in inputs for procedure in takers.get(reading, [])]
            if inputs and record.id not in takers:
                takers[record.id] = [p for i, p in enumerate(sources) if p not in sources[:i]]
        return takers

    @cached_property
    def repairs(self) -> set[str]:
        """The procedures that mend a fault."""
        return {id for r in self.live("faults") for id in r.data.get("mended_by", []) if isinstance(id, str)}

    @cached_property
    def leavers(self) -> dict[str, list[Record]]:
        """State to the procedures that leave it."""
        return self._by("leaves")

    @cached_property
    def enders(self) -> dict[str, list[Record]]:
        """State to the procedures that end it."""
        return self._by("ends")

    @cached_property
    def of_task(self) -> dict[str, list[Record]]:
        """Task to its procedures."""
        return self._by("tasks")

    def _by(self, field: str) -> dict[str, list[Record]]:
        by_id: dict[str, list[Record]] = {}
        for record in self.live("procedures"):
            for id in record.data.get(field, []):
                by_id.setdefault(id, []).append(record)
        return by_id

    @cached_property
    def layout(self) -> Layout:
        """Which components lie on which paths."""
        return layout_of(self.book)

    @cached_property
    def matrices(self) -> dict[str, Matrix]:
        """System to its fault matrix, for every current system."""
        return {record.id: matrix_of_system(self.book, record.id) for record in self.live("systems")}

    @cached_property
    def pairs(self) -> dict[tuple[str, str], Matrix]:
        """Two systems of different families, as one car may have them, to their fault matrix."""
        family = {s: self.book.of("systems")[s].data["family"] for s in self.matrices}
        return {
            (a, b): matrix_of(self.book, Car(f"{self.title(a)}, {self.title(b)}", (a, b)))
            for a, b in combinations(self.matrices, 2)
            if family[a] != family[b]
        }

    @cached_property
    def faults_on(self) -> dict[str, set[str]]:
        """System to the faults that can occur in it, looked at on its own."""
        return {system: {row.fault for row in matrix.rows} for system, matrix in self.matrices.items()}

    @cached_property
    def isolations(self) -> dict[str, Isolation]:
        """System to what its readings can tell apart."""
        return {id: isolation_of(self.book, car_of_system(self.book, id)) for id in self.matrices}

    @cached_property
    def calculators(self) -> dict[str, Calculator]:
        """Calculator id to the proved calculator; one that cannot be proved is left out, the checks say why."""
        proved = {}
        for record in self.all("calculators"):
            try:
                proved[record.id] = compile_calculator(record.data, self.desk.quantities)
            except FormulaError:
                continue
        return proved

    @cached_property
    def kinds_of(self) -> dict[str, list[Record]]:
        """Type of equipment to everything of that type, at any depth; the type itself first."""
        by_type: dict[str, list[Record]] = {}
        for record in self.live("equipment"):
            for type in self.types(record.id):
                by_type.setdefault(type, []).append(record)
        return {type: sorted(all, key=lambda r: r.id != type) for type, all in by_type.items()}

    def types(self, equipment: str) -> list[str]:
        """An equipment id and the types above it, nearest first; a circle is cut."""
        chain: list[str] = []
        while (record := self.get(equipment, "equipment")) and equipment not in chain:
            chain.append(equipment)
            equipment = record.data.get("type", "")
        return chain

    def places(self, reading: str) -> list[str]:
        """The components where a reading is taken."""
        return places_of(self.book, reading)

    def carried(self, component: str) -> str:
        """What the paths through a component carry; of several the first of CARRIES, '' when it lies on none."""
        on = self.layout.paths(component)
        contents = {
            path["carries"]
            for s in {s for s, _name in on}
            for path in self.book.of("systems")[s].data.get("paths", [])
            if (s, path["name"]) in on
        }
        return next((carried for carried in CARRIES if carried in contents), "")

    def by_carried(
        self, records: Iterable[Record], place: Callable[[Record], str]
    ) -> list[tuple[str, str, list[Record]]]:
        """(anchor, heading, records) by what is carried where each record has its place."""
        groups: dict[str, list[Record]] = {carried: [] for carried in (*CARRIES, "")}
        for record in records:
            groups[self.carried(place(record))].append(record)
        return [(carried or "others", CARRIES.get(carried, "Others"), those) for carried, those in groups.items()]

    def systems_of(self, record: Record) -> list[str]:
        """The systems that a procedure or a code is for: those it names, or every current one."""
        named = record.data.get("systems", [])
        return [s for s in self.matrices if not named or s in named]
