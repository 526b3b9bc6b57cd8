"""What an instrument may be out by, in SI, at the value that it shows."""

from __future__ import annotations

from typing import Any, NamedTuple

from bayleaf.quantities import Quantity, QuantityError
from bayleaf.records import Book, mapped

# A value converted to SI and back is equal to itself only to this share.
SLACK = 1e-9


class Instrument(NamedTuple):
    """An instrument's own limits for one quantity; every number in SI, None where nothing is stated.

    `zones` are (low, high, limit of error); `share` is the part of the reading (0.01 for 1 %), counted from `zero`,
    the SI value at which the instrument shows 0 (273.15 K for one that shows °C); `counts` is the error in counts.
    """

    id: str
    title: str
    low: float | None = None
    high: float | None = None
    zones: tuple[tuple[float, float, float], ...] = ()
    share: float | None = None
    counts: float = 0.0
    zero: float = 0.0
    fixed: float | None = None
    resolution: float | None = None
    readability: float | None = None
    repeatability: float | None = None

    def error(self, value: float) -> float | None:
        """The limit of error at `value`; where two zones meet, and between zones, the wider one."""
        if self.zones:
            near = SLACK * max(abs(self.zones[-1][1]), abs(value))
            here = [a for low, high, a in self.zones if low - near <= value <= high + near]
            return max(here or [a for _low, _high, a in self.zones])
        if self.share is not None:
            return self.share * abs(value - self.zero) + self.counts
        return self.fixed

    def allowance(self, value: float) -> float | None:
        """The guard band w = a + d/2, with a digital display w = a (JCGM 106 and ILAC-G8, recalled); None if unstated."""
        a = self.error(value)
        if a is None or self.share is not None:
            return a
        return a + (self.readability or 0.0) / 2

    def allowance_of_difference(self) -> float | None:
        """The guard band of a difference of two readings of this instrument: zero and slope cancel.

        Repeatability is the greatest difference expected between two readings of one value (ISO 5725, recalled);
        half a division is added for each reading, of a digital display half a count.
        """
        if self.repeatability is None:
            return None
        return self.repeatability + (self.readability or self.resolution or 0.0)

    def reaches(self, value: float) -> bool:
        """Whether `value` lies on the scale."""
        near = SLACK * max(abs(value), abs(self.low or 0.0), abs(self.high or 0.0))
        return (self.low is None or value >= self.low - near) and (self.high is None or value <= self.high + near)


def instrument_of(book: Book, id: str, quantity: Quantity) -> Instrument | None:
    """The instrument with this id as it measures `quantity`; what it does not state, its type states.

    None when no such equipment exists. A range or an error in a unit of something else belongs to another function of
    the instrument and is left out.
    """
    chain = types_of(book, id)
    if not chain:
        return None
    data: dict[str, Any] = {}
    for one in reversed(chain):
        data |= {field: value for field, value in book.of("equipment")[one].data.items() if value not in ([], {})}
    span, error = mapped(data.get("range")), mapped(data.get("error"))
    low, high = _si(quantity, span, "min"), _si(quantity, span, "max")
    resolution = _width(quantity, mapped(data.get("resolution")))
    fields: dict[str, Any] = {}
    if "zones" in error and low is not None and high is not None:
        zones = [
            (_si(quantity, z, "min"), _si(quantity, z, "max"), z["percent_of_span"] / 100 * (high - low))
            for z in error["zones"]
        ]
        fields["zones"] = tuple(z for z in zones if z[0] is not None)
    elif "percent_of_reading" in error and (resolution is not None or not error.get("counts")):
        fields["share"] = error["percent_of_reading"] / 100
        fields["counts"] = error.get("counts", 0) * (resolution or 0.0)
        fields["zero"] = _si(quantity, {"zero": 0, **span}, "zero") or 0.0
    elif "value" in error:
        fields["fixed"] = _width(quantity, error)
    return Instrument(
        id=id,
        title=book.of("equipment")[id].title,
        low=low,
        high=high,
        resolution=resolution,
        readability=_width(quantity, mapped(data.get("readability"))),
        repeatability=_width(quantity, mapped(data.get("repeatability"))),
        **fields,
    )


def types_of(book: Book, id: str) -> list[str]:
    """The id and the types above it, nearest first; a circle is cut."""
    chain: list[str] = []
    while id and id not in chain and id in book.of("equipment"):
        chain.append(id)
        id = book.of("equipment")[id].data.get("type", "")
    return chain


def _si(quantity: Quantity, amount: dict[str, Any], key: str) -> float | None:
    try:
        return quantity.si(amount[key], amount["unit"])
    except (KeyError, QuantityError):
        return None


def _width(quantity: Quantity, amount: dict[str, Any]) -> float | None:
    try:
        return quantity.width(amount["value"], amount["unit"])
    except (KeyError, QuantityError):
        return None
