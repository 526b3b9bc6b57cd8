"""A clean check stays light: what it needs only to explain, it loads only then."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.checks.small import HERE, Example, lay_out

SCRIPT = "import sys; from bayleaf.cli import main; status = main(['check', '--root', sys.argv[1]]); print(status, *sorted(sys.modules))"


def modules_after_check(root) -> tuple[str, set[str]]:
    """(the exit status, every module that a check in a process of its own has loaded)."""
    environment = {"PYTHONPATH": str(HERE.parent / "tools"), "PATH": ""}
    done = subprocess.run(
        [sys.executable, "-c", SCRIPT, str(root)], capture_output=True, text=True, env=environment, check=True
    )
    status, *modules = done.stdout.strip().split("\n")[-1].split()
    return status, {name.split(".")[0] for name in modules} | set(modules)


@pytest.mark.parametrize(
    "heavy",
    [
        "pint",
        "jsonschema",
        "mkdocs",
        "numpy",
        "ruamel",
        "selectolax",
        "bayleaf.site",
        "bayleaf.pages",
        "http.client",
        "asyncio",
    ],
)
def test_a_clean_check_does_not_load(heavy, tmp_path):
    status, modules = modules_after_check(lay_out(tmp_path))
    assert status == "0" and heavy not in modules


def test_a_wrong_shape_loads_what_explains_it(tmp_path):
    status, modules = modules_after_check(
        lay_out(tmp_path, Example("components/fuel-filter.yaml", "status: draft", "status: finished"))
    )
    assert status == "1" and "jsonschema" in modules
