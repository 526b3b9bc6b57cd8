"""What the page of every record has: the way back, one title, the summary, its standing, and links to all that speak of it."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.building.amounts import INVENTED
from bayleaf.pages.building.blocks import blocks, box, heading, nav, para, section, table
from bayleaf.pages.building.contents import contents
from bayleaf.pages.building.inline import EMPTY, few, inline, joined, link, opening, strong
from bayleaf.pages.building.page import page
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import KIND_TITLES, address_of, kind_order, name_of
from bayleaf.records import KIND, Record
from bayleaf.records.kinds import MENU

# Indexes that are not in the navigation: their way back goes over the page that lists them.
UNDER_MORE = {"rules", "fields", *(kind.name for kind in KIND.values() if kind.place != MENU)}
TITLES = KIND_TITLES | {"rules": "Rules", "fields": "Field reference"}


def crumbs(kind: str = "", *, under_more: bool = False, index: bool = False) -> Markup:
    """Links back to the home page, to the page that lists what is not in the navigation, and to the index of a kind."""
    way = [link("index.md", "Home")]
    if under_more or kind in UNDER_MORE:
        way.append(link("more/index.md", "More"))
    if kind and not index:
        way.append(link(f"{kind}/index.md", TITLES[kind]))
    return nav("bl-crumbs", "Way back", way, " › ")


def record_page(
    view: Uses, record: Record, parts: Iterable[object], top: object = EMPTY, with_contents: bool = True
) -> str:
    """The page of a record: title, summary, standing, links to its sections, then `parts`, then what else speaks of it."""
    data, sections = record.data, [text(part) for part in parts]
    head = blocks(
        crumbs(record.kind),
        heading(1, "top", name_of(record)),
        standing(view, record),
        para(view.prose(data.get("summary")), css="bl-lead"),
        also_called(record),
    )
    related = _related(view, record, blocks(head, top, *sections))
    ways = contents(address_of(record), [*sections, related]) if with_contents else EMPTY
    draft = data.get("status") == "draft"
    return page(
        address_of(record),
        name_of(record),
        head,
        ways,
        top,
        *sections,
        related,
        para("Draft: no maintainer has reviewed this page yet.", css="bl-also") if draft else EMPTY,
    )


def also_called(record: Record) -> Markup:
    """The other names of a record."""
    names = record.data.get("also_called", [])
    return para("Also called: ", joined(names), css="bl-also") if names else EMPTY


def standing(view: Uses, record: Record) -> Markup:
    """Whether a record is invented, and whether it is retired and by what it is replaced."""
    notes = []
    if record.data.get("invented") is True:
        remark = ". No such car, person or shop exists, and no figure on this page is anybody's."
        notes.append(box("bl-invented", para(strong(INVENTED), remark)))
    if record.data.get("status") == "retired":
        other = record.data.get("replaced_by")
        use = inline(": use ", view.link(other)) if other else EMPTY
        notes.append(box("bl-retired", para(strong("Retired."), " Do not use it", use, ".")))
    return blocks(*notes)


def _related(view: Uses, record: Record, body: str) -> Markup:
    """Everything that speaks of this record and is not linked above."""
    others = [r for r in view.referrers.get(record.id, []) if r.id != record.id and opening(address_of(r)) not in body]
    others = sorted(others, key=kind_order)
    kinds = dict.fromkeys(r.kind for r in others)
    rows = [(KIND[kind].title, few([view.link(r.id) for r in others if r.kind == kind])) for kind in kinds]
    return box("bl-related", section("see-also", "Related", table(("Kind", "Pages"), rows)))


def shown(value: object) -> Markup:
    """An answer or another entry of a closed list as people read it: hyphens become spaces."""
    return text(str(value).replace("-", " "))
