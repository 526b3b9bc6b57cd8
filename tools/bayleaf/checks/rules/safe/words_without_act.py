"""SAFE-41: the words of a step do something that the step does not name as its act."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts

_PARTS = r"(joint|union|fitting|line|pipe|nut|coupling|banjo|cap of the (test )?port|port|tee|adapter|injectors?|regulator|rail)"
_PLUG = r"(connectors?|plugs?|injectors?|coils?|pump|sensors?|module|relay|harness)"
_SOME = r"(the |both |each |every )?[\w' -]*\b"
# The verbs with which a step may begin, the words that must follow, and the acts of which one must be there. The first
# row that fits counts.
WORDS = (
    ("switch turn", r" (the )?(key|ignition) (back )?on\b", (Acts.KEY_ON,)),
    ("switch turn", r" (the )?(key|ignition) off\b", (Acts.KEY_OFF,)),
    ("start restart", r" (the |it|up the )?(engine|car)\b", (Acts.START_ENGINE,)),
    ("stop", r" the engine\b", (Acts.STOP_ENGINE,)),
    ("switch turn", r" (off the engine|the engine off)\b", (Acts.STOP_ENGINE,)),
    ("crank", r"\b", ("crank", Acts.CRANK_DISABLED, Acts.START_ENGINE)),
    ("let", r" (the )?(engine|exhaust|rail)\b.* cool\b", (Acts.COOL_DOWN,)),
    ("drive", r"\b(?! (in|out|home) (a|the) (pin|screw|bolt|wedge))", (Acts.DRIVE,)),
    ("open", r" the bleed valve\b", (Acts.BLEED,)),
    ("bleed", r"\b(?! valve)", (Acts.BLEED,)),
    ("close open turn", r" (the|both|each) (shut-off )?valves? in (the|each) ", (Acts.CLAMP, Acts.UNCLAMP)),
    ("clamp pinch", r"\b.*\b(hose|line)\b", (Acts.CLAMP,)),
    (
        "unplug",
        r"\b(?! (the |a |any )?(hose|line|drain|hole|port|nipple|scan tool|tester|recorder|meter|charg))",
        (Acts.DISCONNECT_ELECTRICAL,),
    ),
    ("disconnect", rf" {_SOME}{_PLUG}\b", (Acts.DISCONNECT_ELECTRICAL,)),
    ("pull", rf" (out )?{_SOME}(relay|fuse|connector)\b", (Acts.DISCONNECT_ELECTRICAL,)),
    ("push put plug", rf" {_SOME}(relay|fuse|connector)\b.* (back|in|into|onto)\b", (Acts.CONNECT_ELECTRICAL,)),
    ("plug", rf" {_SOME}(injectors?|coils?|pump|sensors?|module)\b.* in\b", (Acts.CONNECT_ELECTRICAL,)),
    (
        "open loosen undo unscrew crack part slacken",
        rf"\b(?! (both |the |each )?(\w+ )?(valve|door|bonnet|hood|window|filler)).*\b{_PARTS}\b",
        (Acts.OPEN_JOINT,),
    ),
    (
        "take lift",
        r" (the |both |each )?(old |supply |return |fuel )?(tee|adapter|gauge set|injectors?|regulator|rail|line|pipe|volume hose)\b.* (out|off)\b",
        (Acts.OPEN_JOINT,),
    ),
    (
        "screw join seat",
        r" (the |both |each )?((new|old|supply|return|fuel) )*(gauge|sender|cap|adapter|line|pipe|filter|regulator|rail|tee|injectors?)\b",
        (Acts.CLOSE_JOINT,),
    ),
    ("pull", rf" {_SOME}(hose|duct|pipe)\b.* off\b", (Acts.DISCONNECT, Acts.OPEN_JOINT)),
    (
        "take",
        r" (the |both )?(inlet |intake |air )?(duct|air cleaner|hose)\b.* off\b",
        (Acts.DISCONNECT, Acts.OPEN_JOINT),
    ),
    ("look wipe", r"\b[\w' -]*\bjoints?\b", (Acts.LEAK_CHECK,)),
    ("open", r"\b(?! (the |a )?(bleed|bonnet)).*\bhoses?\b", (Acts.OPEN_JOINT, Acts.DISCONNECT, Acts.UNCLAMP)),
    ("hold", r" the throttle wide open\b", (Acts.DRIVE,)),
    ("press", r" the switch of the jumper\b", (Acts.ENERGISE_PUMP,)),
    ("run command switch", r" (the (fuel )?pump on|the (fuel )?pump)\b(?! off)", (Acts.ENERGISE_PUMP,)),
    ("stop", r" the (fuel )?pump\b", (Acts.STOP_PUMP,)),
    ("switch", r" the (fuel )?pump off\b", (Acts.STOP_PUMP,)),
    ("pressurise pressurize", r"\b", (Acts.PRESSURISE,)),
    (
        "put apply blow pump let lead",
        r" ([\w' -]*\b)?(air|smoke|nitrogen|gas|pressure)\b.* (in|into|on|to)\b",
        (Acts.PRESSURISE,),
    ),
    ("pour tip decant", r"\b(?! (the )?water\b)", (Acts.POUR,)),
    (
        "fill refuel",
        r"\b(?! (the )?water\b)(?=.*\b(fuel|gasoline|petrol|diesel|bottle|can|tank|container|portions?|quantity)\b)",
        (Acts.POUR,),
    ),
    ("empty", r"\b(?=.*\b(into|fuel|gasoline|petrol|diesel)\b)", (Acts.POUR,)),
    ("drain draw siphon", r"\b(?=.*\b(fuel|gasoline|petrol|diesel|tank|bowl)\b)", (Acts.BLEED, Acts.POUR)),
    ("let", r"\b.*\bdrain into\b", (Acts.POUR, Acts.BLEED)),
    ("take", r" the bonding lead\b.*\boff\b", (Acts.UNBOND,)),
    ("unbond", r"\b", (Acts.UNBOND,)),
    ("loosen open unscrew take", r" (the )?(old |new )?filler cap\b", (Acts.OPEN_CAP,)),
    ("tighten screw close put", r" (the )?(old |new )?filler cap\b", (Acts.CLOSE_CAP,)),
    (
        "lift tilt unbolt raise take",
        r" (the )?((rear|back|front) )?(seat|floor plate|boot floor|access plate)\b",
        (Acts.LIFT_SEAT,),
    ),
    (
        "put refit bolt",
        r" (the )?((rear|back|front) )?(seat|floor plate|boot floor|access plate)\b.* (back|in|down)\b",
        (Acts.REFIT_SEAT,),
    ),
    ("hand", r" the car over\b", (Acts.HAND_OVER,)),
    ("return", r" the car\b", (Acts.HAND_OVER,)),
)
_BY_VERB: dict[str, list[tuple[re.Pattern[str], tuple[str, ...]]]] = {}
for _verbs, _words, _acts in WORDS:
    _row = (re.compile(_words, re.IGNORECASE), _acts)
    for _verb in _verbs.split():
        _BY_VERB.setdefault(_verb, []).append(_row)
CLOTH = "slowly, under the cloth"  # how a fuel joint is opened, whatever it is called
_FIRST = re.compile(r"[a-z]+", re.IGNORECASE)
_CLAUSE = re.compile(
    r"(?:(?:when|if|with|while|after|before|once)\b[^,.]*, *)?(?:(?:let|have) the (?:second person|helper|driver) )?",
    re.IGNORECASE,
)
_OPENING = ("when", "if", "with", "while", "after", "before", "once", "let", "have")


def find(record: Record, context: Context) -> Iterator[Finding]:
    for i, step in enumerate(record.data["steps"]):
        text = step.get("do", "")
        first = _FIRST.match(text)
        if first and first[0].lower() in _OPENING and (clause := _CLAUSE.match(text)):
            text = text[clause.end() :]
            first = _FIRST.match(text)
        rows, verb_end = (_BY_VERB.get(first[0].lower(), ()), first.end()) if first else ((), 0)
        cloth = CLOTH in text
        if not rows and not cloth:
            continue
        done = context.procedures.machine.acts_of(step.get("act"))
        if not cloth and not any(done.isdisjoint(acts) for _pattern, acts in rows):
            continue  # whichever row fits, its act is there
        hit, acts = next(
            ((text[: m.end()], acts) for pattern, acts in rows if (m := pattern.match(text, verb_end))), ("", ())
        )
        if not acts and cloth:
            hit, acts = CLOTH, (Acts.OPEN_JOINT,)
        wanted = [a for a in acts if a in context.procedures.machine.titles]
        if wanted and done.isdisjoint(wanted):
            has = f"its act is {step['act']}" if "act" in step else "it has no act"
            words = f"the words of step {i + 1} are {hit.strip()!r}, and {has}"
            yield RULE.at(
                record, words, f"Write act: {either(wanted)}.", ("steps", i, "act" if "act" in step else "do")
            )


RULE = Rule(
    code="SAFE-41",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Words without their act",
    what=(
        "A step whose words switch the key, start, stop or crank the engine, let it cool, drive, bleed, pour, open or close a joint, make or "
        "break a connection, run the pump, pressurise or look at a joint has that act."
    ),
    why="The checker follows acts, not words. An act that stands only in the words brings no hazard and ends no relief.",
    mend="Name the act, and the component that it is done to.",
    example=Example(
        "procedures/measure-idle-pressure.yaml", "{do: Stop the engine., act: stop-engine}", "{do: Stop the engine.}"
    ),
    find=find,
)
