"""The words and numbers of an airframe file."""

import re


class Mistake(Exception):
    """The file or a pose says something that the texts do not allow."""


AXES = {"roll": ("right", "left"), "pitch": ("back", "forward"), "yaw": ("right", "left")}
PLUS_WORDS = {"right", "back", "plus"}
SIDE_WORDS = {
    "above": ("flat", +1), "below": ("flat", -1),
    "starboard": ("upright", +1), "right": ("upright", +1),
    "port": ("upright", -1), "left": ("upright", -1),
}
ANGLE_WORDS = {"down": +1.0, "up": -1.0, "left": +1.0, "right": -1.0}
RESERVED = {
    "and", "or", "not", "is", "are", "with", "when", "whenever", "whatever", "in",
    "after", "within", "above", "below", "between", "at", "by", "to", "of", "never",
    "always", "every", "than", "as", "the",
}
NUMBER = re.compile(r"^([+-]?\d+(?:\.\d+)?)\s*(%|°|deg|s|µs|μs|us|mm)?$")


def plain(name):
    """A name as it is compared: capitals and runs of spaces do not matter."""
    return " ".join(str(name).split()).casefold()


def number(text, *units):
    """A plain decimal, bare or with one of the units."""
    found = NUMBER.match(str(text).strip())
    if not found or (found.group(2) and found.group(2) not in units):
        raise Mistake(f"not a number in {' '.join(units) or 'its unit'}: {text!r}")
    return float(found.group(1))


def percent(text):
    return number(text, "%")


def degrees(text):
    return number(text, "°", "deg")


def microseconds(text):
    return number(text, "µs", "μs", "us")


def millimetres(text):
    return number(text, "mm")


def switch_word(text):
    """yes or no."""
    word = plain(text)
    if word in ("yes", "true"):
        return True
    if word in ("no", "false"):
        return False
    raise Mistake(f"not yes or no: {text!r}")


def directed_degrees(text):
    """'24° up' → −24."""
    text = str(text).strip()
    words = text.rsplit(None, 1)
    if len(words) == 2 and words[1].casefold() in ANGLE_WORDS:
        return ANGLE_WORDS[words[1].casefold()] * degrees(words[0])
    value = degrees(text)
    if value != 0:
        raise Mistake(f"an angle without a direction: {text!r}")
    return 0.0


def listed(value):
    """A list as it is; anything else alone in one."""
    return value if isinstance(value, list) else [value]


def settings(body, key):
    """Settings as they are; a bare value under its key."""
    return body if isinstance(body, dict) else {key: body}


def known_keys(where, mapping, *keys):
    extra = [key for key in mapping if key not in keys]
    if extra:
        raise Mistake(f"{where}: unknown {', '.join(extra)}")


def two_sided(value, read):
    """One number for both sides, or one for each: (plus, minus)."""
    if not isinstance(value, dict):
        both = read(value)
        return both, both
    plus = [read(v) for k, v in value.items() if k in PLUS_WORDS]
    minus = [read(v) for k, v in value.items() if k not in PLUS_WORDS]
    if len(plus) != 1 or len(minus) != 1:
        raise Mistake(f"needs both sides: {value!r}")
    return plus[0], minus[0]


def held_to(value, low, high):
    return low if value < low else high if value > high else value
