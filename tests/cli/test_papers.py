"""What README.md and DEVELOPERS.md say is so: files that they name are there, commands that they show run."""

from __future__ import annotations

import importlib.util
import re
import shlex
from pathlib import Path

import pytest

from bayleaf.checks import all_rules
from bayleaf.cli import COMMANDS, main

ROOT = Path(__file__).resolve().parents[2]
PAPERS = {name: (ROOT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md")}
CODE = {
    name: re.findall(r"`([^`\n]+)`", text) + re.findall(r"^(?:bash|python) .*", text, re.MULTILINE)
    for name, text in PAPERS.items()
}
SHOWN = sorted({code.partition(" > ")[0] for found in CODE.values() for code in found if code.startswith("bayleaf ")})
AT_ONCE = ("calc", "explain", "new")  # the others need a file of the reader's own, write a folder, or have no end


@pytest.mark.parametrize("name", PAPERS)
def test_a_link_leads_to_a_file(name):
    for target in re.findall(r"\]\(([^)#]+)\)", PAPERS[name]):
        assert (ROOT / target).is_file(), f"{name} leads to {target}"


@pytest.mark.parametrize("name", PAPERS)
def test_a_path_or_module_that_is_named_is_there(name):
    for code in CODE[name]:
        words = code.split()
        if words[0] == "bash":
            assert (ROOT / words[1]).is_file(), code
        elif words[:2] == ["python", "-m"]:
            assert importlib.util.find_spec(words[2]), code
        elif re.fullmatch(r"(tools|tests|kb|schemas|\.ci)/[\w./-]+\.\w+", code) and "new" not in code:
            assert (ROOT / code).exists(), code


def test_every_command_shown_is_one_of_ours_and_every_rule_exists():
    rules = {rule.code for rule in all_rules()}
    for line in SHOWN:
        words = shlex.split(line)
        assert words[1] in COMMANDS, line
        assert words[1] != "explain" or words[2] in rules, line


@pytest.mark.parametrize("line", [line for line in SHOWN if line.split()[1] in AT_ONCE])
def test_a_command_that_is_shown_runs(line, capsys, monkeypatch):
    monkeypatch.chdir(ROOT)
    assert main(shlex.split(line)[1:]) == 0, capsys.readouterr().err
