"""The live form of a calculator: plain fields that the site's script brings to life; hidden where there is no script."""

from __future__ import annotations

import json
from math import inf

from bayleaf.formulas import Calculator, Input
from bayleaf.pages.building.blocks import blocks, box, facts, para
from bayleaf.pages.building.inline import EMPTY, small
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.parts.worked import name_words
from bayleaf.quantities import NUMBER, with_unit
from bayleaf.records import Record


def form(record: Record, calc: Calculator) -> Markup:
    """The form, its data as JSON, and for those without scripts the result at the values that stand in it."""
    fields = "".join(_field(name, one) for name, one in calc.inputs.items())
    content = (
        f'<form class="bl-form" data-calculator="{record.id}" hidden>{fields}'
        f'<div class="bl-outcome" role="status" aria-live="polite"></div><button type="reset">Back to the first values</button></form>'
        f'<script type="application/json" class="bl-data">{_json(_data(calc))}</script>'
    )
    return blocks(Markup(f'<div class="bl-calculator">{content}</div>'), box("bl-at-defaults", _at_defaults(calc)))


def _at_defaults(calc: Calculator) -> Markup:
    """The worked-out result at the defaults, which the page shows with or without scripts."""
    out = calc.evaluate()
    given = ", ".join(
        f"{name_words(name)} {with_unit(f'{one.typed[0]:g}', one.symbol)}" for name, one in calc.inputs.items()
    )
    rows = [
        (name_words(name), ": ".join(filter(None, (result.shown(out[name]), result.said(out[name])))))
        for name, result in calc.results.items()
    ]
    return blocks(para(small("At ", given, ":")) if given else EMPTY, facts(rows))


def _field(name: str, one: Input) -> str:
    options = "".join(
        f'<option value="{text(symbol)}"{" selected" if symbol == one.symbol else ""}>{text(with_unit("", symbol).strip() or "no unit")}</option>'
        for symbol in one.quantity.symbols()
    )
    label = text(name_words(name))
    only = len(one.quantity.symbols()) == 1
    unit = f'<span class="bl-unit">{text(with_unit("", one.symbol).strip())}</span>' if only else ""
    id = f"in-{name.replace('_', '-')}"
    return (
        f'<div class="bl-field"><label for="{id}">{label}</label>'
        f'<span><input id="{id}" name="{name}" type="text" inputmode="decimal" autocomplete="off" '
        f'value="{text(f"{one.typed[0]:g}")}" aria-describedby="{id}-said">'
        f'<select aria-label="{text("unit of ")}{label}"{" hidden" if only else ""}>{options}</select>{unit}</span><small id="{id}-said" class="bl-said"></small></div>'
    )


def _data(calc: Calculator) -> dict:
    """What the script needs: limits and references in SI, the place of each result among the lines, the units as shown."""
    names = list(calc.lines)
    quantities = [*(one.quantity for one in calc.inputs.values()), *(one.quantity for one in calc.results.values())]
    symbols = [symbol for quantity in quantities for symbol in quantity.symbols()]
    return {
        "inputs": [
            {
                "name": n,
                "words": name_words(n),
                "unit": i.symbol,
                "reference": i.quantity.reference,
                "low": i.low,
                "high": i.high,
                "typed": [f"{number:g}" for number in i.typed],
                "whole": i.whole,
            }
            for n, i in calc.inputs.items()
        ],
        "results": [
            {
                "line": names.index(n),
                "words": name_words(n),
                "unit": r.symbol,
                "other": r.other(),
                "digits": r.digits,
                "reference": r.quantity.reference,
                "plausible": r.quantity.plausible,
                "says": [[None if limit == inf else limit, words] for limit, words in r.says],
            }
            for n, r in calc.results.items()
        ],
        "requires": [
            {"place": len(names) + place, "because": one.because, "names": [name_words(n) for n in one.names]}
            for place, one in enumerate(calc.requirements)
        ],
        "exclusive": [[list(calc.inputs).index(n) for n in group] for group in calc.exclusive],
        "number": NUMBER,
        "spellings": {n: i.quantity.units for n, i in calc.inputs.items()},
        "shown": {s: with_unit("", s) for s in dict.fromkeys(symbols)},
    }


def _json(data: object) -> str:
    """JSON that is safe inside a script element."""
    coded = json.dumps(data, ensure_ascii=True, separators=(",", ":"), allow_nan=False)
    return coded.replace("<", "\\u003c").replace("&", "\\u0026")
