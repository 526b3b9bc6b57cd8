"""SAFE-34: a step orders what this book refuses."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.steps import WalkStep
from bayleaf.vocabulary import Acts

_NOT = re.compile(r"\b(do not|don't|never|not|no|without|instead of|refuse|rather than)\b", re.IGNORECASE)
# Each practice: the words that order it, and what to do instead. Common practice, no source.
REFUSED = (
    (
        r"\bsiphon\w*\b.*\bmouth\b|\bsuck\w*\b.*\b(fuel|gasoline|petrol|diesel|hose)\b",
        "fuel drawn by mouth",
        "Use a bonded pump or cart.",
    ),
    (
        r"\b(feel|run|pass|hold)\w*\b.*\b(hand|finger|fingers|palm)s?\b.*\b(leak|joint|line|hose|pipe|spray)s?\b|\bfeel\b.*\bfor\b.*\bleak",
        "a leak felt for by hand",
        "Look with a lamp from the side.",
    ),
    (r"\b(mercury)\b", "an instrument with mercury", "Use a dial or electronic gauge."),
    (
        r"\boxygen\b(?!\s+(sensor|content|share|signal|reading|heater))(?=.*\b(pressur\w*|blow\w*|purge\w*|fill\w*|bottle|cylinder)\b)|\b(pressur\w*|blow\w*|fill\w*)\b.*\bwith oxygen\b",
        "oxygen as a gas for pressure",
        "Use inert gas.",
    ),
    (
        r"\b(spray|squirt|spritz)\w*\b.*\b(brake cleaner|carburett?or cleaner|starting fluid|ether|gasoline|petrol|propane|butane|flammable)\b|\b(propane|butane|acetylene)\b.*\b(leak|intake|hose)\b",
        "a flammable spray or gas in a leak search",
        "Use smoke, soapy water on a cold engine, or the ear with a hose.",
    ),
    (
        r"\b(pinch|clamp|squeeze|crimp)\w*\b.*\b(plastic|nylon|polyamide)\b",
        "a plastic line that is pinched",
        "Fit shut-off adapters.",
    ),
    (
        r"\bprob\w*\b.*\b(airbag|air bag|restraint|pretensioner|srs)\b|\b(airbag|restraint|pretensioner)\b.*\bprob\w*\b",
        "a restraint circuit that is probed",
        "Leave restraint circuits to the maker's procedure.",
    ),
    (
        r"\b(pour|tip|empty|drain)\w*\b.*\b(into|down) (a|the) (drain|sewer|gully|ground|soil)\b",
        "fuel put into a drain",
        "Use the marked waste fuel drum.",
    ),
    (
        r"\b(drive|drive\w*)\b.*\bgauge\b.*\b(windscreen|windshield|wiper|cabin)\b|\b(tape|hang|stick)\w*\b.*\bgauge\b.*\b(windscreen|windshield|cabin)\b",
        "a gauge with fuel in it on the windscreen or in the cabin",
        "Use an electric sender under the bonnet.",
    ),
    (
        r"\b(smoke|light|strike)\w*\b.*\b(cigarette|match|lighter|torch|flame)\b",
        "an open flame",
        "Keep flames away from fuel.",
    ),
    (
        r"\b(short|bridge|hold)\w*\b.*\b(spark plug lead|plug wire|coil lead)\b.*\b(hand|ground|earth)\b",
        "a spark drawn by hand",
        "Use a spark tester.",
    ),
)
_PRACTICES = [(re.compile(words, re.IGNORECASE | re.DOTALL), name, instead) for words, name, instead in REFUSED]
# A first look: twelve patterns at every step of the book cost more than all else that this rule does.
_ANY = re.compile("|".join(f"(?:{words})" for words, _name, _instead in REFUSED), re.IGNORECASE | re.DOTALL)
_GAS = re.compile(r"\boxygen\b(?! sensor)|\bmercury\b|\bacetylene\b", re.IGNORECASE)
CRASH = re.compile(r"\breset\w*\b|\bpress\w*\b.*\bbutton\b|\bclos\w*\b", re.IGNORECASE)

CRASH_SWITCH = re.compile(r"\b(crash|inertia|impact) switch\b", re.IGNORECASE)
LOOKS = re.compile(r"\bleak|\bwet\b|\bdrip|\bsmell", re.IGNORECASE)


def find(record: Record, context: Context) -> Iterator[Finding]:
    for i, step in enumerate(record.data["steps"]):
        text, path = step.get("do", ""), ("steps", i, "do")
        for pattern, name, instead in _PRACTICES if _ANY.search(text) else ():
            if pattern.search(text) and not _NOT.search(text):
                yield RULE.at(record, f"step {i + 1} orders what this book refuses: {name}", instead, path)
        crash = "crash" in str(step.get("at", "")) or CRASH_SWITCH.search(text)
        if crash and CRASH.search(text) and not _looked(context, record, i) and not _NOT.search(text):
            message = f"step {i + 1} resets the crash switch before anybody has looked for a leak"
            yield RULE.at(record, message, "Look for leaks in a step before it.", path)
    for c in filter(_GAS.search, record.data["needs"]["consumables"]):
        place = ("needs", "consumables", record.data["needs"]["consumables"].index(c))
        yield RULE.at(
            record,
            f"the consumable {c!r} is refused in this book",
            "Use inert gas and instruments without mercury.",
            place,
        )


def _looked(context: Context, record: Record, last: int) -> bool:
    """Whether a step up to this one, or one that it follows, looks for a leak."""
    return any(_looks(step) for step in context.procedures.walk(record).steps if int(step.place[1]) <= last)


def _looks(step: WalkStep) -> bool:
    return Acts.LEAK_CHECK in step.own or LOOKS.search(step.data.get("do", "")) is not None


RULE = Rule(
    code="SAFE-34",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Practice that this book refuses",
    what=(
        "Some practices are never ordered: fuel by mouth, leaks felt for by hand, mercury, oxygen for pressure, flammable spray at an engine, "
        "pinched plastic lines, probed restraint circuits, fuel into a drain, a gauge in the cabin, and a crash switch reset before the leak is looked for."
    ),
    why="Each of them has killed or maimed somebody who had seen it done before.",
    mend="Write the safe way; a sentence that forbids the practice is fine.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "do: Look at the joint with a lamp.",
        "do: Feel along the joint with a finger for a leak.",
    ),
    find=find,
)
