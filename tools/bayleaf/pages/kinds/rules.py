"""The pages of the checker's rules. The rules come as plain data: the pages know nothing of the checker."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bayleaf.pages.building.blocks import facts, heading, para, section, table
from bayleaf.pages.building.contents import contents
from bayleaf.pages.building.frame import crumbs
from bayleaf.pages.building.index import index_page
from bayleaf.pages.building.inline import EMPTY, link
from bayleaf.pages.building.page import page
from bayleaf.pages.building.text import Markup, text

FAMILIES = {
    "FILE": "Reading the file",
    "SHAPE": "Shape",
    "UNIT": "Quantities and units",
    "BASIS": "Basis",
    "LINK": "References",
    "SAFE": "Safety",
    "WORD": "Writing",
    "DIAG": "Diagnosis",
    "CALC": "Calculators",
    "JOB": "Jobs",
    "BOOK": "The book as a whole",
}
RuleData = Mapping[str, object]  # code, level, title, what, why, mend, excusable; file, good, bad of its example


def rule_page(rule: RuleData) -> str:
    """What a rule is, why it is there, and a bad and a good example."""
    code = str(rule["code"])
    return page(
        f"rules/{code}.md",
        f"{code} {rule['title']}",
        crumbs("rules"),
        heading(1, "top", code, " ", rule["title"]),
        para(rule["what"], css="bl-lead"),
        facts(
            [
                ("Level", rule["level"]),
                ("May be excepted", "yes, with a reason in the record" if rule.get("excusable") else "no"),
            ]
        ),
        section("why", "Why", para(rule["why"])),
        section("mend", "How to mend it", para(rule["mend"])),
        section("bad", "Bad", para("In ", rule["file"], ":") if rule.get("file") else EMPTY, _listing(rule.get("bad"))),
        section("good", "Good", _listing(rule.get("good"))),
    )


def _listing(value: object) -> Markup:
    """Lines of a record as they are written: each encoded, with its line breaks and indentation kept."""
    if not value:
        return para("The line is left out.") if value == "" else EMPTY
    coded = "<br>".join(text(line.replace(" ", "\xa0")) for line in str(value).rstrip("\n").split("\n"))
    return Markup(f'<p class="bl-listing">{coded}</p>')


def index(rules: Sequence[RuleData]) -> str:
    """All rules by family."""
    parts = []
    for family, name in FAMILIES.items():
        rows = [
            (link(f"rules/{r['code']}.md", str(r["code"])), r["level"], r["title"])
            for r in rules
            if str(r["code"]).rsplit("-", 1)[0] == family
        ]
        parts.append(section(family.lower(), name, table(("Rule", "Level", "What it catches"), rows)))
    return index_page(
        "rules",
        "What the checker catches. A record that breaks an error rule does not get in.",
        *parts,
        top=contents("rules/index.md", parts),
    )


def rule_pages(rules: Sequence[RuleData]) -> dict[str, str]:
    """Path to text of every rule's page and of their index."""
    return {f"rules/{r['code']}.md": rule_page(r) for r in rules} | {"rules/index.md": index(rules)}
