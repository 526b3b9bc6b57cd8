"""The only ways from one reference to another. Nothing converts by itself."""

from __future__ import annotations

from bayleaf.formulas.language.errors import error
from bayleaf.formulas.language.tree import Node
from bayleaf.formulas.language.types import Type
from bayleaf.quantities.quantity import PRESSURE

# From which reference, with how many values, and what arithmetic it is.
CONVERSIONS: dict[str, dict[tuple[str, int], str]] = {
    "absolute": {("gauge", 2): "+", ("vacuum", 2): "swap"},
    "gauge": {("absolute", 2): "-", ("vacuum", 1): "neg"},
    "vacuum": {("absolute", 2): "swap"},
    "above_ambient": {("gauge", 1): ""},
}
_TAKES = {
    "absolute": "it takes a gauge pressure or a vacuum, and the barometer",
    "gauge": "it takes an absolute pressure and the barometer, or a vacuum alone",
    "vacuum": "it takes an absolute pressure and the barometer",
    "above_ambient": "it takes a gauge pressure alone",
}


def convert(node: Node, types: tuple[Type, ...], args: tuple[Node, ...]) -> tuple[Type, Node]:
    """The type and the plain arithmetic of absolute( ), gauge( ), vacuum( ) or above_ambient( ).

    Raises FormulaError for any other way from one reference to another.
    """
    value = types[0]
    if value.dimension != PRESSURE or (value.reference, len(args)) not in CONVERSIONS[node.kind]:
        if value == Type(PRESSURE, node.kind):
            raise error(node, f"{value} is {node.kind} already", f"leave {node.kind}( ) away")
        raise error(node, f"{node.kind}( ) of {value}", _TAKES[node.kind])
    if len(args) == 2 and types[1] != Type(PRESSURE, "absolute"):
        raise error(node.args[1], f"{types[1]} as the barometer", "the second value is an absolute pressure")
    result = Type(PRESSURE, "difference" if node.kind == "above_ambient" else node.kind)
    match CONVERSIONS[node.kind][value.reference, len(args)]:
        case "":
            return result, args[0]
        case "neg":
            return result, node._replace(kind="neg", args=args)
        case "swap":
            return result, node._replace(kind="-", args=args[::-1])
        case sign:
            return result, node._replace(kind=sign, args=args)
