"""The home page: the three questions of a technician, and the codes."""

from __future__ import annotations

from bayleaf.pages.building.blocks import blocks, box, folds, heading, para, section, tiles
from bayleaf.pages.building.frame import crumbs
from bayleaf.pages.building.inline import EMPTY, joined, link, strong
from bayleaf.pages.building.page import NOTICES, page
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import KIND_TITLES
from bayleaf.pages.kinds import notices, overviews
from bayleaf.pages.kinds.codes import ranges
from bayleaf.pages.kinds.symptoms import causes
from bayleaf.pages.kinds.systems import FAMILIES, by_family

MOST = 12  # tiles under one question: as many as a tablet shows at once
QUESTIONS = {
    "does": "What does the car do?",
    "see": "What is in front of me?",
    "measure": "What do I measure?",
    "code": "Is there a code?",
}
ABOUT = "Specifications, test procedures and cautions for the service bay. Local codes and licensed practice come first; the maker's figure for the car decides."


def home(view: Uses, counts: dict[str, int]) -> str:
    """The page that a technician starts from."""
    return page(
        "index.md",
        "Bayleaf",
        heading(1, "top", "Bayleaf"),
        para(ABOUT, css="bl-lead"),
        box(
            "bl-start bl-screen",
            tiles((f"index.md#{anchor}", question, EMPTY) for anchor, question in QUESTIONS.items()),
        ),
        box(
            "bl-questions",
            *(
                section(anchor, question, show(view))
                for (anchor, question), show in zip(
                    QUESTIONS.items(), (_symptoms, _systems, _measure, _codes), strict=True
                )
            ),
        ),
        section("more", "Everything else", _rest(counts)),
        hide=("navigation", "toc"),
    )


def _all(kind: str, many: int) -> Markup:
    return para(link(f"{kind}/index.md", f"All {KIND_TITLES[kind].lower()} ({many})"), css="bl-all")


def _symptoms(view: Uses) -> Markup:
    ranked = sorted(view.live("symptoms"), key=lambda r: (-len(causes(view, r.id)), r.title))
    return blocks(
        tiles((view.address(r.id), r.title, "") for r in sorted(ranked[:MOST], key=lambda r: r.title)),
        _all("symptoms", len(ranked)),
    )


def _systems(view: Uses) -> Markup:
    """Every system while they are few; the families when there are more than fit."""
    systems = view.live("systems")
    if len(systems) <= MOST:
        targets = tiles((view.address(r.id), r.title, FAMILIES[r.data["family"]]) for r in systems)
    else:
        targets = folds(
            (family, title, str(len(those)), tiles((view.address(r.id), r.title, "") for r in those))
            for family, title, those in by_family(view)
        )
    return blocks(targets, _all("systems", len(systems)))


def _measure(view: Uses) -> Markup:
    """The tasks with most procedures."""
    tasks = [(t, len(those)) for t in view.live("tasks") if (those := view.of_task.get(t.id))]
    first = sorted(tasks, key=lambda one: (-one[1], one[0].title))[:MOST]
    targets = tiles(
        (f"tasks/index.md#{t.id}", t.title, f"{n} procedure{'s' if n > 1 else ''}")
        for t, n in sorted(first, key=lambda one: one[0].title)
    )
    rest = (
        link("tasks/index.md", f"All tasks ({len(tasks)})"),
        link("procedures/index.md", f"All procedures ({len(view.live('procedures'))})"),
        link("readings/index.md", "All readings"),
    )
    return blocks(targets, para(joined(rest, " · "), css="bl-all"))


def _codes(view: Uses) -> Markup:
    """Every code while they are few; else ranges of them."""
    groups = ranges(view)
    codes = [code for *_rest, those in groups for code in those]
    if len(codes) <= MOST:
        return blocks(tiles((view.address(r.id), r.data["code"], r.title) for r in codes), _all("codes", len(codes)))
    targets = folds(
        (anchor, title, str(len(those)), tiles((view.address(r.id), r.data["code"], r.title) for r in those))
        for anchor, title, those in groups
    )
    return blocks(targets, _all("codes", len(codes)))


def _rest(counts: dict[str, int]) -> Markup:
    kinds = ("faults", "components", "equipment", "calculators", "cautions", "terms")
    targets = [(f"{k}/index.md", KIND_TITLES[k], str(counts.get(k, 0))) for k in kinds]
    return tiles([*targets, ("more/index.md", "More", "tasks, sources, fuels, units, the demonstration, licenses")])


def more(counts: dict[str, int], rules: int, fields: int) -> str:
    """What is not in the navigation."""
    reference = (
        "tasks",
        "sources",
        "fuels",
        "quantities",
        "conditions",
        "variables",
        "effects",
        "histories",
        "states",
        "acts",
        "hazards",
    )
    book = [(f"{k}/index.md", KIND_TITLES[k], str(counts.get(k, 0))) for k in reference]
    demo = [(f"{k}/index.md", KIND_TITLES[k], f"{counts.get(k, 0)}, invented") for k in ("vehicles", "jobs")]
    write = [("rules/index.md", "Rules", str(rules)), ("fields/index.md", "Field reference", f"{fields} kinds")]
    crumb = crumbs()
    return page(
        "more/index.md",
        "More",
        crumb,
        heading(1, "top", "More"),
        section(
            "overviews",
            "Over the whole book",
            tiles((path, overviews.TITLES[path], overviews.REMARKS[path]) for path in overviews.TITLES),
        ),
        section("reference", "Reference", tiles(book)),
        section(
            "demo", "The demonstration", para(strong("INVENTED: no such cars and no such shop exist.")), tiles(demo)
        ),
        section("terms-of-use", "Licenses", tiles([(NOTICES, notices.TITLE, notices.REMARK)])),
        section("writing", "For those who write records", tiles(write)),
    )
