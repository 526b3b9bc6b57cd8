"""What a teacher or a technician holds who prints a page: nothing that can only be touched, nothing lost, nothing torn apart."""

from __future__ import annotations

import pytest

PRINTED = (
    "index.html",
    "symptoms/cranks-no-start.html",
    "systems/port-injection-return.html",
    "procedures/measure-delivered-volume.html",
    "faults/regulator-stuck-high.html",
    "components/pump-fuse.html",
    "calculators/regulator-rail-pressure.html",
    "vehicles/quillbrook-van-12.html",
    "jobs/van-12-weak-pump-or-strainer.html",
    "readings/delivered-volume.html",
    "terms/index.html",
    "tasks/index.html",
    "more/class.html",
)
TOUCHED = ".bl-jump, .bl-crumbs, .bl-all, .bl-start, .md-header, .md-top, .bl-form"  # what only a screen can do
SEEN = "all => all.filter(e => e.checkVisibility() && e.getBoundingClientRect().height > 0).map(e => e.textContent.trim().slice(0, 40))"
LOST = """all => all.filter(e => e.textContent.trim() && !(e.checkVisibility() && e.getBoundingClientRect().height > 0))
    .map(e => e.textContent.trim().slice(0, 40))"""


@pytest.fixture
def paper(visit, real_site):
    """A page of the site as it is printed, with scripts or without them."""

    def open_page(address: str, scripts: bool = True):
        page = visit(real_site / address, java_script_enabled=scripts).page
        page.emulate_media(media="print")
        return page

    return open_page


@pytest.mark.parametrize("address", PRINTED)
def test_what_can_only_be_touched_is_not_printed(paper, address):
    page = paper(address)
    assert page.locator(TOUCHED).evaluate_all(SEEN) == []
    arrows = page.locator("details > summary").evaluate_all(
        "all => all.map(fold => getComputedStyle(fold, '::after').display)"
    )
    assert set(arrows) <= {"none"}


@pytest.mark.parametrize("address", PRINTED)
def test_paper_opens_every_fold(paper, address):
    # Nothing opens the folds here but the style sheet, so this holds where scripts are off too. What speaks of a record
    # elsewhere (bl-related) is for the screen and is not printed at all.
    inside = "details.bl-folded > :not(summary), details.bl-rest:not(.bl-related *) > span"
    assert paper(address).locator(inside).evaluate_all(LOST) == []


def test_the_pages_that_were_looked_at_have_folds_of_both_kinds(paper):
    assert paper("systems/port-injection-return.html").locator("details.bl-folded:not([open])").count() > 10
    page = paper("readings/delivered-volume.html")
    assert page.locator("details.bl-rest:not([open])").count()
    assert page.locator("details.bl-rest > summary").evaluate_all(SEEN) == []  # "13 more" is said to a finger
    # What a normal reading does not rule out is no evidence: its count is printed, its names are for the screen.
    counts = page.locator("details.bl-more:not(.bl-rest)")
    said = counts.locator("summary").evaluate_all(SEEN)
    assert said and all(words.startswith("does not rule out") for words in said) and len(said) == counts.count()
    assert counts.locator(":scope > span").evaluate_all(SEEN) == []


def test_nothing_is_torn_from_what_it_belongs_to_at_the_end_of_a_sheet(paper):
    # Title and line of a tile fell on two sheets, and a fold that would not be broken left half a sheet empty.
    page = paper("components/pump-fuse.html")
    assert styles(page, "ul.bl-tiles li", "breakInside") == {"avoid"}
    assert styles(page, "details.bl-folded", "breakInside") == {"auto"}
    assert styles(page, "details.bl-folded > summary", "breakAfter") == {"avoid"}
    page = paper("procedures/measure-delivered-volume.html")
    assert styles(page, ".md-content :is(h1, h2, h3)", "breakAfter") == {"avoid"}
    assert styles(page, "p:has(+ .bl-proof)", "breakAfter") == {"avoid"}
    assert styles(page, "ol.bl-steps .bl-alert", "breakAfter") == {"avoid"}


def styles(page, css: str, name: str) -> set[str]:
    """The values that a property has over all elements of a selector, of which there must be some."""
    found = page.locator(css).evaluate_all("(all, name) => all.map(e => getComputedStyle(e)[name])", name)
    assert found, css
    return set(found)


@pytest.mark.parametrize("address", PRINTED)
def test_no_table_is_wider_than_the_sheet(visit, real_site, address):
    # A4 less the margins of the sheet, 210 - 2 x 13 mm, is 695 px at 96 to the inch (CSS Values and Units, recalled).
    page = visit(real_site / address, viewport={"width": 695, "height": 1000}).page
    page.emulate_media(media="print")
    wide = page.locator(".md-content table").evaluate_all(
        "all => all.filter(t => t.getBoundingClientRect().right > 696).map(t => t.textContent.slice(0, 40))"
    )
    assert wide == []
