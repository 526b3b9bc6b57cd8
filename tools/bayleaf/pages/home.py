"""The home page: the three questions of a technician, and the codes."""

from __future__ import annotations

from bayleaf.pages import across
from bayleaf.pages.symptoms import causes
from bayleaf.pages.systems import FAMILIES
from bayleaf.pages.text import Markup
from bayleaf.pages.uses import Uses
from bayleaf.pages.view import KIND_TITLES
from bayleaf.pages.write import EMPTY, blocks, box, heading, page, para, section, strong, tiles, to

MOST = 12   # tiles under one question: as many as a tablet shows at once
QUESTIONS = {"does": "What does the car do?", "see": "What is in front of me?", "measure": "What do I measure?", "code": "Is there a code?"}
ABOUT = "Specifications, test procedures and cautions for the service bay. Local codes and licensed practice come first; the maker's figure for the car decides."


def home(view: Uses, counts: dict[str, int]) -> str:
    """The page that a technician starts from."""
    return page(
        "index.md", "Bayleaf", heading(1, "top", "Bayleaf"), para(ABOUT, css="bl-lead"),
        tiles((f"index.md#{anchor}", question, EMPTY) for anchor, question in QUESTIONS.items()),
        box("bl-questions", *(section(anchor, question, show(view)) for (anchor, question), show in zip(QUESTIONS.items(), (_symptoms, _systems, _measure, _codes)))),
        section("more", "Everything else", _rest(counts)),
        hide=("navigation", "toc"),
    )  # fmt: skip


def _all(kind: str, many: int) -> Markup:
    return para(to(f"{kind}/index.md", f"All {KIND_TITLES[kind].lower()} ({many})"), css="bl-all")


def _symptoms(view: Uses) -> Markup:
    ranked = sorted(view.live("symptoms"), key=lambda r: (-len(causes(view, r.id)), r.title))
    return blocks(tiles((view.address(r.id), r.title, "") for r in sorted(ranked[:MOST], key=lambda r: r.title)), _all("symptoms", len(ranked)))


def _systems(view: Uses) -> Markup:
    systems = sorted(view.live("systems"), key=lambda r: (list(FAMILIES).index(r.data["family"]), r.title))
    return blocks(tiles((view.address(r.id), r.title, FAMILIES[r.data["family"]]) for r in systems[:MOST]), _all("systems", len(systems)))


def _measure(view: Uses) -> Markup:
    tasks = [(t, len(view.of_task.get(t.id, []))) for t in view.live("tasks")]
    made = tiles((f"tasks/index.md#{t.id}", t.title, f"{n} procedure{'s' if n > 1 else ''}") for t, n in tasks if n)
    return blocks(made, para(to("procedures/index.md", "All procedures"), " · ", to("readings/index.md", "All readings"), css="bl-all"))


def _codes(view: Uses) -> Markup:
    codes = sorted(view.live("codes"), key=lambda r: r.data["code"])
    return blocks(tiles((view.address(r.id), r.data["code"], r.title) for r in codes[:MOST]), _all("codes", len(codes)))


def _rest(counts: dict[str, int]) -> Markup:
    kinds = ("faults", "components", "equipment", "calculators", "cautions", "terms")
    made = [(f"{k}/index.md", KIND_TITLES[k], str(counts.get(k, 0))) for k in kinds]
    return tiles([*made, ("more/index.md", "More", "tasks, sources, fuels, units, the demonstration")])


def more(view: Uses, counts: dict[str, int], rules: int, fields: int) -> str:
    """What is not in the navigation."""
    reference = ("tasks", "sources", "fuels", "quantities", "conditions", "states", "acts", "hazards")
    book = [(f"{k}/index.md", KIND_TITLES[k], str(counts.get(k, 0))) for k in reference]
    demo = [(f"{k}/index.md", KIND_TITLES[k], f"{counts.get(k, 0)}, invented") for k in ("vehicles", "jobs")]
    write = [("rules/index.md", "Rules", str(rules)), ("fields/index.md", "Field reference", f"{fields} kinds")]
    crumb = Markup(f'<nav class="bl-crumbs" aria-label="Way back" markdown="span">{to("index.md", "Home")}</nav>')
    return page(
        "more/index.md", "More", crumb, heading(1, "top", "More"),
        section("overviews", "Over the whole book", tiles((path, across.TITLES[path], across.REMARKS[path]) for path in across.TITLES)),
        section("reference", "Reference", tiles(book)),
        section("demo", "The demonstration", para(strong("INVENTED: no such cars and no such workshop exist.")), tiles(demo)),
        section("writing", "For those who write records", tiles(write)),
    )  # fmt: skip
