"""What only the printed job sheet has: room for the car, the date and the name, and what to tick off first."""

from __future__ import annotations

from bayleaf.pages.building.blocks import box, para, table
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.records import Record, listed

LINE = Markup('<span class="bl-line"></span>')
FIELDS = (("Car", "Date"), ("Registration or fleet number", "Odometer"), ("Job number", "Done by"))


def sheet_head(view: Uses, record: Record) -> Markup:
    """Blanks for the job, seen on paper only."""
    rows = [(left, LINE, right, LINE) for left, right in FIELDS]
    ticks = [f"☐ {view.title(id)} done" for id in listed(record.data.get("inherits"))]
    return box("bl-print bl-sheet", table(("Job sheet", "", "", ""), rows), para("   ".join(ticks)) if ticks else "")
