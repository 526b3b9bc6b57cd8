"""What a sound record holds, by kind. Made from the schemas by bayleaf.records.generate; change those."""

from __future__ import annotations

from typing import Literal, NotRequired, TypedDict


class System(TypedDict):
    """One way of feeding an engine, or a layer that adds to any other: its paths, its usual bands, and what recognises it."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    family: Literal["fuel", "induction", "mixture", "exhaust", "layer"]
    shows: dict[str, str]
    explains: list[str]
    changed: NotRequired[str]
    paths: list[SystemPath]
    has: list[str]
    bands: dict[str, SystemBands]
    healthy: NotRequired[dict[str, list[str]]]
    mistaken_for: list[SystemMistakenFor]
    calculators: list[str]
    adds_to: NotRequired[list[Literal["fuel", "induction", "mixture", "exhaust"]]]
    brings: NotRequired[SystemBrings]


class Exceptions(TypedDict):
    """Rules that are silenced on this record, each with its reason. An exception that nothing needs any more is an error."""

    rule: str
    because: str
    field: NotRequired[str]


class SystemPath(TypedDict):
    """One path of the system: what it carries and through which parts."""

    name: str
    carries: Literal["fuel", "vacuum", "air", "exhaust", "current", "oil", "coolant", "vapour", "signal"]
    side: NotRequired[Literal["low", "high"]]
    through: list[str]
    greatest: NotRequired[SystemGreatest]


class SystemGreatest(TypedDict):
    """The greatest credible pressure on a path."""

    value: float
    unit: str
    because: str
    basis: Basis


class Basis(TypedDict):
    """Where a number comes from. Exactly one of: source with its place, practice, calculator, invented."""

    source: NotRequired[str]
    place: NotRequired[str]
    practice: NotRequired[Literal[True]]
    calculator: NotRequired[str]
    invented: NotRequired[Literal[True]]


class SystemBands(TypedDict):
    """The band of each reading on this system: reading id to limits, or to an expectation that a calculator gives."""

    min: NotRequired[float]
    max: NotRequired[float]
    unit: NotRequired[str]
    means: Literal["spread", "limit"]
    basis: Basis
    because: NotRequired[str]
    expected: NotRequired[SystemBandsExpected]
    within: NotRequired[Value]


class SystemBandsExpected(TypedDict):
    """How the expected value is found."""

    calculator: str
    inputs: dict[str, Inputs]
    result: NotRequired[str]


class Inputs(TypedDict):
    """What each input of a calculator is fed with: a reading, a fixed value, or a fact of the car."""

    reading: NotRequired[str]
    value: NotRequired[float]
    unit: NotRequired[str]
    car: NotRequired[Literal["altitude", "fuel-stoichiometric"]]


class Value(TypedDict):
    """A number with its unit."""

    value: float
    unit: str


class SystemMistakenFor(TypedDict):
    """Systems that it is taken for, each with what tells them apart, or none."""

    system: str
    because: str


class SystemBrings(TypedDict):
    """Layers only: what the layer adds to any system under it."""

    cautions: NotRequired[list[str]]
    acts: NotRequired[list[str]]
    states: NotRequired[list[str]]


class Component(TypedDict):
    """A part of the car: what it does, where it sits, how it fails."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    does: str
    found: str
    fails: list[str]
    mistaken_for: list[ComponentMistakenFor]
    part_of: NotRequired[str]
    each: NotRequired[Literal["bank", "cylinder"]]
    variables: NotRequired[list[str]]


class ComponentMistakenFor(TypedDict):
    """Parts that it is taken for, each with what tells them apart, or none."""

    component: str
    because: str


class Equipment(TypedDict):
    """An instrument, tool, adapter or piece of protective equipment."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    type: NotRequired[str]
    protective: bool
    measures: list[str]
    range: NotRequired[Range]
    error: NotRequired[EquipmentError]
    resolution: NotRequired[Value]
    readability: NotRequired[Value]
    repeatability: NotRequired[Value]
    rated: NotRequired[Value]
    setup: list[str]
    misleads: list[str]
    basis: NotRequired[Basis]


class Range(TypedDict):
    """Two limits in one unit."""

    min: float
    max: float
    unit: str


class EquipmentError(TypedDict):
    """The stated error: by zones of the span, or percent of the reading and counts, or one fixed value."""

    zones: NotRequired[list[EquipmentErrorZones]]
    percent_of_reading: NotRequired[float]
    counts: NotRequired[int]
    value: NotRequired[float]
    unit: NotRequired[str]


class EquipmentErrorZones(TypedDict):
    """Zones of the scale, each with its own error."""

    min: float
    max: float
    unit: str
    percent_of_span: float


class Reading(TypedDict):
    """One thing found out: a quantity at a place in a condition, a question with a closed list of answers, or a value computed from others. Exactly one of: quantity with when, answers with when, computed."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    quantity: NotRequired[str]
    answers: NotRequired[list[str]]
    computed: NotRequired[ReadingComputed]
    unit: NotRequired[str]
    healthy: NotRequired[list[str]]
    observes: NotRequired[list[str]]
    answers_as: NotRequired[str]
    at: NotRequired[str]
    between: NotRequired[list[str]]
    when: NotRequired[str]
    each: Literal["none", "cylinder", "bank", "connection"]
    valid_if: list[str]
    agrees_with: NotRequired[list[ReadingAgreesWith]]
    purpose: NotRequired[Literal["diagnosis", "recognition", "computation", "safety"]]


