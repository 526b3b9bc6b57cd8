"""The `bayleaf` command: parse, call one function, print, pick the exit status."""

from __future__ import annotations

import argparse
import gc
import importlib
import io
import os
import sys
from pathlib import Path
from typing import Any, NoReturn

from bayleaf import __version__
from bayleaf.finding import CouldNotRun
from bayleaf.nearest import nearest

# name: what it does; each command is the module of that name with `options(parser)` and `run(args) -> int`
COMMANDS = {
    "check": "prove the book",
    "build": "check, write the pages, run the site engine, verify, and swap the site in",
    "serve": "the site on this machine, rebuilt as records change",
    "pages": "only the Markdown tree, for any engine",
    "calc": "one calculation",
    "judge": "verdicts on a job's readings, and the faults that are left",
    "plan": "the one test to do next, its minutes, and what each answer would mean",
    "explain": "a rule: what, why, bad, good",
    "new": "a commented record to fill in",
    "suggest": "blanks for what each fault shows of a reading",
    "format": "one layout for every record",
    "export": "the whole book as JSON and CSV",
}


class _Parser(argparse.ArgumentParser):
    def __init__(self, **given: Any) -> None:  # noqa: ANN401 - argparse makes the parsers of commands with its own options
        super().__init__(
            formatter_class=lambda prog: argparse.HelpFormatter(prog, width=78), **given
        )  # to ask the terminal takes shutil

    def error(self, message: str) -> NoReturn:
        """One line and exit 2; argparse would print the whole usage first."""
        raise CouldNotRun(f"{message} (see {self.prog} --help)")


def main(argv: list[str] | None = None) -> int:
    """Run one command. 0 no errors, 1 errors in what was checked, 2 could not run."""
    _write_utf8()
    try:
        return _run(sys.argv[1:] if argv is None else argv)
    except CouldNotRun as err:
        print(f"bayleaf: {err}", file=sys.stderr)
    except KeyboardInterrupt:
        print("bayleaf: stopped", file=sys.stderr)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # the reader has gone; say nothing at exit
    except OSError as err:
        print(f"bayleaf: {err.filename or ''}: {err.strerror or err}", file=sys.stderr)
    return 2


def _write_utf8() -> None:
    """A file or a pipe gets UTF-8, as records are read; a terminal gets a mark for what it cannot show."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        if sys.stdout.isatty():
            sys.stdout.reconfigure(errors="replace")
        else:
            sys.stdout.reconfigure(encoding="utf-8")


def _run(argv: list[str]) -> int:
    parser = _Parser(
        prog="bayleaf", description="A checked book of specifications, procedures and arithmetic for the service bay."
    )
    parser.add_argument("--version", action="version", version=f"bayleaf {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    _known(argv)
    gc.disable()  # nothing that is loaded now is let go before the end
    for name, about in COMMANDS.items():
        sub = commands.add_parser(name, help=about, description=about)
        if argv[:1] == [name]:  # only the command in use is imported: a check must not wait for the site engine
            importlib.import_module(f"bayleaf.cli.{name}").options(sub)
    gc.enable()
    args = parser.parse_args(argv)
    if args.command is None:
        parser.print_help()
        return 2
    return importlib.import_module(f"bayleaf.cli.{args.command}").run(args)


def _known(argv: list[str]) -> None:
    """Raise CouldNotRun with one line where the first word is no command."""
    word = argv[0] if argv else "--help"
    if word in COMMANDS or word in ("-h", "--help", "--version"):
        return
    if word.startswith("-"):
        raise CouldNotRun(
            f"the command comes before its options, as in bayleaf check --root DIR; there is no {word} before it"
        )
    near = nearest(word, COMMANDS)
    raise CouldNotRun(
        f"there is no command {word!r}; {f'did you mean {near}?' if near else 'there are ' + ', '.join(COMMANDS)}"
    )


def book_options(parser: argparse.ArgumentParser) -> None:
    """The options that every command on a book shares."""
    parser.add_argument(
        "--root", type=Path, help="the folder that holds kb/ and schemas/ (default: the nearest upward)"
    )
    parser.add_argument(
        "--overlay",
        type=Path,
        action="append",
        default=[],
        metavar="DIR",
        help="a shop's own records, laid over the book",
    )


def in_colour() -> bool:
    """Whether standard output is a terminal that shows colours and whose user wants them (no-color.org)."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def root_of(args: argparse.Namespace) -> Path:
    """The root of the book: as given, or the nearest folder upward that holds kb/ and schemas/."""
    if args.root is not None:
        return args.root
    here = Path.cwd()
    for folder in (here, *here.parents):
        if (folder / "kb").is_dir() and (folder / "schemas").is_dir():
            return folder
    raise CouldNotRun("no folder with kb/ and schemas/ here or above; name it with --root")
