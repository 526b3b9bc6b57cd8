"""The command itself: what it says to a word that it does not know, in one line with exit status 2."""

from __future__ import annotations

import pytest
from bayleaf.cli import COMMANDS, main


@pytest.mark.parametrize(
    "words, said",
    [
        (["chek"], "there is no command 'chek'; did you mean check?"),
        (["Build", "--strict"], "there is no command 'Build'; did you mean build?"),
        (["zzz"], "there is no command 'zzz'; there are check, build, serve"),
        (["--root", ".", "check"], "the command comes before its options, as in bayleaf check --root DIR; there is no --root before it"),
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