class ReadingComputed(TypedDict):
    """How the value is found from other readings; it is never typed, its inputs are."""

    difference: NotRequired[ReadingComputedDifference]
    quantity: NotRequired[str]
    calculator: NotRequired[str]
    inputs: NotRequired[dict[str, Inputs]]
    result: NotRequired[str]


class ReadingComputedDifference(TypedDict):
    """One reading less another."""

    of: str
    less: str


class ReadingAgreesWith(TypedDict):
    """Readings that must agree with it on a sound car."""

    sum_of: list[str]
    within: Value
    basis: Basis
    because: str


class Procedure(TypedDict):
    """One piece of work in steps: what it needs, what it leaves, what its readings mean."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    standing: NotRequired[bool]
    systems: list[str]
    tasks: list[str]
    inherits: list[str]
    needs: ProcedureNeeds
    leaves: list[str]
    ends: NotRequired[list[str]]
    where: list[Literal["bay", "lift", "road", "rolling-road", "bench"]]
    minutes: ProcedureMinutes
    spoils: list[str]
    steps: list[ProcedureStep]
    results: dict[str, dict[str, str]]
    misleads: list[str]
    next: NotRequired[str]
    calculators: NotRequired[list[str]]
    explain: NotRequired[str]


class ProcedureNeeds(TypedDict):
    """What must be there before the first step."""

    states: list[str]
    made_by: NotRequired[list[str]]
    has: list[str]
    equipment: list[str]
    consumables: list[str]
    people: int


class ProcedureMinutes(TypedDict):
    """How long it takes a practiced person, in minutes, without what it follows and inherits; a judgment."""

    hands: int
    waiting: NotRequired[int]


class ProcedureStep(TypedDict):
    """One step: either do, with its fields, or follow."""

    do: NotRequired[str]
    follow: NotRequired[str]
    act: NotRequired[str]
    at: NotRequired[str]
    when: NotRequired[str]
    takes: NotRequired[ProcedureStepTakes]
    lasts: NotRequired[ValueWithBasis]
    stop_at: NotRequired[ValueWithBasis]
    at_most: NotRequired[ValueWithBasis]
    cautions: NotRequired[list[str]]
    sets: NotRequired[list[str]]
    proves: NotRequired[list[str]]
    equipment: NotRequired[list[str]]


class ProcedureStepTakes(TypedDict):
    """The reading that the step takes, and with what."""

    reading: str
    instrument: NotRequired[str]


class ValueWithBasis(TypedDict):
    """A number with its unit and where it comes from."""

    value: float
    unit: str
    basis: Basis
    because: NotRequired[str]


class Fault(TypedDict):
    """Something that can be wrong: what each reading shows when it is, what the driver feels, what mends it, what proves the mend."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    part: str
    systems: NotRequired[list[str]]
    commonness: Literal["common", "occasional", "rare"]
    stages: dict[str, dict[str, str | list[str]]]
    differs: NotRequired[dict[str, dict[str, dict[str, str | list[str]]]]]
    disturbs: NotRequired[list[str]]
    damages: NotRequired[list[str]]
    because: NotRequired[dict[str, str]]
    felt_as: dict[str, Literal["always", "sometimes"]]
    mended_by: list[str | FaultMendedBy]
    proved_by: str | FaultProvedBy


class FaultMendedBy(TypedDict):
    """What mends it: procedures, or words."""

    words: str


class FaultProvedBy(TypedDict):
    """The reading that proves the mend, or none with the reason."""

    none: str


class Symptom(TypedDict):
    """What the driver notices."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    ask: list[str]
    first: list[str]
    prevents: list[str]
    holds_back: NotRequired[list[str]]
    dangers: NotRequired[list[str]]
    explain: str


class Code(TypedDict):
    """A trouble code: what sets it in general, what to read first, what it is taken for."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    code: str
    sets: str
    reports: NotRequired[list[CodeReports]]
    first: list[str]
    mistaken_for: list[str]
    symptoms: list[str]
    systems: list[str]
    basis: Basis


