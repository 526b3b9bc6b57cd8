"""Long lists are folded, and folding loses nothing. Our own rules of layout; no outside source."""

from __future__ import annotations

from bayleaf.diagnosis.faults.stages import healthy_of
from bayleaf.pages.building.index import MOST_OPEN, MOST_ROWS, grouped
from bayleaf.pages.building.inline import FEW
from bayleaf.pages.kinds.codes import ranges
from bayleaf.pages.kinds.home import MOST
from bayleaf.pages.kinds.symptoms import causes, commonness
from bayleaf.pages.parts.shown_by import SOME, fault_words, showing
from tests.pages.shown import parsed


def tree(markup):
    return parsed(f"---\ntitle: x\n---\n\n{markup}\n")


def test_few_records_stand_open_under_headings_and_many_are_folded(view):
    records = view.live("procedures")
    few = tree(grouped(view, [("a", "A", records[:2]), ("b", "B", records[2:4]), ("c", "C", [])]))
    assert [h.text() for h in few.css("h2")] == ["A", "B"] and not few.css("details")
    many = tree(grouped(view, [("a", "A", records[:2]), ("b", "B", records[2 : MOST_OPEN + 1])]))
    assert len(many.css("details")) == 2 and len(many.css("li")) == MOST_OPEN + 1


def test_an_index_holds_every_record_folded_or_not(view, made):
    for kind in ("procedures", "faults", "components", "readings", "codes", "equipment", "calculators", "systems"):
        links = {a.attributes["href"] for a in parsed(made[f"{kind}/index.md"]).css("ul.bl-tiles a")}
        assert {f"{record.id}.html" for record in view.live(kind)} <= links, kind


def test_the_home_page_shows_no_list_that_is_longer_than_a_tablet(made):
    for list in parsed(made["index.md"]).css("ul.bl-tiles"):
        folded = list.parent.tag == "details"
        assert folded or len(list.css("li")) <= MOST


def test_much_work_is_folded_by_task_and_all_of_it_is_there(view, made):
    # A fuse has 43 procedures and a caution over a hundred: tile under tile they were nine screens of a phone and more.
    many = 0
    for kind in ("components", "cautions", "equipment", "systems"):
        for record in view.all(kind):
            tree = parsed(made[f"{kind}/{record.id}.md"])
            tiles = [a for a in tree.css("ul.bl-tiles a") if a.attributes["href"].startswith("../procedures/")]
            folded = [
                a
                for a in tree.css("details.bl-folded ul.bl-tiles a")
                if a.attributes["href"].startswith("../procedures/")
            ]
            assert len(folded) == (len(tiles) if len(tiles) > MOST_OPEN else 0), record.id
            assert len({a.attributes["href"] for a in tiles}) == len(tiles), record.id
            many += bool(folded)
    assert many > 20


def test_each_task_opens_by_its_anchor_and_says_what_covers_it(view, made):
    folds = {fold.attributes["id"]: fold for fold in parsed(made["tasks/index.md"]).css("details.bl-folded")}
    assert list(folds) == [task.id for task in view.live("tasks")]
    for id, fold in folds.items():
        held = {a.attributes["href"] for a in fold.css("ul.bl-tiles a")}
        assert held == {f"../procedures/{p.id}.html" for p in view.of_task.get(id, [])}
        said = fold.css_first("summary").text()
        assert (f" {len(held)} procedure" in said) if held else ("not covered yet" in said), id


def test_a_component_names_each_path_once_with_all_the_systems_that_have_it(view, made):
    for component in view.live("components"):
        on = sorted((name, system) for system, name in view.layout.paths(component.id) if view.get(system))
        cell = next(
            (
                dd
                for dd in parsed(made[f"components/{component.id}.md"]).css("dl.bl-facts dd")
                if dd.prev.text() == "On the paths"
            ),
            None,
        )
        assert (cell is None) == (not on), component.id
        lines = list(cell.css(".bl-row")) if cell else []
        assert [line.text() for line in lines if not line.css("a")] == [
            f"{name} of" for name in dict.fromkeys(name for name, _system in on)
        ], component.id
        assert [a.attributes["href"] for line in lines for a in line.css("a")] == [
            f"../systems/{system}.html" for _name, system in on
        ], component.id


def test_codes_too_few_for_a_range_stand_with_those_before_them(view):
    groups = ranges(view)
    codes = [record.data["code"] for *_rest, those in groups for record in those]
    assert codes == sorted(record.data["code"] for record in view.live("codes"))
    letters = [those[0].data["code"][:2] for *_rest, those in groups]
    assert all(len(those) >= FEW or letters[i] not in letters[:i] for i, (*_rest, those) in enumerate(groups))


def test_a_symptom_keeps_all_its_causes(view, made):
    for symptom in view.live("symptoms"):
        rows = parsed(made[f"symptoms/{symptom.id}.md"]).css(".bl-causes tbody tr")
        assert len(rows) == len(causes(view, symptom.id)), symptom.id


