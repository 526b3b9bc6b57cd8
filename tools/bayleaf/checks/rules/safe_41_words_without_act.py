"""SAFE-41: the words of a step do something that the step does not name as its act."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.checks.words import either
from bayleaf.finding import Finding
from bayleaf.records import Record

_PARTS = r"(joint|union|fitting|line|pipe|nut|coupling|banjo|cap of the (test )?port|port|tee|adapter|injectors?|regulator|rail)"
# Words at the start of a step, and the acts of which one must be there. The first row that fits counts.
WORDS = tuple((re.compile(pattern, re.I), acts) for pattern, acts in (
    (r"(switch|turn) (the )?(key|ignition) (back )?on\b", ("key-on",)),
    (r"(switch|turn) (the )?(key|ignition) off\b", ("key-off",)),
    (r"(re)?start (the |it|up the )?(engine|car)\b", ("start-engine",)),
    (r"(stop|switch off|turn off) the engine\b|(switch|turn) the engine off\b", ("stop-engine",)),
    (r"crank\b", ("crank", "crank-disabled", "start-engine")),
    (r"let (the )?(engine|exhaust|rail)\b.* cool\b", ("cool-down",)),
    (r"drive\b(?! (in|out|home) (a|the) (pin|screw|bolt|wedge))", ("drive",)),
    (r"(open the bleed valve|bleed)\b(?! valve)", ("bleed",)),
    (r"(close|open|turn) (the|both|each) (shut-off )?valves? in (the|each) ", ("clamp", "unclamp")),
    (r"(clamp|pinch)\b.*\b(hose|line)\b", ("clamp",)),
    (r"(unplug|disconnect) (the |both |each |every )?[\w' -]*\b(connectors?|plugs?|injectors?|coils?|pump|sensors?|module|relay|harness)\b|"
     r"pull (out )?(the |both |each )?[\w' -]*\b(relay|fuse|connector)\b", ("disconnect-electrical",)),
    (r"(push|put|plug) (the |both |each )?[\w' -]*\b(relay|fuse|connector)\b.* (back|in|into|onto)\b|plug (the |both |each )?(injectors?|coils?|pump|sensors?|module)\b.* in\b",
     ("connect-electrical",)),
    (rf"(open|loosen|undo|unscrew|crack|part|slacken)\b(?! (both |the |each )?(\w+ )?(valve|door|bonnet|hood|window|filler)).*\b{_PARTS}\b", ("open-joint",)),
    (r"(take|lift) (the |both |each )?(old |supply |return |fuel )?(tee|adapter|injectors?|regulator|rail|line|pipe|volume hose)\b.* (out|off)\b", ("open-joint",)),
    (r"(screw|join|seat) (the |both |each |supply |return )*(new |old |supply |return |fuel )*(gauge|sender|cap|adapter|line|pipe|filter|regulator|rail|tee|injectors?)\b", ("close-joint",)),
    (r"pull (the |both |each )?[\w' -]*\b(hose|duct|pipe)\b.* off\b|take (the |both )?(inlet |intake |air )?(duct|air cleaner|hose)\b.* off\b", ("disconnect", "open-joint")),
    (r"(look|wipe)\b[\w' -]*\bjoints?\b", ("leak-check",)),
    (r"(press the switch of the jumper|run the (fuel )?pump|command the (fuel )?pump( on)?|switch the (fuel )?pump on)\b", ("energise-pump",)),
    (r"(stop the (fuel )?pump|switch the (fuel )?pump off)\b", ("stop-pump",)),
    (r"pressuri[sz]e\b|(put|apply)\b.* (air|smoke|gas|pressure) (in|into|on|to)\b|(blow|pump|let|lead) (air|smoke|gas|nitrogen) into\b", ("pressurise",)),
    (r"(hand the car over|give the car back|return the car)\b", ("hand-over",)),
))  # fmt: skip
_CLAUSE = re.compile(r"(when|if|with|while|after|before|once)\b[^,.]*, *", re.I)


def _check(record: Record, context: Context) -> Iterator[Finding]:
    machine = context.machine
    for i, step in enumerate(record.data["steps"]):
        text = _CLAUSE.sub("", step.get("do", ""), count=1) if _CLAUSE.match(step.get("do", "")) else step.get("do", "")
        hit = next(((m, acts) for pattern, acts in WORDS if (m := pattern.match(text))), None)
        wanted = [a for a in hit[1] if a in context.book.of("acts")] if hit else []
        if wanted and not machine.acts_of(step.get("act")) & set(wanted):
            has = f"its act is {step['act']}" if "act" in step else "it has no act"
            words = f"the words of step {i + 1} are {hit[0].group().strip()!r}, and {has}"
            yield RULE.at(record, words, f"Write act: {either(wanted)}.", ("steps", i, "act" if "act" in step else "do"))


RULE = Rule(
    code="SAFE-41",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Words without their act",
    what=(
        "A step whose words switch the key, start, stop or crank the engine, let it cool, drive, bleed, open or close a joint, make or "
        "break a connection, run the pump, pressurise or look at a joint has that act."
    ),
    why="The checker follows acts, not words. An act that stands only in the words brings no hazard and ends no relief.",
    mend="Name the act, and the component that it is done to.",
    excusable=True,
    example=Example("procedures/measure-idle-pressure.yaml", "{do: Stop the engine., act: stop-engine}", "{do: Stop the engine.}"),
    check=_check,
)