class CodeReports(TypedDict):
    """What the control module saw, as readings; any one of them is enough."""

    reading: NotRequired[str]
    shows: NotRequired[str]
    at: NotRequired[str]
    words: NotRequired[str]


class Calculator(TypedDict):
    """One calculation: inputs with their limits, a formula in lines, and worked checks from outside."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    inputs: dict[str, CalculatorInput]
    exclusive: NotRequired[list[list[str]]]
    constants: NotRequired[dict[str, CalculatorConstant]]
    formula: dict[str, str]
    requires: NotRequired[list[CalculatorRequirement]]
    result: dict[str, CalculatorResult]
    basis: Basis
    holds: str
    fails: str
    table: CalculatorTable
    chart: NotRequired[CalculatorChart]
    teaches: NotRequired[str]
    checks: list[CalculatorCheck]


class CalculatorInput(TypedDict):
    """One input; all its numbers are in its unit."""

    quantity: str
    unit: str
    default: float
    min: float
    max: float
    whole: NotRequired[Literal[True]]


class CalculatorConstant(TypedDict):
    """One constant."""

    value: float
    unit: str
    quantity: str
    basis: Basis


class CalculatorRequirement(TypedDict):
    """One thing that must hold."""

    that: str
    because: str


class CalculatorResult(TypedDict):
    """One result."""

    quantity: str
    unit: str
    digits: int
    says: NotRequired[list[CalculatorSaying]]


class CalculatorSaying(TypedDict):
    """One range of a result, and what is said of it."""

    below: NotRequired[float]
    words: str


class CalculatorTable(TypedDict):
    """The table that its page prints; the other inputs stand at their defaults."""

    rows: dict[str, list[float]]
    columns: NotRequired[dict[str, list[float]]]
    result: NotRequired[str]
    results: NotRequired[list[str]]


class CalculatorChart(TypedDict):
    """A chart, if its page draws one: one result with a line for each value of another input, or several results."""

    x: str
    lines: NotRequired[str]
    result: NotRequired[str]
    results: NotRequired[list[str]]
    range: NotRequired[CalculatorChartRange]


class CalculatorChartRange(TypedDict):
    """Over what the chart runs instead, in the unit of x; needed where x has no values in the table."""

    min: float
    max: float


class CalculatorCheck(TypedDict):
    """One worked check: published, with basis, or worked by hand, with working."""

    given: dict[str, Value]
    gives: dict[str, CalculatorCheckGives]
    basis: NotRequired[Basis]
    working: NotRequired[str]


class CalculatorCheckGives(TypedDict):
    """The results that must come out."""

    value: float
    unit: str
    within: Value


class Vehicle(TypedDict):
    """An invented car of the demonstration: its systems, its features and its maker's figures."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    invented: Literal[True]
    systems: list[str]
    has: list[str]
    fuel: str
    altitude: ValueWithBasis
    bands: dict[str, MakerLimits]


class MakerLimits(TypedDict):
    """The maker's own limits for one reading; min, max or both."""

    min: NotRequired[float]
    max: NotRequired[float]
    unit: str
    means: Literal["limit"]
    basis: Basis
    because: NotRequired[str]


class Job(TypedDict):
    """One diagnosis: a car, a complaint, the readings taken, and in a demonstration job where they lead. Exactly one of vehicle and car."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: Literal["draft", "reviewed", "retired"]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    invented: NotRequired[Literal[True]]
    vehicle: NotRequired[str]
    car: NotRequired[JobCar]
    maker_bands: NotRequired[dict[str, JobMakerBand]]
    shop: list[str]
    comes_and_goes: NotRequired[bool]
    felt: list[str]
    codes: NotRequired[list[str]]
    history: NotRequired[list[str]]
    readings: list[JobEntry]
    true_cause: NotRequired[list[str]]
    expects: NotRequired[JobExpects]


class JobCar(TypedDict):
    """Any other car, described here."""

    systems: list[str]
    has: list[str]
    fuel: str
    altitude: Value


class JobMakerBand(TypedDict):
    """The maker's limits for one reading; min, max or both, and either looked_up or invented."""

    min: NotRequired[float]
    max: NotRequired[float]
    unit: str
    looked_up: NotRequired[str]
    invented: NotRequired[Literal[True]]


class JobEntry(TypedDict):
    """One entry: a reading with value, answer, cannot or not_reached, or a repair."""

    reading: NotRequired[str]
    which: NotRequired[int | str]
    value: NotRequired[float]
    unit: NotRequired[str]
    instrument: NotRequired[str]
    fault_was: NotRequired[Literal["present", "absent"]]
    not_met: NotRequired[list[str]]
    answer: NotRequired[str]
    cannot: NotRequired[str]
    not_reached: NotRequired[Literal[True]]
    repaired: NotRequired[str]


