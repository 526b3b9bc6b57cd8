"""A judgement as plain data, for other programs."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judgement import Judgement, Suspect
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.records import Book


def to_json(judgement: Judgement, book: Book) -> dict:
    """The judgement as plain data: ids, numbers in SI, shares from 0 to 1, and the words of every verdict."""
    return {
        "title": judgement.title,
        "invented": judgement.invented,
        "car": {"title": judgement.car.title, "vehicle": judgement.car.vehicle, "systems": list(judgement.car.systems)},
        "felt": list(judgement.felt),
        "codes": list(judgement.codes),
        "history": list(judgement.history),
        "comes_and_goes": judgement.comes_and_goes,
        "readings": [_taken(taken) for taken in judgement.taken],
        "cannot": [{"reading": reading, "because": why} for reading, why in judgement.cannot],
        "left": list(judgement.left_ids),
        "faults": [_suspect(item, book) for item in judgement.left],
        "besides": [_suspect(item, book) for item in judgement.besides],
        "dangers": list(judgement.dangers),
        "outside": judgement.outside,
        "healthy": judgement.healthy,
        "contradicted": [
            {"fault": item.fault, "by": {stage: list(by) for stage, by in item.by.items()}, "factor": item.factor}
            for item in judgement.contradicted
        ],
        "repaired": list(judgement.repaired),
        "doubts": [
            {"of": d.of, "repair": d.repair, "brings": list(d.brings), "minutes": d.minutes} for d in judgement.doubts
        ],
        "pairs": [{"faults": list(pair.faults), "weight": pair.weight} for pair in judgement.pairs],
        "disagreements": [
            {"reading": d.reading, "sum_of": list(d.others), "apart": d.apart, "because": d.because}
            for d in judgement.disagreements
        ],
        "contradictions": [list(readings) for readings in judgement.contradictions],
        "next": [
            {
                "procedure": p.action.procedure,
                "minutes": p.action.minutes,
                "setup": p.action.setup,
                "bits": p.bits,
                "readings": list(p.action.readings),
                "signal": p.action.signal,
            }
            for p in judgement.next
        ],
        "unable": list(judgement.unable),
        "repairs": [
            {"repair": r.repair, "share": r.share, "faults": list(r.faults), "enough": r.enough}
            for r in judgement.repairs
        ],
        "alike": [list(group) for group in judgement.alike],
    }


def _suspect(item: Suspect, book: Book) -> dict:
    record = book.get(item.fault)
    return {
        "fault": item.fault,
        "title": record.title if record else item.fault,
        "share": item.share,
        "stages": list(item.stages),
        "mended_by": list(item.mends),
        "words": list(item.words),
        "elsewhere": item.elsewhere,
        "silent": list(item.silent),
    }


def _taken(taken: Taken) -> dict:
    verdict, band = taken.verdict, taken.verdict.band
    return {
        "reading": taken.reading,
        "which": taken.which,
        "said": taken.said,
        "computed": taken.computed,
        "verdict": verdict.kind,
        "answers": None if verdict.answers is None else sorted(verdict.answers),
        "value": taken.known.value if taken.known else None,
        "allowance": verdict.allowance,
        "conformance": verdict.conformance,
        "band": band
        and {"low": band.low, "high": band.high, "source": band.source, "text": band.text, "system": band.system},
        "counts": taken.counts,
        "clears": taken.clears,
        "aside": taken.aside,
        "words": verdict.words,
        "what_to_do": verdict.what_to_do,
        "better": list(taken.better),
    }
