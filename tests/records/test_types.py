"""The types of records are those that the schemas make."""

from __future__ import annotations

from typing import get_type_hints

from bayleaf.records import KIND, types
from bayleaf.records.generate import TARGET
from bayleaf.records.generate import types as made
from tests.data import SCHEMAS


def test_the_types_are_made_from_the_schemas_as_they_stand():
    assert TARGET.read_text(encoding="utf-8") == made(SCHEMAS), "run: python -m bayleaf.records.generate"


def test_every_kind_has_a_type_and_every_type_can_be_read():
    for kind in KIND.values():
        assert get_type_hints(getattr(types, kind.singular.capitalize()))["title"] is str


def test_the_word_none_is_no_part_of_a_type_that_is_a_list_or_a_map():
    hints = get_type_hints(types.Procedure)
    assert hints["leaves"] == list[str] and hints["results"] == dict[str, dict[str, str]]
    assert get_type_hints(types.Reading)["each"] != list[str]
