"""What a plain scalar means by the core schema of YAML 1.2.

Source: YAML 1.2.2, section 10.3.2. Differs in nothing a record needs: a
number too large to be held as written stays text.
"""

import re

_CONSTANTS: dict[str, bool | None] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL"), None),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
}
_INTEGER = re.compile(r"[-+]?[0-9]+")
_OCTAL = re.compile(r"0o[0-7]+")
_HEXADECIMAL = re.compile(r"0x[0-9a-fA-F]+")
_FLOAT = re.compile(r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?")
_INFINITE = re.compile(r"[-+]?\.(?:inf|Inf|INF)")
_NOT_A_NUMBER = (".nan", ".NaN", ".NAN")
_FIRST_OF_A_NUMBER = frozenset("0123456789+-.")
_LONGEST_NUMBER = 40

Scalar = str | int | float | bool | None


def plain_value(text: str) -> Scalar:
    """The value of an unquoted scalar: 014 is fourteen; no, on, 12:30 and dates are text."""
    if text in _CONSTANTS:
        return _CONSTANTS[text]
    if text[0] not in _FIRST_OF_A_NUMBER or len(text) > _LONGEST_NUMBER:
        return text
    if _INTEGER.fullmatch(text):
        return int(text, 10)
    if _OCTAL.fullmatch(text):
        return int(text[2:], 8)
    if _HEXADECIMAL.fullmatch(text):
        return int(text[2:], 16)
    if _FLOAT.fullmatch(text):
        value = float(text)
        return value if abs(value) != float("inf") else text
    if _INFINITE.fullmatch(text):
        return float(text.replace(".", ""))
    return float("nan") if text in _NOT_A_NUMBER else text
