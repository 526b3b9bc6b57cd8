"""A calculator: form, formula, table, chart, where it holds and fails, and its worked checks."""

from __future__ import annotations

from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.output.typeset import typeset
from bayleaf.pages.building.amounts import amount, basis, sourced, typed
from bayleaf.pages.building.blocks import blocks, box, bullets, facts, para, section, table
from bayleaf.pages.building.frame import record_page
from bayleaf.pages.building.index import cards, grouped, index_page
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, link, small, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.form import form
from bayleaf.pages.parts.worked import name_words, value_table
from bayleaf.pages.pictures.chart import chart
from bayleaf.quantities import Quantity, with_unit
from bayleaf.records import Record, mapped


def page(view: Uses, record: Record) -> str:
    """The page of one calculator."""
    data, calc = record.data, view.calculators.get(record.id)
    used = [r for r in view.referrers.get(record.id, []) if r.kind in ("procedures", "systems", "readings")]
    return record_page(
        view,
        record,
        [
            section("work-out", "Work it out", form(record, calc)) if calc else EMPTY,
            section("table", "Table", value_table(record, calc), chart(calc)) if calc else EMPTY,
            section(
                "formula",
                "Formula",
                _formula(calc) if calc else EMPTY,
                para(small("Basis of the formula: ", basis(view, data["basis"]), ".")),
            ),
            section("symbols", "What the names stand for", _symbols(view, record)),
            section("holds", "Where it holds", para(view.prose(data["holds"]))),
            section("fails", "Where it fails", para(view.prose(data["fails"]))),
            section(
                "class",
                "For the class",
                para(view.prose(data.get("teaches"))),
                para(link("more/class.md", "More for the class"), css="bl-all"),
            )
            if "teaches" in data
            else EMPTY,
            section("checks", "Worked checks", *(_check(view, record, i) for i in range(len(data["checks"])))),
            section("used", "Used by", cards(view, used)),
        ],
    )


def _formula(calc: Calculator) -> Markup:
    """Each line typeset; a pressure that is converted is written out. Units are never in it: the values carry them."""
    lines = typeset(calc)
    formulas = "".join(f"<div>{line.mathml}</div>" for line in lines)
    written = bullets(small(line.plain) for line in lines)
    return blocks(
        Markup(f'<div class="bl-formula">{formulas}</div>'), para(small("As it is written in the record:")), written
    )


def _symbols(view: Uses, record: Record) -> Markup:
    data = record.data
    rows: list[tuple[object, ...]] = []
    for name, one in data["inputs"].items():
        limits = with_unit(
            f"{typed(record, ('inputs', name, 'min'))} to {typed(record, ('inputs', name, 'max'))}", one["unit"]
        )
        rows.append(
            (
                strong(name_words(name)),
                view.link(one["quantity"]),
                with_unit(typed(record, ("inputs", name, "default")), one["unit"]),
                limits,
            )
        )
    rows += [
        (
            strong(name_words(name)),
            view.link(constant["quantity"]),
            sourced(view, record, ("constants", name)),
            small("constant"),
        )
        for name, constant in mapped(data.get("constants")).items()
    ]
    for name, one in data["result"].items():
        unit = f" in {with_unit('', one['unit']).strip()}" if one["unit"] != "1" else ""
        rows.append(
            (strong(name_words(name)), view.link(one["quantity"]), "", small(f"result, {one['digits']} digits", unit))
        )
    return table(("Name", "Quantity", "Value at first", "Limits"), rows, css="bl-symbols")


def _check(view: Uses, record: Record, i: int) -> Markup:
    check = record.data["checks"][i]
    given = lines(
        inline(
            name_words(n), " ", amount(view, record, ("checks", i, "given", n), _quantity(view, record, "inputs", n))
        )
        for n in check["given"]
    )
    gives = lines(
        inline(
            name_words(n),
            " ",
            strong(amount(view, record, ("checks", i, "gives", n), _quantity(view, record, "result", n))),
            small(" within ", typed(record, ("checks", i, "gives", n, "within", "value")), " ", one["within"]["unit"]),
        )
        for n, one in check["gives"].items()
    )
    worked = "Worked by hand: " if "working" in check else ""
    held = inline("Against: ", basis(view, check["basis"])) if "basis" in check else EMPTY
    origin = joined([inline(worked, view.prose(check.get("working"))), held], " ")
    return box("bl-check", facts([("Given", given), ("Gives", gives), ("From", origin)]))


def _quantity(view: Uses, record: Record, field: str, name: str) -> Quantity | None:
    return view.desk.quantities.get(str(mapped(record.data[field].get(name)).get("quantity")))


def index(view: Uses) -> str:
    """All calculators, by what their first result is."""
    groups: dict[str, list[Record]] = {group: [] for group in GROUPS}
    for record in view.live("calculators"):
        calc = view.calculators.get(record.id)
        groups[group_of(next(iter(calc.results.values())).quantity.dimension) if calc else OTHERS].append(record)
    listing = grouped(view, ((group.split(",")[0].split()[0].lower(), group, those) for group, those in groups.items()))
    return index_page("calculators", "What should this reading have been, for this car, here and today?", listing)


def group_of(dimension: tuple) -> str:
    """The heading that a result stands under, by its powers of m, kg, s, K, A."""
    if dimension[4]:
        return "Electricity"
    return next((group for group, those in GROUPS.items() if tuple(dimension) in those), OTHERS)


OTHERS = "Others"
GROUPS: dict[str, tuple] = {
    "Pressure": ((-1, 1, -2, 0, 0),),
    "Flow, volume and mass": ((3, 0, -1, 0, 0), (0, 1, -1, 0, 0), (3, 0, 0, 0, 0), (0, 1, 0, 0, 0), (-3, 1, 0, 0, 0)),
    "Electricity": (),
    "Temperature": ((0, 0, 0, 1, 0),),
    "Times and speeds": ((0, 0, 1, 0, 0), (0, 0, -1, 0, 0), (1, 0, -1, 0, 0)),
    "Ratios, shares and counts": ((0, 0, 0, 0, 0),),
    OTHERS: (),
}
