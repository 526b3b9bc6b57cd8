"""Random slips in the small book's data that keep each record's shape mostly sound: what rules must survive."""

from __future__ import annotations

import copy

import yaml
from hypothesis import strategies as st

from tests.checks.small import SMALL

FILES = {
    path.relative_to(SMALL).as_posix(): yaml.load(path.read_text(encoding="utf-8"), yaml.CSafeLoader)
    for path in sorted(SMALL.glob("*/*.yaml"))
}
IDS = sorted(
    {
        name
        for file, data in FILES.items()
        for name in (data if file.startswith("vocabulary") else [file.split("/")[1][:-5]])
    }
)
NUMBERS = [0, -1, 1, -0.0, 0.1, 1e300, -1e300, 1e-300, 273.15, 100000000000000, 5000]
WORDS = [
    "none",
    "all",
    "like",
    "x",
    "psi",
    "delta_degC",
    "°C",
    "normal",
    "fuel",
    "[[",
    "[[a]]",
    "[[a|]]",
    "1",
    "rail",
    "-",
    "a b",
    "é" * 9,
]


def places(data: object, path: tuple = ()) -> list[tuple]:
    """Every path in a record's data."""
    pairs = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    return [path, *(p for key, value in pairs for p in places(value, (*path, key)))]


@st.composite
def slips(draw: st.DrawFn) -> dict[str, object]:
    """The files of the small book with one to four slips: {file: data}, only those that changed; None: deleted."""
    changed: dict[str, object] = {}
    for _ in range(draw(st.integers(1, 4))):
        file = draw(st.sampled_from(sorted(FILES)))
        if draw(st.integers(0, 30)) == 0:
            changed[file] = None
            continue
        data = copy.deepcopy(changed.get(file) or FILES[file])
        inside = places(data)[1:]
        leaves = [p for p in inside if not isinstance(_at(data, p), dict | list)]
        path = draw(st.sampled_from(inside if draw(st.integers(0, 4)) == 0 else leaves))
        above = _at(data, path[:-1])
        old, key = above[path[-1]], path[-1]
        match draw(st.sampled_from(["delete", "value", "value", "value", "name", "copy", "none"])):
            case "delete":
                del above[key]
            case "none":
                above[key] = "none"
            case "name" if isinstance(above, dict):
                above[draw(st.sampled_from([*IDS, *WORDS]))] = above.pop(key)
            case "copy" if isinstance(above, list):
                above.append(copy.deepcopy(old))
            case _:
                above[key] = draw(_instead(old))
        changed[file] = data
    return changed


def _at(data: object, path: tuple) -> object:
    for step in path:
        data = data[step]
    return data


def _instead(old: object) -> st.SearchStrategy:
    if isinstance(old, bool):
        return st.booleans()
    if isinstance(old, int | float):
        return st.sampled_from(NUMBERS)
    if isinstance(old, str):
        return st.sampled_from([*IDS, *WORDS])
    other = FILES[sorted(FILES)[len(str(old)) % len(FILES)]]
    return st.sampled_from(["none", [], {}, [old], other, None, 7])


def write(root, changed: dict[str, object]) -> None:
    """Write the slips into a laid-out small book."""
    for file, data in changed.items():
        path = root / "kb" / file
        if data is None:
            path.unlink()
        else:
            path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), encoding="utf-8")


def restore(root, changed: dict[str, object]) -> None:
    """Put the good files back."""
    for file in changed:
        (root / "kb" / file).write_bytes((SMALL / file).read_bytes())
