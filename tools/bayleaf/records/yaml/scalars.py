"""How a plain YAML scalar is read: only spellings that YAML 1.1 and 1.2 agree on."""

from __future__ import annotations

import re

_WHOLE = re.compile(r"-?(?:0|[1-9]\d*)\Z")
_DECIMAL = re.compile(r"-?(?:0|[1-9]\d*)\.\d+(?:e[+-]\d{1,3})?\Z")
_WORDS = {"true": True, "false": False, "null": None}

# What YAML 1.1 takes for something other than text (the types of the YAML 1.1 repository: bool, null, int,
# float, timestamp, value, merge), and what the 1.2 core schema does; recalled from both specifications.
_BOOL_11 = {"y", "n", "yes", "no", "on", "off", "true", "false"}
_INT_11 = re.compile(r"[-+]?(?:0b[01_]+|0[0-7_]*|[1-9][0-9_]*|0x[0-9a-fA-F_]+|[1-9][0-9_]*(?::[0-5]?[0-9])+)\Z")
_FLOAT_11 = re.compile(
    r"[-+]?(?:[0-9][0-9_]*\.[0-9_]*(?:[eE][-+][0-9]+)?|\.[0-9][0-9_]*(?:[eE][-+][0-9]+)?"
    r"|[0-9][0-9_]*(?::[0-5]?[0-9])+\.[0-9_]*|\.(?:inf|Inf|INF))\Z"
)
_DATE_11 = re.compile(r"\d{4}-\d\d?-\d\d?(?:[Tt ].*)?\Z")
_NUMBER_12 = re.compile(
    r"(?:[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+|[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?|[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN))\Z"
)
# Text that starts otherwise is text in both versions; so is what is longer than the longest word and starts with a letter.
SIGNED = frozenset("-+.~=<0123456789")
SUSPECT = SIGNED | frozenset("ynotfYNOTF")
LONGEST_WORD = 5  # false
_MOST_DIGITS = 15


class Doubtful(ValueError):
    """A scalar that two YAML versions, or a person and a parser, read differently."""


def read_plain(text: str) -> object:
    """The value of a plain (unquoted) scalar: bool, None, int, float or str.

    Raises Doubtful with both readings in words.
    """
    if not text:
        raise Doubtful("an empty value")
    if text[0] not in (SIGNED if len(text) > LONGEST_WORD else SUSPECT):
        return text
    if text in _WORDS:
        return _WORDS[text]
    if _WHOLE.match(text):
        if len(text.lstrip("-")) > _MOST_DIGITS:
            raise Doubtful(f"{text[:24]} has more than {_MOST_DIGITS} digits, more than a number here can hold")
        return int(text)
    if _DECIMAL.match(text):
        return _finite(text)
    return _text_or_doubt(text)


def _finite(text: str) -> float:
    number = float(text)
    if number in (float("inf"), float("-inf")):
        raise Doubtful(f"{text[:24]} is beyond the largest number")
    digits = text.lstrip("-").split("e")[0].replace(".", "").lstrip("0")
    if digits and not number:
        raise Doubtful(f"{text[:24]} is nearer to zero than a number here can be")
    if len(digits) > _MOST_DIGITS:
        raise Doubtful(f"{text[:24]} has more than {_MOST_DIGITS} digits, more than a number here can hold")
    return number


def _text_or_doubt(text: str) -> str:
    old, new = _read_11(text), _read_12(text)
    if old == new == "text":
        return text
    if old == new:
        raise Doubtful(f"{text[:40]} is {old} in an unusual spelling")
    raise Doubtful(f"{text[:40]} is {old} in YAML 1.1 and {new} in YAML 1.2")


def _read_11(text: str) -> str:
    if text.lower() in _BOOL_11 and text in (text.lower(), text.upper(), text.capitalize()):
        return "true or false"
    if text in ("~", "Null", "NULL"):
        return "nothing"
    if text == "<<" or text == "=":
        return "a special key"
    if _INT_11.match(text) or _FLOAT_11.match(text) or text in (".nan", ".NaN", ".NAN"):
        return "a number"
    return "a date" if _DATE_11.match(text) else "text"


def _read_12(text: str) -> str:
    if text in ("True", "TRUE", "False", "FALSE"):
        return "true or false"
    if text in ("~", "Null", "NULL"):
        return "nothing"
    return "a number" if _NUMBER_12.match(text) else "text"
