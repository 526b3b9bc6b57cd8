"""What a technician with greasy hands has of a long page on a phone: the way to its sections, targets that a finger hits, tables that fit."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.records import RECORD_KINDS

PHONE = {"viewport": {"width": 390, "height": 844}}
SCREEN = PHONE["viewport"]["height"]
FINGER = 44  # CSS pixels, the target size of WCAG 2.1, criterion 2.5.5 (recalled); links inside a sentence are excepted there too
RAIL = "calculators/regulator-rail-pressure.html"
PRIMED = "procedures/measure-primed-rail-pressure.html"
FOLLOWS = "procedures/measure-delivered-volume.html"
LOOKED_AT = (
    "index.html",
    RAIL,
    PRIMED,
    FOLLOWS,
    "symptoms/cranks-no-start.html",
    "systems/port-injection-return.html",
    "faults/regulator-stuck-high.html",
    "components/pump-fuse.html",
    "vehicles/quillbrook-van-12.html",
    "jobs/van-12-weak-pump-or-strainer.html",
    "readings/rail-pressure-primed.html",
    "codes/p0171.html",
    "equipment/multimeter.html",
    "tasks/index.html",
    "terms/index.html",
)
TARGETS = (
    ".bl-jump a",
    ".bl-crumbs a",
    ".bl-all a",
    "ul.bl-tiles a",
    "details > summary",
    ".bl-row > a:only-of-type",
    ".bl-item > a",
    "h3 > a:only-of-type",
    ".bl-form :is(input, select, button)",
    ".md-header__button.md-icon",
)
SMALL = (
    """css => [...document.querySelectorAll(css)].filter(e => e.checkVisibility({visibilityProperty: true}))
    .map(e => [e.getBoundingClientRect().height, e.textContent.trim()]).filter(([height]) => height > 0 && height < """
    f"{FINGER})"
)


@pytest.fixture
def site(real_site):
    return real_site


def by_size(site: Path, kind: str, bar: bool) -> list[Path]:
    """The pages of the records of a kind, with links at the top or without, the largest file first."""
    pages = [
        page
        for page in (site / kind).glob("*.html")
        if page.name != "index.html" and ('class="bl-jump' in page.read_text(encoding="utf-8")) == bar
    ]
    return sorted(pages, key=lambda page: page.stat().st_size, reverse=True)


@pytest.mark.parametrize("kind", RECORD_KINDS)
def test_a_page_of_more_than_four_screens_leads_to_its_sections_and_none_of_three_does(visit, site, kind):
    # Four screens and three: our own judgement of how far a thumb scrolls. The pages are made by a count of signs; here they are measured.
    page = visit(site / "index.html", **PHONE).page

    def screens(file: Path) -> float:
        page.goto(file.as_uri())
        return page.evaluate("document.documentElement.scrollHeight") / SCREEN

    sheets = {file: screens(file) for file in by_size(site, kind, bar=False)[:6]}
    tall = [file.name for file, height in sheets.items() if height > 4]
    behind = {name: page.goto((site / kind / name).as_uri()) and page.evaluate(BEHIND) for name in tall}
    assert not [name for name, count in behind.items() if count], (
        "long, with sections to lead to, and no links at the top"
    )
    short = {file.name: height for file in by_size(site, kind, bar=True)[-4:] if (height := screens(file)) < 3}
    assert not short, "so short that links at its top are in the way"


# Sections that a page without links could have led to: a procedure may only lead behind its steps.
BEHIND = """() => { const steps = document.querySelector("#steps");
    return [...document.querySelectorAll(".md-content h2:not(#see-also, #demonstration)")]
        .filter(h => !steps || steps.compareDocumentPosition(h) & Node.DOCUMENT_POSITION_FOLLOWING).length; }"""


def test_a_touch_at_the_top_of_a_symptom_brings_its_codes_into_sight_under_the_header(visit, site):
    page = visit(site / "symptoms/cranks-no-start.html", **PHONE, has_touch=True).page
    page.locator(".bl-jump").get_by_role("link", name="Codes that often come with it").tap()
    page.wait_for_function("scrollY > 0")
    top = page.locator("#codes").bounding_box()["y"]
    assert page.locator(".md-header").bounding_box()["height"] <= top < SCREEN / 2


@pytest.mark.parametrize("address", LOOKED_AT)
def test_what_a_finger_has_to_hit_is_high_enough_on_a_phone(visit, site, address):
    page = visit(site / address, **PHONE).page
    assert {css: small for css in TARGETS if (small := page.evaluate(SMALL, css))} == {}


def test_a_tablet_that_is_touched_has_the_same_targets_and_a_desk_its_dense_tables(visit, site):
    wide = {"viewport": {"width": 1024, "height": 768}}
    touched = visit(site / "symptoms/cranks-no-start.html", **wide, has_touch=True, is_mobile=True).page
    assert touched.evaluate(SMALL, ".bl-causes .bl-row > a:only-of-type") == []
    desk = visit(site / "symptoms/cranks-no-start.html", **wide).page
    assert desk.evaluate(SMALL, ".bl-causes .bl-row > a:only-of-type")


def test_a_short_answer_stands_beside_its_head_and_one_without_words_is_left_out(visit, site):
    page = visit(site / "faults/regulator-stuck-high.html", **PHONE).page
    cells = page.locator(".bl-stages td.bl-short")
    assert cells.count() > 40
    assert (
        max(cells.evaluate_all("all => all.map(cell => cell.getBoundingClientRect().height)")) < 60
    )  # two lines, and not three
    bare = page.locator(".bl-stages tbody td").evaluate_all(
        "all => all.filter(cell => !cell.textContent.trim()).map(cell => cell.checkVisibility())"
    )
    assert len(bare) > 5 and not any(bare)
    blanks = visit(site / PRIMED, **PHONE).page.locator(".bl-bands td:has(.bl-line)")
    assert blanks.count() and not any(blanks.evaluate_all("all => all.map(cell => cell.checkVisibility())"))


@pytest.mark.parametrize(
    ("address", "css"),
    [(RAIL, ".bl-values"), ("systems/carburettor-mechanical-pump.html", ".bl-shares"), (FOLLOWS, ".bl-proof")],
)
def test_a_table_of_numbers_fits_on_a_phone(visit, site, address, css):
    page = visit(site / address, **PHONE).page
    page.locator("details").evaluate_all("all => all.forEach(fold => { fold.open = true; })")
    wide = page.locator(f".md-content {css}:visible").evaluate_all(
        "all => all.flatMap(box => [box, ...box.querySelectorAll('*')]).filter(e => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).overflowX == 'auto').length"
    )
    assert page.locator(f"{css} table").count() and wide == 0


@pytest.mark.parametrize("width", [390, 768, 1280])
def test_the_number_of_a_step_stands_on_no_word_of_it_however_deep(visit, site, width):
    page = visit(site / FOLLOWS, viewport={"width": width, "height": 844}).page
    for media in ("screen", "print"):
        page.emulate_media(media=media)
        numbers = page.evaluate(NUMBERS)
        assert max(number.count(".") for number, *_rest in numbers) == 2
        assert [(number, need, room) for number, need, room in numbers if need > room] == []


# (number of the step, width of it in its type, room for it to the left of the words; a number that flows with the words has all it needs)
NUMBERS = """() => { const pen = document.createElement("canvas").getContext("2d");
  const place = li => { const own = [...li.parentElement.children].indexOf(li) + 1, above = li.parentElement.closest("li");
    return above ? place(above) + "." + own : String(own); };
  return [...document.querySelectorAll("ol.bl-steps > li > .bl-do")].map(step => {
    const style = getComputedStyle(step, "::before"), number = place(step.parentElement);
    pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    return [number, pen.measureText(number).width, style.position == "static" ? 1e4 : -parseFloat(style.left)];
  }); }"""
