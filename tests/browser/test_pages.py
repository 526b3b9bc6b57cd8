"""The pages as a technician has them: forms that answer, tables that fold, sheets that print, and all without scripts too."""

from __future__ import annotations

import pytest

from bayleaf.pages.building.uses import Uses

WIDTHS = (1280, 820, 390)
RAIL = "calculators/regulator-rail-pressure.html"
PRIMED = "procedures/measure-primed-rail-pressure.html"
LOOKED_AT = (
    "index.html",
    RAIL,
    PRIMED,
    "procedures/measure-delivered-volume.html",
    "symptoms/loss-of-power-under-load.html",
    "cautions/index.html",
    "more/class.html",
    "more/instruments.html",
    "faults/fuel-filter-restricted.html",
    "systems/port-injection-return.html",
    "codes/p0171.html",
    "terms/index.html",
)


@pytest.fixture
def site(real_site):
    return real_site


def test_the_form_answers_as_the_page_does_without_scripts(visit, site):
    page = visit(site / RAIL).page
    # 43.5 psi less 18 inHg is 34.7 psi: 18 × 3.386389 / 6.894757 = 8.84, factors of NIST SP 811 table B.8 (recalled).
    assert page.locator("[role=status]").inner_text() == "rail: 34.7 psi (239 kPa)"
    page.get_by_label("manifold vacuum", exact=True).fill("0")
    assert page.locator("[role=status]").inner_text() == "rail: 43.5 psi (300 kPa)"

    plain = visit(site / RAIL, java_script_enabled=False).page
    assert not plain.locator("form.bl-form").is_visible()
    assert "34.7 psi (239 kPa)" in plain.locator(".bl-at-defaults").inner_text()


def test_every_form_comes_to_life_and_agrees_with_the_tables_arithmetic(visit, site, book):
    view = Uses(book)
    tab = visit(site / RAIL)
    for id, calc in view.calculators.items():
        tab.page.goto((site / f"calculators/{id}.html").as_uri())
        out = calc.evaluate()
        expected = []
        for name, result in calc.results.items():
            verdict = result.said(out[name])
            line = f"{name.replace('_', ' ')}: {result.shown(out[name])}"
            expected.append(f"{line}: {verdict}" if verdict else line)
        assert tab.page.locator("[role=status] p").all_inner_texts() == expected, id


PLAIN = "Write a number, such as 18; a point for decimals, a comma only as in 1,000."


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("-18", "A vacuum is a positive number."),
        ("18,5", PLAIN),
        ("", PLAIN),
        ("1e3", "It may be 0 to 25 inHg."),
        ("26", "It may be 0 to 25 inHg."),
        ("<b>", PLAIN),
    ],
)
def test_what_cannot_be_is_said_beside_its_field(visit, site, typed, said):
    page = visit(site / RAIL).page
    field = page.get_by_label("manifold vacuum", exact=True)
    field.fill(typed)
    assert page.locator("#in-manifold-vacuum-said").inner_text() == said
    assert field.get_attribute("aria-invalid") == "true"
    assert page.locator("[role=status]").inner_text() == "Mend the marked value first."


def test_another_unit_keeps_the_meaning_of_what_stands_there(visit, site):
    page = visit(site / RAIL).page
    before = page.locator("[role=status]").inner_text()
    page.get_by_label("unit of set pressure").select_option("kPa")
    assert (
        page.get_by_label("set pressure", exact=True).input_value() == "299.922"
    )  # 43.5 × 6.894757, NIST SP 811 (recalled)
    assert page.locator("[role=status]").inner_text() == before
    page.get_by_role("button", name="Back to the first values").click()
    assert page.get_by_label("set pressure", exact=True).input_value() == "43.5"
    assert page.get_by_label("unit of set pressure").input_value() == "psi"


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("address", LOOKED_AT)
def test_no_page_is_wider_than_its_screen(visit, site, address, width):
    page = visit(site / address, viewport={"width": width, "height": 900}).page
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_a_table_folds_on_a_phone_and_each_cell_keeps_its_head(visit, site):
    page = visit(site / PRIMED, viewport={"width": 390, "height": 900}).page
    cell = page.locator(".bl-bands tbody td").nth(1)
    assert cell.evaluate("cell => getComputedStyle(cell, '::before').content") == '"General band"'
    assert cell.evaluate("cell => getComputedStyle(cell).display") == "block"


def test_what_a_gloved_finger_has_to_hit_is_big_enough(visit, site):
    # 44 CSS pixels is the target size of WCAG 2.1, criterion 2.5.5 (recalled).
    page = visit(site / "index.html", viewport={"width": 820, "height": 1100}).page
    heights = page.locator("ul.bl-tiles a").evaluate_all("all => all.map(a => a.getBoundingClientRect().height)")
    assert len(heights) > 20 and min(heights) >= 44