class JobExpects(TypedDict):
    """Where a replay must lead. Required in kb/jobs, refused in a technician's own job."""

    left: list[str]
    next: NotRequired[str]


class Quantity(TypedDict):
    """One quantity."""

    title: str
    summary: NotRequired[str]
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    reference: Literal["absolute", "gauge", "vacuum", "difference", "none"]
    units: dict[str, list[str]]
    shown: QuantityShown
    plausible: RangeWithBasis


class QuantityShown(TypedDict):
    """The two units that pages show."""

    customary: str
    si: str


class RangeWithBasis(TypedDict):
    """Two limits in one unit and where they come from."""

    min: float
    max: float
    unit: str
    basis: Basis
    because: NotRequired[str]


class Condition(TypedDict):
    """One condition."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    implies: list[str]


class Variable(TypedDict):
    """One variable."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    influences: list[str | VariableInfluences]


VariableInfluences = TypedDict(
    "VariableInfluences",
    {
        "to": "str",
        "when": "NotRequired[list[str]]",
        "in": "NotRequired[list[str]]",
        "unless": "NotRequired[list[str]]",
    },
)


class Effect(TypedDict):
    """One effect."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    shows: dict[str, str | list[str]]


class History(TypedDict):
    """One effect."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    faults: NotRequired[list[str]]
    parts: NotRequired[list[str]]


class State(TypedDict):
    """One state."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    set_by: NotRequired[list[str]]
    carries: NotRequired[
        list[Literal["fuel", "vacuum", "air", "exhaust", "current", "oil", "coolant", "vapour", "signal"]]
    ]
    ended_by: NotRequired[list[str]]
    proved_by: NotRequired[StateProvedBy]
    requires: NotRequired[list[str]]
    forbids: NotRequired[list[str]]
    needs: NotRequired[list[str]]
    stop_at: NotRequired[Literal["required"]]
    connection: NotRequired[bool]
    each: NotRequired[Literal["joint"]]


class StateProvedBy(TypedDict):
    """The reading and the answer that prove it."""

    reading: str
    answer: str


class Act(TypedDict):
    """One act."""

    title: str
    summary: NotRequired[str]
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    implies: list[str]
    undone_by: NotRequired[str]
    lasts: NotRequired[ActLasts]


class ActLasts(TypedDict):
    """How long a step with this act lasts at least and at most, where the step states a time."""

    least: float
    most: float
    unit: str
    basis: Basis


class Hazard(TypedDict):
    """One hazard."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    triggers: list[HazardTrigger]


HazardTrigger = TypedDict(
    "HazardTrigger",
    {
        "acts": "NotRequired[list[str]]",
        "carries": 'NotRequired[list[Literal["fuel", "vacuum", "air", "exhaust", "current", "oil", "coolant", "vapour", "signal"]]]',
        "side": 'NotRequired[Literal["low", "high"]]',
        "greatest_at_least": "NotRequired[ValueWithBasis]",
        "without": "NotRequired[list[str]]",
        "with": "NotRequired[list[str]]",
        "conditions": "NotRequired[list[str]]",
        "equipment": "NotRequired[list[str]]",
        "places": 'NotRequired[list[Literal["bay", "lift", "road", "rolling-road", "bench"]]]',
        "quantities": "NotRequired[list[str]]",
    },
)


class Caution(TypedDict):
    """One caution."""

    title: str
    summary: NotRequired[str]
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    signal: Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
    severity: Literal["will-kill", "could-kill", "could-hurt", "damages"]
    hazards: list[str]
    danger: str
    consequence: str
    avoid: list[str]
    standing: NotRequired[bool]
    basis: Basis


class Fuel(TypedDict):
    """One fuel."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    ethanol: RangeWithBasis
    stoichiometric: ValueWithBasis
    density: FuelDensity
    cautions: list[str]


class FuelDensity(TypedDict):
    """Its density: the range that is sold, or one value for a pure substance."""

    min: NotRequired[float]
    max: NotRequired[float]
    unit: str
    basis: Basis
    because: NotRequired[str]
    value: NotRequired[float]


class Source(TypedDict):
    """One source."""

    title: str
    summary: NotRequired[str]
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    issuer: str
    year: int
    opened: bool
    note: NotRequired[str]


class Term(TypedDict):
    """One term."""

    title: str
    summary: NotRequired[str]
    also_called: list[str]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    means: str
    basis: Basis


class Task(TypedDict):
    """One task."""

    title: str
    summary: str
    also_called: NotRequired[list[str]]
    status: NotRequired[Literal["draft", "reviewed", "retired"]]
    replaced_by: NotRequired[str]
    exceptions: NotRequired[list[Exceptions]]
    first: NotRequired[Literal[True]]
