"""The proof that a formula's dimensions close and its references are never mixed.

Conversions are never automatic; + and - take a free pressure or temperature for a difference. The proof also lowers
the tree to plain arithmetic: absolute(), gauge(), vacuum() and above_ambient() become + and -.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from bayleaf.formulas.language.errors import error
from bayleaf.formulas.language.names import near
from bayleaf.formulas.language.references import CONVERSIONS, convert
from bayleaf.formulas.language.tree import Node, literal, number
from bayleaf.formulas.language.types import PURE, Type, product_type

Types = tuple[Type, ...]
Args = tuple[Node, ...]

MAX_EXPONENT = 8
LITERALS = {0, 1, 2, 3, 4, Fraction(1, 2)}


def prove(node: Node, known: dict[str, Type]) -> tuple[Type, Node]:
    """The type of an expression and the same expression in plain arithmetic; raises FormulaError."""
    return _Proof(known).of(node)


class _Proof:
    def __init__(self, known: dict[str, Type]) -> None:
        self.known = known

    def of(self, node: Node) -> tuple[Type, Node]:
        match node.kind:
            case "number":
                if number(node.text) not in LITERALS:
                    raise error(
                        node, f"{node.text} needs a basis", "move it to constants; 0, 1, 2, 3, 4 and 0.5 may stand here"
                    )
                return PURE, node
            case "name":
                return self.name(node), node
            case "**":
                return self.power(node)
        if node.kind == "if":
            return self.choice(node)
        types, args = self.parts(node.args)
        if node.kind in CONVERSIONS:
            return convert(node, types, args)
        return _RULES[node.kind](self, node, types, args), node._replace(args=args)

    def parts(self, nodes: Args) -> tuple[Types, Args]:
        """The types of several expressions, and the same expressions in plain arithmetic."""
        proved = [self.of(node) for node in nodes]
        return tuple(type for type, _ in proved), tuple(lowered for _, lowered in proved)

    def name(self, node: Node) -> Type:
        if node.text != "pi" and node.text not in self.known:
            raise error(node, f"nothing is called {node.text}", near(node.text, self.known))
        return PURE if node.text == "pi" else self.known[node.text]

    def sum(self, node: Node, types: Types, _args: Args) -> Type:
        a, b = types
        if a.dimension != b.dimension:
            raise error(node, f"{a} {node.kind} {b}", "both sides need one dimension")
        pair = (a.reference, b.reference)
        if "none" in pair:
            return a
        if pair == ("difference", "difference"):
            return a
        if set(pair) <= {"free", "difference"}:
            return a._replace(reference="free")
        loose = {"difference", "free"}
        if a.reference in ("absolute", "gauge") and b.reference in loose:
            return a
        if node.kind == "+" and b.reference in ("absolute", "gauge") and a.reference in loose:
            return b
        if node.kind == "-" and pair in (("absolute", "absolute"), ("gauge", "gauge")):
            return a._replace(reference="difference")
        raise error(
            node,
            f"{a} {node.kind} {b}",
            "convert first: absolute(p, barometer), gauge( ), vacuum( ), "
            "above_ambient( ); + and - take a difference, - also two of one kind",
        )

    def product(self, node: Node, types: Types, args: Args) -> Type:
        for type, arg in zip(types, args, strict=True):
            self.scalable(type, arg)
        a, b = types
        sign = 1 if node.kind == "*" else -1
        if b.pure or (a.pure and sign == 1):
            return a if b.pure else b
        return product_type([x + sign * y for x, y in zip(a.dimension, b.dimension, strict=True)])

    def scalable(self, type: Type, arg: Node) -> None:
        if type.reference in ("gauge", "vacuum"):
            raise error(
                arg,
                f"{type} in a product, a quotient or a power",
                "its zero is not zero: use absolute(p, barometer), or above_ambient( ) for the difference",
            )

    def power(self, node: Node) -> tuple[Type, Node]:
        base, lowered = self.of(node.args[0])
        self.scalable(base, node.args[0])
        exponent = literal(node.args[1])
        if exponent is not None:
            if abs(exponent) > MAX_EXPONENT:
                raise error(node.args[1], f"an exponent of {exponent}", f"{MAX_EXPONENT} is the greatest")
            result = base if exponent == 1 else product_type([x * exponent for x in base.dimension])
            number = Node("number", (), str(exponent), node.args[1].start, node.args[1].end)
            return result, node._replace(args=(lowered, number))
        type, raised = self.of(node.args[1])
        if not type.pure:
            raise error(node.args[1], f"{type} as an exponent", "an exponent is a pure number")
        if not base.pure:
            raise error(
                node.args[0],
                f"{base} to a power that is not written out",
                "only a number such as 2 or (1/2) may stand over a value with a unit",
            )
        return PURE, node._replace(args=(lowered, raised))

    def root(self, _node: Node, types: Types, args: Args) -> Type:
        self.scalable(types[0], args[0])
        return product_type([Fraction(x, 2) for x in types[0].dimension])

    def number(self, node: Node, types: Types, _args: Args) -> Type:
        if not types[0].pure:
            raise error(
                node.args[0],
                f"{node.kind} of {types[0]}",
                "it takes a pure number: divide by a constant of the same unit",
            )
        return PURE

    def same(self, _node: Node, types: Types, args: Args) -> Type:
        """One type for several values; a literal 0 fits any."""
        kept = [type for type, arg in zip(types, args, strict=True) if literal(arg) != 0] or [PURE]
        bound = [type for type in kept if type.reference != "free"] or kept
        for type, arg in zip(types, args, strict=True):
            fits = type.dimension == bound[0].dimension and type.reference in (bound[0].reference, "free")
            if literal(arg) != 0 and not fits:
                raise error(arg, f"{type} beside {bound[0]}", "all values here need one dimension and one reference")
        return bound[0]

    def compare(self, node: Node, _types: Types, _args: Args) -> Type:
        raise error(node, "a comparison outside if( )", "write if(a < b, one, other)")

    def choice(self, node: Node) -> tuple[Type, Node]:
        test = node.args[0]
        if test.kind not in ("<", "<=", ">", ">="):
            raise error(test, "if( ) without a comparison", "write if(a < b, one, other)")
        side_types, sides = self.parts(test.args)
        self.same(test, side_types, sides)
        types, args = self.parts(node.args[1:])
        return self.same(node, types, args), node._replace(args=(test._replace(args=sides), *args))

    def sign(self, node: Node, types: Types, _args: Args) -> Type:
        if types[0].reference not in ("none", "difference", "free"):
            raise error(
                node,
                f"{'minus' if node.kind == 'neg' else 'abs of'} {types[0]}",
                "convert it first: gauge( ) of a vacuum is its negative",
            )
        return types[0]


# Every rule takes the node, the types of its parts and the parts in plain arithmetic, and gives the type of the whole.
_RULES: dict[str, Callable[[_Proof, Node, Types, Args], Type]] = {
    "+": _Proof.sum,
    "-": _Proof.sum,
    "*": _Proof.product,
    "/": _Proof.product,
    "neg": _Proof.sign,
    "abs": _Proof.sign,
    "sqrt": _Proof.root,
    "exp": _Proof.number,
    "log": _Proof.number,
    "min": _Proof.same,
    "max": _Proof.same,
    "<": _Proof.compare,
    "<=": _Proof.compare,
    ">": _Proof.compare,
    ">=": _Proof.compare,
}