def test_on_paper_a_procedure_is_a_job_sheet_with_cautions_above_their_steps(visit, site):
    page = visit(site / PRIMED).page
    assert not page.get_by_text("Job sheet").is_visible()
    page.emulate_media(media="print")
    for gone in (".md-header", ".md-sidebar--primary", "nav.bl-crumbs"):
        assert not page.locator(gone).is_visible()
    assert page.get_by_text("Job sheet").is_visible() and page.locator(".bl-steps .bl-blank").first.is_visible()
    tops = page.locator("ol.bl-steps > li").evaluate_all("""items => items.flatMap(item => {
        const step = item.querySelector(":scope > .bl-do").getBoundingClientRect();
        return [...item.querySelectorAll(":scope > .bl-alert")].map(alert => alert.getBoundingClientRect().bottom <= step.top);
    })""")
    assert tops and all(tops)


def test_the_sheet_says_the_signal_words_without_colour(visit, site):
    page = visit(site / PRIMED).page
    page.emulate_media(media="print")
    words = page.locator(".bl-alert .bl-signal").all_inner_texts()
    assert words and set(words) <= {"DANGER", "WARNING", "CAUTION", "NOTICE"}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_words_stand_out_from_what_is_behind_them(visit, site, scheme):
    # WCAG 2.1, criterion 1.4.3: a ratio of 4.5 for text (recalled).
    page = visit(site / PRIMED, color_scheme=scheme).page
    for css in (".bl-alert .bl-signal", ".bl-do", ".bl-details", ".bl-details a", ".bl-alert li", "nav.bl-crumbs a"):
        assert page.locator(css).first.evaluate(CONTRAST) >= 4.5, (scheme, css)


def test_on_a_phone_all_questions_stand_on_the_first_screen(visit, site):
    page = visit(site / "index.html", viewport={"width": 390, "height": 844}).page
    ends = (
        page.locator("ul.bl-tiles")
        .first.locator("a")
        .evaluate_all("all => all.map(a => a.getBoundingClientRect().bottom)")
    )
    assert len(ends) == 4 and max(ends) <= 844


def test_a_long_list_opens_when_it_is_touched_and_by_a_link_to_it(visit, site):
    page = visit(site / "procedures/index.html", viewport={"width": 390, "height": 844}).page
    task = page.locator("details#measure-fuel-pressure")
    link = task.get_by_role("link", name="Measure primed rail pressure")
    assert not link.is_visible()
    task.locator("summary").click()
    assert link.is_visible()
    assert (
        visit(f"{(site / 'procedures/index.html').as_uri()}#measure-fuel-pressure")
        .page.get_by_role("link", name="Measure primed rail pressure")
        .is_visible()
    )


@pytest.mark.parametrize(("width", "seen", "gone"), [(390, ".bl-narrow", ".bl-wide"), (1280, ".bl-wide", ".bl-narrow")])
def test_a_phone_and_a_desk_each_see_one_drawing_of_a_chart(visit, site, width, seen, gone):
    page = visit(site / "calculators/injector-pressure-layouts.html", viewport={"width": width, "height": 900}).page
    assert page.locator(f"svg{seen}").is_visible() and not page.locator(f"svg{gone}").is_visible()
    # 12 CSS pixels are the least that is read at arm's length; a judgement, no source.
    small = page.locator(f"svg{seen} text").evaluate_all("all => all.map(text => text.getBoundingClientRect().height)")
    assert min(small) >= 12


def test_paper_holds_the_result_that_the_form_cannot_give(visit, site):
    page = visit(site / RAIL).page
    assert not page.locator(".bl-at-defaults").is_visible()
    page.emulate_media(media="print")
    assert page.locator(".bl-at-defaults").is_visible() and not page.locator("form.bl-form").is_visible()


# The contrast of an element's text by WCAG 2.1: what is behind it is blended, its own opacity counted.
CONTRAST = """element => {
  const read = css => { const c = document.createElement("canvas").getContext("2d"); c.fillStyle = css; c.fillRect(0, 0, 1, 1);
    return Array.from(c.getImageData(0, 0, 1, 1).data, (v, i) => i < 3 ? v : v / 255); };
  const over = (top, under) => [0, 1, 2].map(i => top[i] * top[3] + under[i] * (1 - top[3]));
  const chain = []; let opacity = 1;
  for (let e = element; e; e = e.parentElement) { chain.unshift(getComputedStyle(e)); opacity *= Number(getComputedStyle(e).opacity); }
  let behind = [255, 255, 255];
  for (const style of chain) behind = over(read(style.backgroundColor), behind);
  const colour = read(getComputedStyle(element).color); colour[3] *= opacity;
  const light = rgb => { const [r, g, b] = rgb.map(v => v / 255).map(v => v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
  const [a, b] = [light(over(colour, behind)), light(behind)].sort((x, y) => y - x);
  return (a + 0.05) / (b + 0.05);
}"""
