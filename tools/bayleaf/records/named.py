"""What a record names and says: the ids in its fields and in its text, its prose, its bases."""

from __future__ import annotations

import re
from collections import defaultdict
from typing import cast

from bayleaf.records.fields import spots
from bayleaf.records.places import Ids, Path
from bayleaf.records.record import Record
from bayleaf.records.types import Basis

PROSE = re.compile(r"\[\[([^\[\]|]*)(?:\|([^\[\]]*))?\]\]")
IN_TEXT = Ids("", "", ())


class Link:
    """One id in a record: its field path, the id, what may stand there, and how it is written.

    `key`: the id is the field's own name; `prose`: it stands in text, as [[id]].
    """

    __slots__ = ("about", "id", "key", "path", "prose")

    def __init__(self, path: Path, id: str, about: Ids, key: bool = False, prose: bool = False) -> None:
        self.path, self.id, self.about, self.key, self.prose = path, id, about, key, prose

    @property
    def kinds(self) -> tuple[str, ...]:
        """The kinds that the id may be of; none: any."""
        return self.about.kinds


def links_of(record: Record, prose: list[tuple[Path, str]] | None = None) -> list[Link]:
    """Every id that a sound record names in its fields and in its prose."""
    result = [
        Link(path, value, about, name)
        for path, value, about, name in spots(record.data, record.fields.ids)
        if value.__class__ is str and value not in about.words
    ]
    if b"[[" in record.source.raw or not record.source.raw:
        texts = [(path, text) for path, text in (prose_of(record) if prose is None else prose) if "[[" in text]
        result += [Link(path, match[1], IN_TEXT, prose=True) for path, text in texts for match in PROSE.finditer(text)]
    return result


def ids_of(links: list[Link]) -> list[tuple[Ids, list[str]]]:
    """The ids of some links by what may stand there, for first looks."""
    result: dict[Ids, list[str]] = defaultdict(list)
    for link in links:
        result[link.about].append(link.id)
    return list(result.items())


def prose_of(record: Record) -> list[tuple[Path, str]]:
    """(path, text) of every field that is prose; steps come with the rest. Titles and names are none."""
    return [(spot.path, spot.value) for spot in spots(record.data, record.fields.prose) if spot.value.__class__ is str]


def bases_of(record: Record) -> list[tuple[Path, Basis]]:
    """(path, basis) of every basis in a record."""
    return [(spot.path, cast(Basis, spot.value)) for spot in spots(record.data, record.fields.bases)]
