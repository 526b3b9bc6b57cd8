"""`bayleaf explain`: a rule in words, with a bad and a good example."""

from __future__ import annotations

import argparse
import textwrap

from bayleaf.checks import all_rules
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Rule
from bayleaf.finding import CouldNotRun

FAMILIES = {
    "FILE": "reading a file",
    "SHAPE": "the shape of a record",
    "UNIT": "quantities, units and bands",
    "BASIS": "where numbers come from",
    "LINK": "what records name",
    "SAFE": "hazards, states and cautions",
    "WORD": "writing",
    "DIAG": "faults and diagnosis",
    "CALC": "calculators",
    "JOB": "jobs",
    "BOOK": "the book as a whole",
}
_WIDTH = 100


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument(
        "rule", nargs="?", metavar="RULE", help="a code such as UNIT-1, or a family such as UNIT; none lists all rules"
    )


def run(args: argparse.Namespace) -> int:
    """Print one rule, one family, or all."""
    rules = {rule.code: rule for rule in all_rules()}
    wanted = (args.rule or "").upper()
    if wanted in rules:
        print(explained(rules[wanted]))
    elif not wanted or wanted in FAMILIES:
        print("\n".join(listing([r for r in rules.values() if not wanted or r.code.startswith(f"{wanted}-")])))
    else:
        raise CouldNotRun(
            f"there is no rule {args.rule}. {mean(wanted, [*rules, *FAMILIES], 'Without a code, explain lists them all.')}"
        )
    return 0


def listing(rules: list[Rule]) -> list[str]:
    """Rules by family, one a line."""
    lines: list[str] = []
    family = ""
    for rule in rules:
        if rule.code.split("-")[0] != family:
            family = rule.code.split("-")[0]
            lines += [*([""] if lines else []), f"{family}: {FAMILIES.get(family, '')}"]
        lines.append(f"  {rule.code:<9} {rule.level:<8} {rule.title}")
    return lines


def explained(rule: Rule) -> str:
    """The whole explanation as text; the same words make its page."""
    parts = [f"{rule.code} ({rule.level}): {rule.title}"]
    for name, text in (("What", rule.what), ("Why", rule.why), ("Mend", rule.mend)):
        parts.append(textwrap.fill(text, _WIDTH, initial_indent=f"{name + ':':<6}", subsequent_indent=" " * 6))
    example = rule.example
    good = _lines(example.good) if example.good else ["      (no such file)"]
    bad = ["      (a symbolic link)"] if example.bad.startswith("link:") else _lines(example.bad)
    parts += ["\n".join([f"Bad:  in kb/{example.file}", *bad]), "\n".join(["Good:", *good])]
    if rule.excusable:
        parts.append(f"A record may except itself: exceptions: [{{rule: {rule.code}, because: …}}]")
    return "\n\n".join(parts)


def _lines(text: str) -> list[str]:
    shown = text.encode("utf-8", "backslashreplace").decode("utf-8").rstrip("\n")
    return [f"      {line}" for line in (shown or "(nothing)").split("\n")]
