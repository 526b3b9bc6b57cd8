"""The bar of a build: on a terminal every stage in its order, elsewhere not a byte. No outside source but ECMA-48 (from memory)."""

from __future__ import annotations

import io

import pytest

from bayleaf.site.progress import CLEAR, SILENT, STAGES, WIDTH, Progress


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_terminal_shows_each_stage_and_a_bar_that_grows_and_is_gone_at_the_end():
    terminal = Terminal()
    progress = Progress(terminal)
    with progress.shown():
        for name in STAGES:
            progress.stage(name)
    drawn = terminal.getvalue().split(CLEAR)
    assert drawn[0] == drawn[-1] == ""
    bars = [line[1 : WIDTH + 1].count("#") for line in drawn[1:-1]]
    assert bars == sorted(bars) and bars[0] == 0 and 0 < bars[-1] <= WIDTH
    assert [line[WIDTH + 3 :] for line in drawn[1:-1]] == [
        f"{i}/{len(STAGES)} {name}" for i, name in enumerate(STAGES, 1)
    ]


def test_the_bar_is_gone_after_an_error_too():
    terminal = Terminal()
    with pytest.raises(ZeroDivisionError), Progress(terminal).shown():
        raise ZeroDivisionError
    assert terminal.getvalue().endswith(CLEAR)


@pytest.mark.parametrize("make", [Progress, lambda stream: SILENT])
def test_a_file_or_a_pipe_gets_nothing(make):
    stream = io.StringIO()
    progress = make(stream)
    with progress.shown():
        for name in STAGES:
            progress.stage(name)
    assert progress.stream.getvalue() == stream.getvalue() == ""
