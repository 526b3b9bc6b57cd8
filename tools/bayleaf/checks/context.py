"""What rules know of a book: a collection of facts, each worked out once, when a rule first asks for it."""

from __future__ import annotations

from functools import cached_property

from bayleaf.checks.facts.amounts import Amounts
from bayleaf.checks.facts.answers import all_answers
from bayleaf.checks.facts.bands import Bands
from bayleaf.checks.facts.calculators import Calculators
from bayleaf.checks.facts.claims import Claims
from bayleaf.checks.facts.instruments import Instruments
from bayleaf.checks.facts.procedures import Procedures
from bayleaf.checks.facts.references import References
from bayleaf.checks.prose.texts import Texts
from bayleaf.diagnosis.car.layout import Layout, layout_of
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.records import Book


class Context:
    """A book and the facts about it. Facts know one another by what they are given here, and never this collection."""

    def __init__(self, book: Book) -> None:
        self.book = book

    @cached_property
    def desk(self) -> Desk:
        """The book's quantities and calculators, ready for use."""
        return Desk(self.book)

    @cached_property
    def layout(self) -> Layout:
        """Which components are on which paths of which systems."""
        return layout_of(self.book)

    @cached_property
    def texts(self) -> Texts:
        """The prose of records."""
        return Texts(self.book)

    @cached_property
    def references(self) -> References:
        """Which record names which."""
        return References(self.book, self.texts)

    @cached_property
    def amounts(self) -> Amounts:
        """The numbers with a unit in each record, and what a reading measures."""
        return Amounts(self.book, self.desk)

    @cached_property
    def bands(self) -> Bands:
        """The bands of readings, in systems and in cars."""
        return Bands(self.book, self.amounts)

    @cached_property
    def instruments(self) -> Instruments:
        """Instruments as steps name them."""
        return Instruments(self.book, self.amounts, self.layout)

    @cached_property
    def calculators(self) -> Calculators:
        """Calculators, compiled and proved."""
        return Calculators(self.desk)

    @cached_property
    def answers(self) -> dict[str, tuple[str, ...]]:
        """Every sound reading to the answers that it may have."""
        return all_answers(self.book)

    @cached_property
    def procedures(self) -> Procedures:
        """Procedures, walked step by step."""
        return Procedures(self.book, self.layout)

    @cached_property
    def claims(self) -> Claims:
        """What faults claim, system by system."""
        return Claims(self.book, self.layout)
