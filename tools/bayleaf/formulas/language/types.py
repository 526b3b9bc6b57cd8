"""What a value is: its dimension and its reference.

Pressures and temperatures have the reference absolute, gauge, vacuum or difference; one that results from other
factors is "free" and takes the reference that is declared for it.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import NamedTuple

from bayleaf.quantities.quantity import PRESSURE, TEMPERATURE

_NAMES: dict[tuple[int | Fraction, ...], str] = {
    (0, 0, 0, 0, 0): "a pure number",
    PRESSURE: "a pressure",
    TEMPERATURE: "a temperature",
    (0, 0, 1, 0, 0): "a time",
    (1, 0, 0, 0, 0): "a length",
    (2, 0, 0, 0, 0): "an area",
    (3, 0, 0, 0, 0): "a volume",
    (0, 1, 0, 0, 0): "a mass",
    (0, 0, -1, 0, 0): "a frequency",
    (-3, 1, 0, 0, 0): "a density",
    (0, 1, -1, 0, 0): "a mass flow",
    (3, 0, -1, 0, 0): "a volume flow",
    (0, 0, 0, 0, 1): "a current",
    (2, 1, -3, 0, -1): "a voltage",
    (2, 1, -3, 0, -2): "a resistance",
    (2, 1, -3, 0, 0): "a power",
    (2, 1, -2, 0, 0): "an energy or torque",
    (1, 1, -2, 0, 0): "a force",
    (1, 0, -1, 0, 0): "a speed",
}


class Type(NamedTuple):
    """What a value is: powers of m, kg, s, K, A, and the reference (none where there is none)."""

    dimension: tuple[int | Fraction, ...]
    reference: str = "none"

    @property
    def pure(self) -> bool:
        """Whether it is a plain number, without any unit."""
        return not any(self.dimension)

    def __str__(self) -> str:
        name = _NAMES.get(self.dimension)
        if name is None:
            powers = [
                f"{base}^{power}"
                for base, power in zip(("m", "kg", "s", "K", "A"), self.dimension, strict=True)
                if power
            ]
            name = f"a value in {' '.join(powers)}"
        if self.reference in ("none", "free"):
            return name
        kind = name.removeprefix("a ")
        if self.reference == "difference":
            return f"a {kind} difference"
        return f"{'an' if self.reference == 'absolute' else 'a'} {self.reference} {kind}"


PURE = Type((0, 0, 0, 0, 0))


def product_type(powers: Iterable[int | Fraction]) -> Type:
    """The type of a product, from its powers of m, kg, s, K, A: a pressure or a temperature that comes out of other factors is free."""
    dimension = tuple(int(power) if power == int(power) else Fraction(power) for power in powers)
    return Type(dimension, "free" if dimension in (PRESSURE, TEMPERATURE) else "none")
