"""The verdict on one reading: what it proves with the error of its instrument, and what to do when it proves nothing.

The decision rule is a guard band on both sides of each limit (JCGM 106 and ILAC-G8, recalled): a value is in band when
it stays there with the instrument's whole allowance against it, outside when it stays outside in the same way, and
otherwise too close to call. Every number is in SI.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.instrument import SLACK, Instrument

NONE, LOW, NORMAL, HIGH, UNSTEADY = "none", "low", "normal", "high", "unsteady"
MEASURED = (NONE, LOW, NORMAL, HIGH, UNSTEADY)  # the answers of a measured or computed reading
TYPED_LOW = frozenset({NONE, LOW})  # a typed 0 reads low, so a value that is low may also be what a fault calls *none*

IN_BAND, INSIDE_SPREAD, TOO_CLOSE = "in band", "inside the usual spread", "too close to call"
NOT_VALID, NOT_PLAUSIBLE, NO_BAND = "not valid", "not plausible", "no band"
ANSWERED = "answered"  # a question, answered from its own list
KINDS = (NONE, LOW, IN_BAND, HIGH, UNSTEADY, INSIDE_SPREAD, TOO_CLOSE, NOT_VALID, NOT_PLAUSIBLE, NO_BAND, ANSWERED)


class Verdict(NamedTuple):
    """What a reading says. `answers` holds every answer it may be, None when it gives no information.

    `conformance` is the probability that the true value is in band, for a value that is too close to call.
    """

    kind: str
    answers: frozenset[str] | None
    band: Band | None = None
    allowance: float = 0.0
    words: str = ""
    what_to_do: str = ""
    conformance: float | None = None


def judge_answer(answer: str, question: bool, not_met: tuple[str, ...] = ()) -> Verdict:
    """The verdict on something said: the answer to a question, or *none* or *unsteady* of a measured reading."""
    if not_met:
        return _not_valid(not_met)
    return Verdict(ANSWERED if question else answer, frozenset({answer}))


def judge_value(
    value: float,
    band: Band | None,
    instrument: Instrument | None = None,
    *,
    allowance: float | None = None,
    plausible: tuple[float, float] | None = None,
    not_met: tuple[str, ...] = (),
    width: Callable[[float], str] = "{:.3g}".format,
) -> Verdict:
    """The verdict on a number.

    `allowance` replaces the instrument's own (for a difference or a computed reading). `plausible` are the limits of
    the quantity. `not_met` names in words what the reading needs and did not have. `width` shows an allowance in words.
    """
    if plausible and not plausible[0] <= value <= plausible[1]:
        again = "Look at the unit, the scale and the connection, and read again."
        return Verdict(NOT_PLAUSIBLE, None, words="No car can show this.", what_to_do=again)
    if not_met:
        return _not_valid(not_met)
    if instrument and not instrument.reaches(value):
        again = "Read again with an instrument whose scale reaches it."
        return Verdict(NOT_VALID, None, words=f"It lies off the scale: {instrument.title}.", what_to_do=again)
    if band is None:
        look_up = "Look up the maker's figure and type it into the job."
        return Verdict(NO_BAND, None, words="This book has no band for it here.", what_to_do=look_up)
    w = allowance if allowance is not None else instrument.allowance(value) if instrument else None
    doubt = (
        "the instrument states no error, so none is allowed for"
        if w is None
        else f"with {width(w + band.slack)} allowed for error"
    )
    w = (w or 0.0) + band.slack
    kind, answers = _against(value, band, w)
    chance = conformance(value, band, w) if kind == TOO_CLOSE else None
    return Verdict(kind, answers, band, w, f"Judged against {band.words}, {doubt}.", _what_to_do(kind), chance)


def conformance(value: float, band: Band, w: float) -> float:
    """The probability that the true value lies in the band, where it may lie anywhere within w of the reading.

    The conformance probability of JCGM 106:2012 clause 7 (recalled), with the rectangular density that limits of error
    call for (JCGM 100:2008, 4.3.7, recalled).
    """
    low = value - w if band.low is None else max(value - w, band.low)
    high = value + w if band.high is None else min(value + w, band.high)
    return min(1.0, max(0.0, high - low) / (2 * w)) if w else 1.0


def _not_valid(not_met: tuple[str, ...]) -> Verdict:
    needs = ", ".join(not_met)
    return Verdict(
        NOT_VALID, None, words=f"It counts only with: {needs}.", what_to_do=f"See to that and read again: {needs}."
    )


def _against(value: float, band: Band, w: float) -> tuple[str, frozenset[str]]:
    """Kind and possible answers of a value with an allowance of w against a band."""
    near = SLACK * max(abs(value), abs(band.low or 0.0), abs(band.high or 0.0), w)
    if band.low is not None and value < band.low - w - near:
        return LOW, TYPED_LOW
    if band.high is not None and value > band.high + w + near:
        return HIGH, frozenset({HIGH})
    perhaps_low = band.low is not None and value < band.low + w - near
    perhaps_high = band.high is not None and value > band.high - w + near
    answers = {NORMAL}
    if perhaps_low or band.low is None:  # a side without a limit says nothing about that side
        answers |= TYPED_LOW
    if perhaps_high or band.high is None:
        answers.add(HIGH)
    if band.spread:  # wider than any one car's band: inside it this car may be low, normal or high, but not *none*
        answers |= {LOW, HIGH}
    kind = TOO_CLOSE if perhaps_low or perhaps_high else INSIDE_SPREAD if band.spread else IN_BAND
    return kind, frozenset(answers)


def _what_to_do(kind: str) -> str:
    if kind == TOO_CLOSE:
        return "Zero and bleed the instrument and read again, take a better one, or go on: the next test may decide."
    if kind == INSIDE_SPREAD:
        return "Look up the maker's figure for this car: only that can say in band, low or high."
    return ""


def provable(band: Band, instrument: Instrument) -> tuple[tuple[float, float], ...]:
    """The windows of readings, in SI, that this instrument could prove in band; empty when there is none.

    A side without a limit ends where the scale ends, or at infinity. Windows in neighbouring zones are joined.
    """
    inf = float("inf")
    low = -inf if band.low is None else band.low
    high = inf if band.high is None else band.high
    pieces = instrument.zones or ((-inf, inf, 0.0),)
    windows: list[tuple[float, float]] = []
    for start, end, a in sorted(pieces):
        share, fixed = 0.0, a + (instrument.readability or 0.0) / 2 + band.slack
        if not instrument.zones:
            share = instrument.share or 0.0
            fixed = band.slack + (instrument.allowance(instrument.zero) or 0.0)
        first = max(
            start, _meets(low + fixed, instrument.zero, -share), instrument.low if instrument.low is not None else -inf
        )
        last = min(
            end, _meets(high - fixed, instrument.zero, share), instrument.high if instrument.high is not None else inf
        )
        if first > last + SLACK * abs(first if abs(first) < inf else 1.0):
            continue
        if windows and first <= windows[-1][1]:
            windows[-1] = (windows[-1][0], max(last, windows[-1][1]))
        else:
            windows.append((first, last))
    return tuple(windows)


def _meets(limit: float, zero: float, share: float) -> float:
    """The value x where x + share × |x − zero| equals `limit`."""
    if not share or abs(limit) == float("inf"):
        return limit
    return zero + (limit - zero) / (1 + share if limit >= zero else 1 - share)
