"""A handful of findings as the renderers get them, one of them hostile."""

from __future__ import annotations

from bayleaf.finding import Finding

FINDINGS = [
    Finding(
        "UNIT-1",
        "error",
        "unit: 'psig' is not a unit of fuel rail pressure",
        "Write psi.",
        "kb/readings/rail-pressure-primed.yaml",
        7,
        7,
        11,
        "rail-pressure-primed",
        ("unit",),
    ),
    Finding(
        "WORD-5",
        "warning",
        "step 3 / do says properly",
        "Say what is meant.",
        "kb/procedures/fit gauge, 100%.yaml",
        20,
        9,
        14,
        "fit-gauge",
        ("steps", 2, "do"),
    ),
    Finding(
        "UNIT-13",
        "advice",
        "scan-tool ends at or under 5000 psi",
        "",
        "kb/procedures/read-high-side.yaml",
        17,
        59,
        0,
        "read-high-side",
        ("steps", 1, "takes", "instrument"),
    ),
    Finding("FILE-11", "error", "odd \x1b[31m\n::error::file name\u202e", "Rename it.", "kb/\u00fcber:x.yaml"),
]
COUNTS = "63 files, 120 records and entries, 150 rules"
MANY = [
    Finding("WORD-5", "warning", f"field {n} says etc", "", "kb/terms.yaml", n, 1, 2, "x", (n,)) for n in range(1, 15)
]
