"""Write the golden complaint of every rule, or of those named: `python -m tests.checks.write_golden [CODE …]`.

Read the difference before it is committed: a golden text is what a contributor will see.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from bayleaf.checks import all_rules
from tests.checks.small import complaint, lay_out

if __name__ == "__main__":
    wanted = set(sys.argv[1:])
    for rule in all_rules():
        if not wanted or rule.code in wanted:
            with tempfile.TemporaryDirectory() as folder:
                said = complaint(lay_out(Path(folder), rule.example), rule.code)
            print(f"{rule.code}\n{said}" if said else f"{rule.code} is silent about its own bad example")
            if said:
                Path(__file__).with_name("golden").joinpath(f"{rule.code}.txt").write_text(said, encoding="utf-8")
