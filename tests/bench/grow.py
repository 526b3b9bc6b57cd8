"""A larger book for benchmarks: the present one copied under new ids, so that every record stays as real as it was."""

from __future__ import annotations

import re
from pathlib import Path

NAMED_BY_RULES = {"scan-tool"}  # what a rule knows by its id is there once too
ALIKE = "{rule: DIAG-18, because: Its copies are as like it as one egg is to another.}"
GROWN = ("effects.yaml", "variables.yaml")  # vocabulary that speaks of every copy
HERE = Path(__file__).resolve().parents[2]


def grow(folder: Path, records: int, source: Path = HERE / "kb") -> int:
    """Write a book of at least `records` records under `folder` and return how many there are.

    Copy 0 is the book as it stands. In every other copy each record has a number behind its id and its title, and
    names the records of the same copy. The vocabulary, what it names, and the calculators are there once: a formula
    serves every system.
    """
    files = {path: path.read_text(encoding="utf-8") for path in sorted(source.glob("*/*.yaml"))}
    words = NAMED_BY_RULES | {
        word
        for path, text in files.items()
        if path.parent.name == "vocabulary" and path.name not in GROWN
        for word in re.findall(r"[a-z0-9-]+", text)
    }
    shared = {path for path in files if path.parent.name in ("readings", "equipment") and path.stem in words}
    own = {
        path: text
        for path, text in files.items()
        if path.parent.name not in ("vocabulary", "calculators") and path not in shared
    }
    ids = sorted((path.stem for path in own), key=len, reverse=True)
    named = re.compile(rf"(?<![\w-])({'|'.join(map(re.escape, ids))})(?![\w-])")
    (folder / "schemas").symlink_to(
        source.parent / "schemas" if (source.parent / "schemas").is_dir() else HERE / "schemas"
    )
    for path, text in files.items():
        if (
            path.parent.name == "systems"
            and records > len(files)
            and not re.search(r"^(shows: none|family: layer)", text, re.MULTILINE)
        ):
            own[path] = _excepted(text)
        _write(folder / "kb" / path.relative_to(source), own.get(path, text))
    first: dict[str, Path] = {}  # the first system of each family has none before it that it could be like
    for path in (path for path in own if path.parent.name == "systems"):
        first.setdefault(re.search(r"^family: .*$", own[path], re.MULTILINE)[0], path)
    written, copy = sum(path.parent.name != "vocabulary" for path in files), 0
    while written < records:
        copy += 1
        for path, text in own.items():
            code = path.parent.name == "codes"
            new = _code(path.stem, copy) if code else f"{path.stem}-c{copy:04}"
            twin = named.sub(lambda m, number=copy: _twin(m[1], number), text)
            twin = re.sub(r"^(title: [^\n]*?)([\"']?)$", rf"\1 {copy:04}\2", twin, count=1, flags=re.MULTILINE)
            twin = re.sub(r"^also_called: .*$", "also_called: none", twin, count=1, flags=re.MULTILINE)
            twin = re.sub(r"^code: .*$", f"code: {new.upper()}", twin, count=1, flags=re.MULTILINE) if code else twin
            if copy == 1 and path in first.values():
                twin = twin.replace(f"  - {ALIKE}\n", "").replace(f"exceptions: [{ALIKE}]\n", "")
            _write(folder / "kb" / path.parent.name / f"{new}.yaml", twin)
            written += 1
    for name in GROWN:
        path = folder / "kb" / "vocabulary" / name
        if path.exists():
            path.write_text(_for_copies(path.read_text(encoding="utf-8"), named, copy), encoding="utf-8")
    return written


def _for_copies(text: str, named: re.Pattern[str], copies: int) -> str:
    """An effect shows the same in every copy, and an influence that is limited to systems holds in theirs."""

    def shown(line: re.Match[str]) -> str:
        twins = [line[0]] + [f"{line[1]}{_twin(line[2], n)}{line[3]}" for n in range(1, copies + 1)]
        return "\n".join(twins) if named.fullmatch(line[2]) else line[0]

    def limited(systems: re.Match[str]) -> str:
        ids = [id.strip() for id in systems[1].split(",")]
        return f"in: [{', '.join([*ids, *(_twin(id, n) for n in range(1, copies + 1) for id in ids)])}]"

    text = re.sub(r"^(    )([a-z0-9-]+)(: [^\n]+)$", shown, text, flags=re.MULTILINE)
    return re.sub(r"\bin: \[([^\]]*)\]", limited, text)


def _excepted(text: str) -> str:
    """A system that may look like its copies."""
    if "\nexceptions:\n" in text:
        return text.replace("\nexceptions:\n", f"\nexceptions:\n  - {ALIKE}\n", 1)
    return f"{text}exceptions: [{ALIKE}]\n"


def _twin(id: str, copy: int) -> str:
    """The id that stands for `id` in a copy."""
    return _code(id, copy) if re.fullmatch(r"[pu][0-9a-f]{4}", id) else f"{id}-c{copy:04}"


def _code(id: str, copy: int) -> str:
    """Another trouble code for each copy; the letter stays."""
    return f"{id[0]}{(int(id[1:], 16) + 0x400 * copy + copy * 7) % 0x10000:04x}"


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
