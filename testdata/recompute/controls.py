"""What the pilot moves, and the conditions that look at it."""

import re

from words import AXES, RESERVED, Mistake, known_keys, listed, percent, plain, settings, switch_word


class Control:
    """What the pilot moves: its kind, its rest and the words for its places."""

    def __init__(self, name, kind, rest, axis=None, places=None):
        self.name, self.kind, self.rest, self.axis = name, kind, rest, axis
        self.places = places or {}  # switch position → index, detent → percent

    def position(self, given):
        """A number as it is; a switch's position or a detent by its name."""
        if isinstance(given, str):
            return self.places[plain(given)]
        return given


def read_controls(section):
    """Controls by every name they have, trims among them, and each control's trim."""
    controls, trims = {}, {}

    def enter(control, *names):
        for name in names:
            if plain(name) in controls:
                raise Mistake(f"two controls are called {name}")
            controls[plain(name)] = control

    for name, body in section.items():
        if isinstance(body, list):
            body = {"switch": body}
        elif isinstance(body, str):
            body = {"lever": ""} if plain(body) == "lever" else {"axis": body}
        known_keys(name, body, "axis", "lever", "switch", "trim", "aka")
        if "axis" in body:
            axis = plain(body["axis"])
            if axis not in AXES:
                raise Mistake(f"{name}: no such axis: {axis}")
            control = Control(name, "axis", 0.0, axis=axis)
            if "trim" in body:
                trim = settings(body["trim"], "range")
                known_keys(name, trim, "range", "name", "reversed")
                reach = percent(trim["range"])
                if switch_word(trim.get("reversed", "no")):
                    reach = -reach
                trim_control = Control(trim.get("name", axis + " trim"), "trim", 0.0, axis=axis)
                enter(trim_control, trim_control.name)
                trims[control] = (trim_control, reach)
        elif "lever" in body:
            detents = body["lever"] if isinstance(body["lever"], dict) else {}
            places = {plain(word): percent(at) for word, at in detents.items()}
            control = Control(name, "lever", min(places.values(), default=0.0), places=places)
        else:
            places = {plain(word): index for index, word in enumerate(body["switch"])}
            control = Control(name, "switch", 0, places=places)
        enter(control, name, *listed(body.get("aka", [])))
    return controls, trims


TOKEN = re.compile(r"[()]|[^\s()]+")
DETENT_REACH = 1.0  # a lever this near to a detent, in percent, stands at it


class ConditionReader:
    """Turns the words of a condition into a function of the positions."""

    def __init__(self, text, controls, phases):
        self.text, self.controls, self.phases = text, controls, phases
        self.tokens = TOKEN.findall(str(text).casefold())
        self.at = 0

    def wrong(self, what):
        return Mistake(f"condition {self.text!r}: {what}")

    def peek(self):
        return self.tokens[self.at] if self.at < len(self.tokens) else None

    def take(self, *words):
        if self.peek() in words:
            self.at += 1
            return self.tokens[self.at - 1]
        return None

    def words(self):
        """The tokens up to the next word that no name may hold."""
        start = self.at
        while self.peek() is not None and self.peek() not in RESERVED and self.peek() not in "()":
            self.at += 1
        if start == self.at:
            raise self.wrong(f"a name was expected at {self.peek()!r}")
        return " ".join(self.tokens[start:self.at])

    def amount(self):
        text = self.peek()
        self.at += 1
        self.take("%")
        return percent(text)

    def whole(self):
        result = self.either()
        if self.peek() is not None:
            raise self.wrong(f"{self.peek()!r} was not expected")
        return result

    def either(self):
        parts = [self.both()]
        while self.take("or"):
            parts.append(self.both())
        return parts[0] if len(parts) == 1 else lambda p: any(part(p) for part in parts)

    def both(self):
        parts = [self.one()]
        while self.take("and"):
            parts.append(self.one())
        return parts[0] if len(parts) == 1 else lambda p: all(part(p) for part in parts)

    def one(self):
        if self.take("not"):
            inner = self.one()
            return lambda p: not inner(p)
        if self.take("("):
            inner = self.either()
            if not self.take(")"):
                raise self.wrong("a bracket is not closed")
            return inner
        if self.take("in"):
            return self.phase(self.words())
        name = self.words()
        if not self.take("is", "are"):
            return self.phase(name) if name in self.phases else self.without_is(name)
        if name not in self.controls:
            raise self.wrong(f"no control is called {name}")
        opposite = self.take("not")
        holds = self.predicate(self.controls[name])
        return (lambda p: not holds(p)) if opposite else holds

    def without_is(self, name):
        """'rate switch high' or 'high rates'; there must be one way to read it."""
        said = name.split()
        found = []
        for cut in range(1, len(said)):
            before, after = " ".join(said[:cut]), " ".join(said[cut:])
            for control, place, first in ((before, after, True), (after, before, False)):
                c = self.controls.get(control)
                if c and place in c.places:
                    found.append((c, c.places[place], first))
        if len(found) != 1:
            raise self.wrong(f"no phase is called {name}")
        c, place, first = found[0]
        return self.stands(c, self.more_places(c, [place]) if first else [place])

    def phase(self, name):
        if name not in self.phases:
            raise self.wrong(f"no phase is called {name}")
        return self.phases[name]

    def predicate(self, c):
        if c.kind != "switch":
            if self.take("above"):
                n = self.amount()
                return lambda p: p[c] > n
            if self.take("below"):
                n = self.amount()
                return lambda p: p[c] < n
            if self.take("at"):
                which = self.take("least", "most")
                n = self.amount()
                if which == "least":
                    return lambda p: p[c] >= n
                if which == "most":
                    return lambda p: p[c] <= n
                raise self.wrong("at least or at most was expected")
            if self.take("between"):
                low = self.amount()
                if not self.take("and"):
                    raise self.wrong("between needs an and")
                high = self.amount()
                return lambda p: low <= p[c] <= high
            if c.axis and self.peek() in AXES[c.axis]:
                plus = self.take(*AXES[c.axis]) == AXES[c.axis][0]
                if not self.take("of"):
                    raise self.wrong("of was expected")
                n = self.amount()
                return (lambda p: p[c] > n) if plus else (lambda p: p[c] < -n)
        return self.stands(c, self.more_places(c, [self.place(c)]))

    def more_places(self, c, places):
        """The places, and those that follow right after, joined by or."""
        while self.peek() == "or":
            here = self.at
            self.at += 1
            # Another position only if these words are one and nothing is said of them.
            try:
                place = self.place(c)
            except Mistake:
                place = None
            if place is None or self.peek() in ("is", "are"):
                self.at = here
                break
            places.append(place)
        return places

    def stands(self, c, places):
        if c.kind == "switch":
            return lambda p: p[c] in places
        # Settings have three decimals, and so have the ends of what is near to one.
        near = [(round(at - DETENT_REACH, 3), round(at + DETENT_REACH, 3)) for at in places]
        return lambda p: any(low <= p[c] <= high for low, high in near)

    def place(self, c):
        word = self.words()
        if word not in c.places:
            raise self.wrong(f"{c.name} has no {word}")
        return c.places[word]
