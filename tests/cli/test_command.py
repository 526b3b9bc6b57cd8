"""The command itself: what it says to a word that it does not know, in one line with exit status 2."""

from __future__ import annotations

import io
import sys
import tomllib
from pathlib import Path

import pytest

from bayleaf.cli import COMMANDS, in_colour, main


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["chek"], "there is no command 'chek'; did you mean check?"),
        (["Build", "--strict"], "there is no command 'Build'; did you mean build?"),
        (["zzz"], "there is no command 'zzz'; there are check, build, serve"),
        (
            ["--root", ".", "check"],
            "the command comes before its options, as in bayleaf check --root DIR; there is no --root before it",
        ),
        (["explain", "--formt"], "unrecognized arguments: --formt (see bayleaf --help)"),
    ],
)
def test_one_line_says_what_is_not_known_and_what_to_try(capsys, words, said):
    status = main(words)
    out, err = capsys.readouterr()
    assert (status, out) == (2, "")
    assert err.startswith(f"bayleaf: {said}") and err.count("\n") == 1


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_says_what_it_takes(capsys, name):
    with pytest.raises(SystemExit) as end:
        main([name, "--help"])
    assert end.value.code == 0
    assert f"usage: bayleaf {name}" in capsys.readouterr().out


def test_the_version_is_that_of_the_project(capsys):
    with pytest.raises(SystemExit) as end:
        main(["--version"])
    project = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert (end.value.code, capsys.readouterr().out) == (0, f"bayleaf {project['version']}\n")


class Terminal(io.TextIOWrapper):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("stream", "written"),
    [(io.TextIOWrapper, "2–4 λ".encode()), (Terminal, b"2?4 ?")],
    ids=["a pipe gets UTF-8", "a terminal gets what it can show"],
)
def test_a_character_that_the_platform_lacks_ends_no_command(monkeypatch, stream, written):
    out = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", stream(out, encoding="ascii", write_through=True))
    monkeypatch.setattr("bayleaf.cli._run", lambda argv: print("2–4 λ", end="") or 0)
    assert main([]) == 0
    assert out.getvalue() == written


@pytest.mark.parametrize(
    ("name", "value", "wanted"), [("NO_COLOR", "1", False), ("NO_COLOR", "", True), ("TERM", "dumb", False)]
)
def test_a_user_can_refuse_colours(monkeypatch, name, value, wanted):
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys, "stdout", Terminal(io.BytesIO(), encoding="utf-8"))
    assert in_colour() is wanted
