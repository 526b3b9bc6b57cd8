"""The picture in the README: taken of the site as it is built, with a caution above the step that it guards.

The test writes to its own folder. To renew the picture of the README, name it:

    PICTURE=.github/procedure.png python -m pytest tests/browser/test_picture.py
"""

from __future__ import annotations

import os
import shutil
import struct
from pathlib import Path

from tests.browser.conftest import ROOT

PAGE, SIZE, MOST = "procedures/measure-primed-rail-pressure.html", (1280, 900), 200_000
README_PICTURE = ROOT / ".github" / "procedure.png"


def size_of(picture: bytes) -> tuple[int, int]:
    """Width and height in the header of a PNG file: the first chunk, ISO/IEC 15948, 11.2.2 (recalled)."""
    assert picture[:8] == b"\x89PNG\r\n\x1a\n" and picture[12:16] == b"IHDR"
    return struct.unpack(">II", picture[16:24])


def test_a_caution_stands_above_its_step_in_the_picture(visit, real_site, tmp_path):
    address = f"{(real_site / PAGE).as_uri()}#steps"
    page = visit(address, viewport={"width": SIZE[0], "height": SIZE[1]}, color_scheme="light").page
    assert page.locator("#steps").bounding_box()["y"] >= page.locator(".md-header").bounding_box()["height"]
    first = page.locator("ol.bl-steps > li").first
    caution, step = (
        first.locator(":scope > .bl-alert").first.bounding_box(),
        first.locator(":scope > .bl-do").bounding_box(),
    )
    assert caution["y"] >= 0 and caution["y"] + caution["height"] <= step["y"] and step["y"] + step["height"] <= SIZE[1]

    taken = tmp_path / "procedure.png"
    page.screenshot(path=taken)
    assert size_of(taken.read_bytes()) == SIZE and taken.stat().st_size < MOST
    if "PICTURE" in os.environ:
        shutil.copyfile(taken, Path(os.environ["PICTURE"]))


def test_the_readme_shows_such_a_picture():
    assert "](.github/procedure.png)" in (ROOT / "README.md").read_text(encoding="utf-8")
    picture = README_PICTURE.read_bytes()
    assert size_of(picture) == SIZE and len(picture) < MOST