def test_a_code_that_trims_set_blames_no_part_of_a_carburettor_alone(view, made):
    shown = {a.attributes["href"] for a in parsed(made["codes/p0171.md"]).css("a")}
    carburettor = {
        row.fault
        for id in ("carburettor-mechanical-pump", "carburettor-electric-pump")
        for row in view.matrices[id].rows
    }
    injected = {
        row.fault for id, matrix in view.matrices.items() if "delivered-volume" in matrix.healthy for row in matrix.rows
    }
    assert carburettor - injected and not {f"../faults/{id}.html" for id in carburettor - injected} & shown


def test_what_a_normal_reading_does_not_rule_out_is_counted_and_complete(made):
    cell = parsed(made["procedures/measure-primed-rail-pressure.md"]).css_first(
        ".bl-results details.bl-more:not(.bl-rest)"
    )
    assert cell.css_first("summary").text() == f"does not rule out {len(cell.css('span a'))} faults"


def test_a_long_list_of_faults_shows_the_commonest_and_folds_the_rest(view, made):
    # An answer of the immobiliser's lamp has 100 faults, twelve screens of a phone in a row: our own rule, no outside source.
    folded = 0
    for reading in view.live("readings"):
        showers = showing(view, reading.id, [s for s in view.matrices if reading.id in view.matrices[s].healthy])
        for row in parsed(made[f"readings/{reading.id}.md"]).css("#faults ~ .bl-results tbody tr"):
            answer, cell = row.css("td")
            wanted = [f"../faults/{one.fault.id}.html" for one in showers[answer.text().replace(" ", "-")]]
            links = [a.attributes["href"] for a in cell.css("a") if "/faults/" in a.attributes["href"]]
            shut = [a.attributes["href"] for a in cell.css("details a") if "/faults/" in a.attributes["href"]]
            systems = tuple(s for s in view.matrices if reading.id in view.matrices[s].healthy)
            healthy = answer.text().replace(" ", "-") in healthy_of(view.book, reading.id, systems)
            assert links == wanted and len(links) - len(shut) <= FEW + 2, (reading.id, answer.text())
            assert shut == (links if healthy and shut else links[FEW:] if shut else []), (reading.id, answer.text())
            folded += bool(shut)
    assert folded > 100


def test_a_table_of_many_rows_is_folded_and_one_of_few_is_not(view, made):
    # A row of a table is a block of 150 to 450 px on a phone; the faults of a carburettor were thirteen screens.
    for system in view.live("systems"):
        tree = parsed(made[f"systems/{system.id}.md"])
        for anchor in ("readings", "faults", "complaints"):
            shut = tree.css(f"#all-{anchor} tbody tr")
            rows = shut or tree.css(f"#{anchor} + .bl-table tbody tr")
            assert (len(rows) > MOST_ROWS) == bool(shut), (system.id, anchor)
            said = tree.css_first(f"#all-{anchor} > summary")
            assert said is None or said.text().strip() == f"{len(rows)} {anchor}"


def test_a_fault_in_a_cell_names_a_few_systems_and_counts_many(view):
    # With seven systems behind each name nobody finds the next fault; its own page names them all.
    made = [
        words
        for reading in view.live("readings")
        for some in showing(view, reading.id, view.matrices).values()
        for words in fault_words(view, some, len(view.matrices))
    ]
    named = [words.count("@/systems/") for words in made]
    assert max(named) == SOME and any(
        f" of {len(view.matrices)} systems" in parsed(f"---\ntitle: x\n---\n\n{words}\n").body.text() for words in made
    )


def test_a_verdict_without_a_remark_is_one_line(made):
    for row in parsed(made["jobs/van-12-weak-pump-or-strainer.md"]).css("#readings + .bl-table tbody tr"):
        assert all(line.text().strip() for line in row.css(".bl-row, .bl-small"))


def test_what_stays_normal_with_a_fault_is_folded_where_it_is_long_and_none_is_lost(view, made):
    folds = [
        (id, fold)
        for id in view.book.of("faults")
        for fold in parsed(made[f"faults/{id}.md"]).css("details[id^=still-]")
    ]
    assert len(folds) > 5
    for id, fold in folds:
        assert f" {len(fold.css('a'))} readings" in fold.css_first("summary").text() and len(fold.css("a")) > FEW, id


def test_a_list_of_causes_says_first_how_many_they_are(view, made):
    for symptom in view.live("symptoms"):
        tree, found = parsed(made[f"symptoms/{symptom.id}.md"]), causes(view, symptom.id)
        first = tree.css_first("#causes + p").text()
        assert first.startswith(f"{len(found)} fault" if found else "No fault"), symptom.id
        assert all(f"{len(those)} {how}" in first for how, those in commonness(found).items() if those), symptom.id
