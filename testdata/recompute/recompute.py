#!/usr/bin/env python3
"""A second computation of the chain from the pilot's hand to the trailing edge.

It reads an airframe file and a stream of poses, and works out every demand,
channel and part from the two texts that say what the file means (the file's
reference page and the package comment of the core) and from nothing else. It
shares no code and, where there was a choice, no method with the program it is
compared with: the four-bar is tracked from neutral by a safeguarded Newton
iteration on the loop-closure equation, the smooth curve is evaluated by de
Casteljau's construction.

    recompute.py AIRFRAME.yaml < poses.jsonl > results.jsonl
    recompute.py --selftest

A pose is one line of JSON:

    {"position": {"roll stick": 37.5, "rate switch": "high", "roll trim": -20},
     "signal_lost": false}

A control left out is at rest. "held": {"3": 12.5} may say what output a
channel had before the signal was lost; otherwise it is the output of the pose.
Only the steady state is computed: fades have ended, slow channels have arrived.

A result is one line of JSON with "demands", "channels" (sum, output, pulse) and
"parts" (angle and travel of the trailing edge, or amount), by their names.

Signs: trailing edge down and left are positive; a wheel that turns the rolling
model left is positive. Angles are degrees, pulses microseconds, the rest
percent.
"""

import json
import math
import re
import sys

try:
    import yaml
except ImportError:
    sys.exit("recompute.py: the yaml module is missing (Debian: python3-yaml)")


class Mistake(Exception):
    """The file or a pose says something that the texts do not allow."""


# ---------------------------------------------------------------- small words

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
    if word in ("yes", "true", "on"):
        return True
    if word in ("no", "false", "off"):
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


# ------------------------------------------------------------------- controls

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
        also = body.get("aka", [])
        also = [also] if isinstance(also, str) else also
        if "axis" in body:
            axis = plain(body["axis"])
            if axis not in AXES:
                raise Mistake(f"{name}: no such axis: {axis}")
            control = Control(name, "axis", 0.0, axis=axis)
            if "trim" in body:
                trim = body["trim"]
                trim = trim if isinstance(trim, dict) else {"range": trim}
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
        enter(control, name, *also)
    return controls, trims


# ----------------------------------------------------------------- conditions

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
        if not self.take("is"):
            return self.phase(name)
        if name not in self.controls:
            raise self.wrong(f"no control is called {name}")
        opposite = self.take("not")
        holds = self.predicate(self.controls[name])
        return (lambda p: not holds(p)) if opposite else holds

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
        places = [self.place(c)]
        while self.peek() == "or":
            here = self.at
            self.at += 1
            # Another position only if these words are one and nothing is said of them.
            try:
                place = self.place(c)
            except Mistake:
                place = None
            if place is None or self.peek() == "is":
                self.at = here
                break
            places.append(place)
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


# --------------------------------------------------------------------- curves

def straight(points):
    """Straight lines through the points, given in order of x."""
    def value(x):
        for (x0, y0), (x1, y1) in zip(points, points[1:]):
            if x <= x1:
                return y0 + (y1 - y0) * ((x - x0) / (x1 - x0))
        raise Mistake(f"{x} is beyond the last point")
    return value


def smooth_slopes(xs, ys):
    """Slopes at the points: weighted harmonic means (Fritsch and Butland) inside,
    a three-point formula that keeps the shape at the two ends."""
    h = [b - a for a, b in zip(xs, xs[1:])]
    m = [(b - a) / w for a, b, w in zip(ys, ys[1:], h)]
    if len(xs) == 2:
        return [m[0], m[0]]

    def end(h0, h1, m0, m1):
        d = ((2 * h0 + h1) * m0 - h0 * m1) / (h0 + h1)
        if d * m0 <= 0:
            return 0.0
        if m0 * m1 <= 0 and abs(d) > 3 * abs(m0):
            return 3 * m0
        return d

    inside = []
    for h0, h1, m0, m1 in zip(h, h[1:], m, m[1:]):
        if m0 * m1 <= 0:
            inside.append(0.0)
        else:
            w0, w1 = 2 * h1 + h0, h1 + 2 * h0
            inside.append((w0 + w1) / (w0 / m0 + w1 / m1))
    return [end(h[0], h[1], m[0], m[1])] + inside + [end(h[-1], h[-2], m[-1], m[-2])]


def smooth(points):
    """A monotone cubic through the points, by de Casteljau's construction."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    slopes = smooth_slopes(xs, ys)

    def value(x):
        for i in range(len(xs) - 1):
            if x <= xs[i + 1]:
                break
        h = xs[i + 1] - xs[i]
        t = (x - xs[i]) / h
        b = [ys[i], ys[i] + h * slopes[i] / 3, ys[i + 1] - h * slopes[i + 1] / 3, ys[i + 1]]
        while len(b) > 1:
            b = [p + (q - p) * t for p, q in zip(b, b[1:])]
        return b[0]
    return value


# -------------------------------------------------------------------- demands

def softened(x, k):
    if k >= 0:
        return (1 - k) * x + k * x ** 3
    return (1 + k) * x - k * math.copysign(1 - (1 - abs(x)) ** 3, x)


class Demand:
    def __init__(self, name, body, model):
        self.name = name
        if isinstance(body, str):
            body = {"from": body}
        known_keys(name, body, "from", "throw", "expo", "rates", "curve", "smooth", "trim", "values")
        self.control = model.controls[plain(body["from"])]
        if self.control.kind == "trim":
            raise Mistake(f"{name}: a demand cannot come from a trim")
        self.values = None
        if self.control.kind == "switch":
            by_word = {plain(word): percent(v) for word, v in body["values"].items()}
            if set(by_word) != set(self.control.places):
                raise Mistake(f"{name}: one value for each position")
            self.values = {i: by_word[word] for word, i in self.control.places.items()}
        rates = body.get("rates", [{k: body[k] for k in ("throw", "expo") if k in body}])
        self.rates = []
        for rate in rates:
            known_keys(name, rate, "when", "throw", "expo")
            self.rates.append((
                model.condition(rate["when"]) if "when" in rate else None,
                two_sided(rate.get("throw", "100%"), percent),
                percent(rate.get("expo", "0%")) / 100,
            ))
        self.curve = None
        if "curve" in body:
            points = sorted((percent(x), percent(y)) for x, y in body["curve"].items())
            self.ends = points[0][0], points[-1][0]
            self.curve = (smooth if switch_word(body.get("smooth", "no")) else straight)(points)
        self.trim = model.trims.get(self.control)
        if "trim" in body and not switch_word(body["trim"]):
            self.trim = None

    def at(self, positions):
        x = positions[self.control]
        x = (x if self.values is None else self.values[x]) / 100
        for holds, (plus, minus), expo in self.rates:
            if holds is None or holds(positions):
                break
        else:
            raise Mistake(f"{self.name}: no rate holds")
        y = softened(x, expo)
        if self.curve:
            y = self.curve(held_to(100 * y, *self.ends)) / 100
        demand = y * (plus if y >= 0 else minus)
        if self.trim:
            trim, reach = self.trim
            demand += positions[trim] / 100 * reach
        return demand


# ------------------------------------------------------------------- channels

class Channel:
    def __init__(self, key, body, model):
        self.number = int(key)
        if isinstance(body, str):
            body = {"mix": body} if body else {}
        known_keys(f"channel {key}", body, "name", "mix", "limit", "reversed", "end_points",
                   "sub_trim", "pulse_us", "slow", "failsafe")
        mix = body.get("mix", [])
        self.lines = [self.line(each, model) for each in (mix if isinstance(mix, list) else [mix])]
        self.limit = percent(body.get("limit", "100%"))
        self.reversed = switch_word(body.get("reversed", "no"))
        self.ends = two_sided(body.get("end_points", "100%"), percent)
        self.sub_trim = percent(body.get("sub_trim", "0%"))
        pulses = body.get("pulse_us", {})
        known_keys(f"channel {key}", pulses, "min", "max")
        self.least = microseconds(pulses.get("min", "1000"))
        self.most = microseconds(pulses.get("max", "2000"))
        self.lost = None  # the pulse on loss of signal; None holds
        failsafe = str(body.get("failsafe", "hold")).strip()
        if plain(failsafe) != "hold":
            if re.search(r"(µ|μ|u)s$", failsafe):
                self.lost = microseconds(failsafe)
            else:
                self.lost = pulse_of(percent(failsafe))

    @staticmethod
    def line(body, model):
        """One line of the mix: (condition or None, what it does to the sum)."""
        if isinstance(body, str):
            body = {"fixed": body} if NUMBER.match(body.strip()) else {"add": body}
        known_keys("mix", body, "add", "share", "fixed", "scale_by", "replace_with", "when")
        holds = model.condition(body["when"]) if "when" in body else None
        if "add" in body:
            name = model.demand_named(body["add"])
            plus, minus = two_sided(body.get("share", "100%"), percent)

            def add(total, demands):
                d = demands[name]
                return total + (plus if d >= 0 else minus) * d / 100
            return holds, add
        if "fixed" in body:
            fixed = percent(body["fixed"])
            return holds, lambda total, demands: total + fixed
        if "scale_by" in body:
            by = model.demand_named(body["scale_by"])
            return holds, lambda total, demands: total * (demands[by] / 100)
        instead = percent(body["replace_with"])
        return holds, lambda total, demands: instead

    def at(self, positions, demands, signal_lost, held):
        total = 0.0
        for holds, change in self.lines:
            if holds is None or holds(positions):
                total = change(total, demands)
        v = held_to(total, -self.limit, self.limit)
        if self.reversed:
            v = -v
        v = v * self.ends[0 if v >= 0 else 1] / 100 + self.sub_trim
        pulse = pulse_of(v)
        if signal_lost and self.lost is not None:
            pulse = self.lost
        elif signal_lost and held is not None:
            pulse = pulse_of(held)
        pulse = held_to(pulse, self.least, self.most)
        return {"sum": total, "output": (pulse - 1500) / 5, "pulse": pulse}


def pulse_of(output):
    return 1500 + 5 * output


# ------------------------------------------------------------------- linkages

class FourBar:
    """Arm, pushrod and horn in the plane of x aft and y towards the horn's side.

    The shaft is at the origin and the hinge at (along, across). Angles turn
    from x to y. The horn's angle is found by Newton's iteration on

        F(horn) = |horn tip − arm tip|² − pushrod² = 0

    from a neighbouring solution, step by step from the one at neutral. The two
    ways of assembling the linkage have opposite signs of dF/dhorn, and meet
    where that is zero: there it locks.
    """

    STEP = 0.25  # degrees of arm between remembered solutions
    CLOSE = 1e-15  # radians: the iteration has settled
    ROUNDS = 60

    def __init__(self, arm, horn, along, across, arm_deg, horn_deg, pushrod=None):
        self.arm, self.horn, self.along, self.across = arm, horn, along, across
        self.arm_deg, self.horn_deg = arm_deg, horn_deg
        rest = math.radians(horn_deg)
        if pushrod is None:
            ax, ay = self.arm_tip(arm_deg)
            hx, hy = self.horn_tip(rest)
            self.rod = math.hypot(hx - ax, hy - ay)
        else:
            self.rod = pushrod
            rest = self.nearest(arm_deg, rest)
        self.sense = math.copysign(1, self.slope(arm_deg, rest))
        self.known = {0: rest}  # horn's angle at each whole step of the arm from neutral

    def arm_tip(self, arm_deg):
        t = math.radians(arm_deg)
        return self.arm * math.cos(t), self.arm * math.sin(t)

    def horn_tip(self, t):
        return self.along + self.horn * math.cos(t), self.across + self.horn * math.sin(t)

    def gap(self, arm_deg, t):
        ax, ay = self.arm_tip(arm_deg)
        hx, hy = self.horn_tip(t)
        d = math.hypot(hx - ax, hy - ay)
        return (d - self.rod) * (d + self.rod)

    def slope(self, arm_deg, t):
        ax, ay = self.arm_tip(arm_deg)
        hx, hy = self.horn_tip(t)
        return 2 * self.horn * ((hy - ay) * math.cos(t) - (hx - ax) * math.sin(t))

    def nearest(self, arm_deg, t):
        """The solution nearest to t: look both ways for a change of sign, then halve."""
        look, found = math.radians(0.05), []
        for way in (+1, -1):
            near, count = t, 0
            f_near = self.gap(arm_deg, near)
            while count < 7200:
                far = near + way * look
                f_far = self.gap(arm_deg, far)
                if f_near == 0 or (f_near > 0) != (f_far > 0):
                    break
                near, f_near, count = far, f_far, count + 1
            else:
                raise Mistake("the pushrod reaches nowhere at neutral")
            low, high = near, far
            while True:
                middle = (low + high) / 2
                if middle in (low, high):
                    break
                if (self.gap(arm_deg, middle) > 0) == (f_near > 0):
                    low = middle
                else:
                    high = middle
            found.append(low if f_near else near)
        return min(found, key=lambda each: abs(each - t))

    def settle(self, arm_deg, start):
        """Newton from start; None if it leaves start's neighbourhood or the branch."""
        t = start
        for _ in range(self.ROUNDS):
            slope = self.slope(arm_deg, t)
            if slope * self.sense <= 0:
                return None
            change = -self.gap(arm_deg, t) / slope
            t += change
            if abs(t - start) > 0.2:
                return None
            if abs(change) <= self.CLOSE * max(1, abs(t)):
                return t
        # Rounding may keep the last digit moving; the loop must be closed all the same.
        return t if abs(change) < 1e-13 else None

    def follow(self, from_arm, t, to_arm):
        """The solution at to_arm that is continuous with t at from_arm."""
        direct = self.settle(to_arm, t)
        if direct is not None:
            return direct
        if abs(to_arm - from_arm) < 1e-7:
            raise Mistake(f"the linkage locks {to_arm - self.arm_deg:+.4f}° of arm from neutral")
        middle = (from_arm + to_arm) / 2
        return self.follow(middle, self.follow(from_arm, t, middle), to_arm)

    def turn(self, swing):
        """Horn's turn from where the surface is neutral, degrees from x to y, for
        an arm that has turned by swing degrees from x to y."""
        steps = int(swing / self.STEP)
        if steps not in self.known:
            way = 1 if steps > 0 else -1
            last = 0
            while last != steps:
                following = last + way
                if following not in self.known:
                    self.known[following] = self.follow(
                        self.arm_deg + last * self.STEP, self.known[last],
                        self.arm_deg + following * self.STEP)
                last = following
        t = self.follow(self.arm_deg + steps * self.STEP, self.known[steps], self.arm_deg + swing)
        return math.degrees(t) - self.horn_deg


class Linkage:
    """A four-bar as the file says it, with the side that its horn stands on."""

    def __init__(self, where, body, steers):
        known_keys(where, body, "arm_mm", "horn_mm", "pivots_mm", "offset_mm", "horn", "arm",
                   "arm_deg", "horn_deg", "pushrod_mm")
        plane, side = SIDE_WORDS[plain(body["horn"])]
        arm_plane, arm_side = SIDE_WORDS[plain(body.get("arm", body["horn"]))]
        if plane != arm_plane:
            raise Mistake(f"{where}: arm and horn lie in different planes")
        # y points to the horn's side, so what is above or to starboard is minus
        # where the horn is below or to port.
        across = side * millimetres(body.get("offset_mm", "0"))
        arm_deg = degrees(body.get("arm_deg", "90"))
        # Aft is towards x: from the horn's side a tip goes aft as its angle falls,
        # from the other side as it grows.
        self.aft = -1.0
        if arm_side != side:
            arm_deg, self.aft = -arm_deg, 1.0
        rod = millimetres(body["pushrod_mm"]) if "pushrod_mm" in body else None
        self.bars = FourBar(millimetres(body["arm_mm"]), millimetres(body["horn_mm"]),
                            millimetres(body["pivots_mm"]), across, arm_deg,
                            degrees(body.get("horn_deg", "90")), rod)
        # The trailing edge lies at +x of the hinge and turns with the horn towards
        # y. That is up for a horn above, right for one to starboard: minus. Below
        # and port: plus. A nose wheel's front lies at −x and goes the other way.
        self.sense = -side
        if steers == "nose":
            self.sense = side

    def angle(self, aft_swing):
        return self.sense * self.bars.turn(self.aft * aft_swing)


# ---------------------------------------------------------------------- parts

class Drive:
    """What moves a part from one channel: servo with linkage, or a measured table."""

    def __init__(self, where, body, model, steers):
        self.channel = model.channel_numbered(body["channel"])
        self.table = self.linkage = None
        if ("measured" in body) == ("linkage" in body):
            raise Mistake(f"{where}: a linkage or a measured table")
        if "measured" in body:
            points = sorted((percent(x), directed_degrees(y)) for x, y in body["measured"].items())
            if len(points) == 1:
                (x, y), = points
                points = sorted([(-x, -y), (0.0, 0.0), (x, y)])
            self.reach = points[0][0], points[-1][0]
            self.table = straight(points)
            return
        servo = body["servo"]
        servo = servo if isinstance(servo, dict) else {"plus_swings": servo}
        known_keys(where, servo, "swing_deg", "plus_swings", "max_deg", "seconds_per_60deg",
                   "torque_ncm")
        way = {"aft": 1.0, "fore": -1.0}[plain(servo["plus_swings"])]
        self.swing = way * degrees(servo.get("swing_deg", "45"))
        self.most = degrees(servo["max_deg"]) if "max_deg" in servo else math.inf
        self.linkage = Linkage(where, body["linkage"], steers)

    def angle(self, output):
        if self.table:
            if not self.reach[0] - 1e-9 <= output <= self.reach[1] + 1e-9:
                raise Mistake(f"channel {self.channel}: {output} % is beyond the measured table")
            return self.table(held_to(output, *self.reach))
        return self.linkage.angle(held_to(self.swing * output / 100, -self.most, self.most))


class Hinged:
    """A surface or a steered wheel."""

    KEYS = ("channel", "servos", "servo", "linkage", "measured", "stops", "side", "aka")

    def __init__(self, name, body, model, wheel):
        known_keys(name, body, *self.KEYS, *(("place",) if wheel else ("kind", "chord_mm", "span_mm")))
        steers = None
        if wheel:
            steers = plain(body.get("place", "")) or \
                ("tail" if "tail" in plain(name).split() else "nose")
        drives = body["servos"] if "servos" in body else \
            [{k: body[k] for k in ("channel", "servo", "linkage", "measured") if k in body}]
        self.drives = [Drive(name, each, model, steers) for each in drives]
        self.low, self.high = -math.inf, math.inf
        for way, at in body.get("stops", {}).items():
            if ANGLE_WORDS[plain(way)] > 0:
                self.high = degrees(at)
            else:
                self.low = -degrees(at)
        self.chord = millimetres(body.get("chord_mm", "0"))

    def at(self, channels):
        angles = [d.angle(channels[d.channel]["output"]) for d in self.drives]
        angle = held_to(sum(angles) / len(angles), self.low, self.high)
        return {"angle": angle, "travel": chord_travel(self.chord, angle)}


class Motor:
    def __init__(self, name, body, model):
        known_keys(name, body, "channel", "side", "idle_us", "full_us", "stopped_below",
                   "stopped_when", "aka")
        self.channel = model.channel_numbered(body["channel"])
        self.idle = microseconds(body.get("idle_us", "1000"))
        self.full = microseconds(body.get("full_us", "2000"))

    def at(self, channels):
        share = (channels[self.channel]["pulse"] - self.idle) / (self.full - self.idle)
        return {"amount": held_to(100 * share, 0.0, 100.0)}


class Extra:
    def __init__(self, name, body, model):
        known_keys(name, body, "kind", "channel", "plus_moves", "side", "aka")
        self.channel = model.channel_numbered(body["channel"])
        self.way = {"out": 1.0, "in": -1.0}[plain(body.get("plus_moves", "out"))]

    def at(self, channels):
        return {"amount": held_to((self.way * channels[self.channel]["output"] + 100) / 2, 0.0, 100.0)}


def chord_travel(chord, degrees_from_neutral):
    return 2 * chord * math.sin(math.radians(abs(degrees_from_neutral)) / 2)


# ---------------------------------------------------------------------- model

class Model:
    def __init__(self, document):
        known_keys("the file", document, "hingeline", "name", "about", "mass_kg", "still_deg", "script",
                   "controls", "phases", "demands", "channels", "surfaces", "wheels", "motors", "extras")
        if document.get("hingeline") != "1":
            raise Mistake("hingeline: 1 must be there")
        section = lambda name: document.get(name) or {}
        self.controls, self.trims = read_controls(section("controls"))
        self.phases = {}
        for name, body in section("phases").items():
            body = body if isinstance(body, dict) else {"when": body}
            known_keys(name, body, "when", "fade")
            self.phases[plain(name)] = self.condition(body["when"])
        self.demands = {plain(n): Demand(n, b, self) for n, b in section("demands").items()}
        self.channels = {}
        for key, body in section("channels").items():
            channel = Channel(key, body, self)
            self.channels[channel.number] = channel
        self.parts = {}
        for kind, build in (
            ("surfaces", lambda n, b: Hinged(n, b, self, wheel=False)),
            ("wheels", lambda n, b: Hinged(n, b, self, wheel=True)),
            ("motors", lambda n, b: Motor(n, b, self)),
            ("extras", lambda n, b: Extra(n, b, self)),
        ):
            for name, body in section(kind).items():
                if name in self.parts:
                    raise Mistake(f"two parts are called {name}")
                self.parts[name] = build(name, body)

    def condition(self, text):
        return ConditionReader(text, self.controls, self.phases).whole()

    def demand_named(self, name):
        if plain(name) not in self.demands:
            raise Mistake(f"no demand is called {name}")
        return plain(name)

    def channel_numbered(self, text):
        if int(text) not in self.channels:
            raise Mistake(f"there is no channel {text}")
        return int(text)

    def positions(self, given):
        """A position for every control; those not given are at rest."""
        positions = {control: control.rest for control in self.controls.values()}
        for name, where in given.items():
            control = self.controls.get(plain(name))
            if control is None:
                raise Mistake(f"a pose moves {name}, which there is not")
            positions[control] = control.position(where)
        return positions

    def at(self, pose):
        positions = self.positions(pose.get("position", {}))
        lost, held = pose.get("signal_lost", False), pose.get("held", {})
        demands = {name: demand.at(positions) for name, demand in self.demands.items()}
        channels = {n: c.at(positions, demands, lost, held.get(str(n)))
                    for n, c in self.channels.items()}
        return {
            "demands": {self.demands[name].name: value for name, value in demands.items()},
            "channels": {str(n): c for n, c in channels.items()},
            "parts": {name: part.at(channels) for name, part in self.parts.items()},
        }


def read_model(stream):
    # The base loader leaves every scalar the text that it is: on, off, 007.
    return Model(yaml.load(stream, Loader=yaml.BaseLoader))


# ------------------------------------------------------------------ self-test

def selftest():
    """The published and independently computed figures; the number of failures."""
    failures = []
    count = 0

    def check(what, got, wanted, tolerance):
        nonlocal count
        count += 1
        if not abs(got - wanted) <= tolerance:
            failures.append(f"{what}: got {got!r}, wanted {wanted!r} within {tolerance}")

    # Norton, Design of Machinery: values from memory, computed by two other methods.
    for horn, rod, arm, along, theta, wanted in (
        (80, 120, 40, 100, 40, (57.325, -98.005)),
        (9, 7, 2, 6, 30, (117.286, -143.660)),
    ):
        for each in wanted:
            bars = FourBar(arm, horn, along, 0, theta, round(each), rod)
            check(f"four-bar {arm} {rod} {horn} {along}", round(each) + bars.turn(0), each, 0.0005)

    # Computed independently with a general-purpose numerical library.
    def linkage(horn="above", arm=None, **more):
        body = {"arm_mm": "10", "horn_mm": "15", "pivots_mm": "60", "horn": horn, **more}
        if arm:
            body["arm"] = arm
        return Linkage("selftest", body, None)

    for more, figures in (
        ({}, {-45: -27.633, -30: -19.295, 30: 19.637, 45: 28.569}),
        ({"arm_deg": "75"}, {-30: -16.521, 30: 19.878}),
        ({"horn_deg": "110"}, {-30: -18.687, 30: 21.985}),
        ({"horn_mm": "10"}, {-45: -45, -20: -20, 10: 10, 45: 45}),  # parallelogram
    ):
        # The figures count both angles the way x turns to y, from aft towards the
        # horn's side: plus is an arm that goes fore, a surface that goes up.
        for turn, wanted in figures.items():
            tolerance = 1e-10 if abs(wanted) == abs(turn) else 0.0005
            check(f"linkage {more} {turn}", linkage(**more).bars.turn(turn), wanted, tolerance)
            check(f"linkage above {more} {turn}", linkage(**more).angle(-turn), -wanted, tolerance)
            # Mirrored in the hinge line, the surface goes the other way.
            check(f"linkage below {more} {turn}", linkage("below", **more).angle(-turn), wanted, tolerance)
    count += 1
    try:
        bars = linkage(arm_mm="12", horn_mm="8")
        bars.angle(45), bars.angle(-45)
        failures.append("arm 12 on horn 8 does not lock")
    except Mistake:
        pass
    # Which way, worked out by hand: horn pushed aft.
    for horn, steers, sign in (("above", None, 1), ("below", None, -1), ("starboard", None, 1),
                               ("port", None, -1), ("starboard", "nose", -1), ("port", "nose", 1),
                               ("starboard", "tail", 1)):
        body = {"arm_mm": "10", "horn_mm": "10", "pivots_mm": "60", "horn": horn}
        check(f"sense {horn} {steers}", Linkage("selftest", body, steers).angle(20), sign * 20, 1e-10)
    # A crossed pushrod still pushes the horn aft when the arm goes aft.
    check("crossed", math.copysign(1, linkage(arm="below").angle(20)), 1, 0)
    # Every solution closes the loop, and neutral is neutral.
    for arm, horn, along, across, a, h in ((11, 15, 58, -6, 80, 105), (9, 17, 90, 14, -95, 75)):
        bars = FourBar(arm, horn, along, across, a, h)
        check("neutral", bars.turn(0), 0, 1e-12)
        for swing in range(-45, 46, 3):
            turned = bars.turn(swing)
            check("loop", bars.gap(a + swing, math.radians(h + turned)), 0, 1e-10)

    # Light-sport aeroplane rigging table, manual AF 04800001 rev 3, 2008, p. AII-1.
    for angle, travel, chord, slack, allowed in ((26.5, 109, 237.8, 1.5, 6.1), (12.5, 52, 238.8, 1.5, 6.2),
                                                 (28.5, 217, 440.8, 1.5, 11.2)):
        check("chord travel", chord_travel(chord, angle), travel, 0.05)
        check("chord travel allowed",
              (chord_travel(chord, angle + slack) - chord_travel(chord, angle - slack)) / 2, allowed, 0.06)

    # MAVLink common.xml, RC_CHANNELS: 1000 µs is 0 %, 2000 µs is 100 %.
    model = read_model(
        "{hingeline: 1, controls: {throttle: lever}, channels: {1: power}, motors: {motor: {channel: 1}},"
        " demands: {power: {from: throttle, curve: {0%: -100%, 100%: 100%}}}}")
    for lever, pulse in ((0, 1000), (50, 1500), (100, 2000)):
        result = model.at({"position": {"throttle": lever}})
        check("pulse", result["channels"]["1"]["pulse"], pulse, 0)
        check("power", result["parts"]["motor"]["amount"], lever, 0)

    # Expo keeps the ends and the sign and works the way it says.
    for k in (-1, -0.4, 0, 0.3, 1):
        for x in (-1, 0, 1):
            check("expo ends", softened(x, k), x, 1e-15)
        check("expo odd", softened(-0.37, k), -softened(0.37, k), 1e-15)
    check("expo soft", softened(0.5, 0.3), 0.3875, 1e-15)
    check("expo sharp", softened(0.5, -0.4), 0.65, 1e-15)

    # The smooth curve against SciPy's PchipInterpolator, where SciPy is installed.
    try:
        from scipy.interpolate import PchipInterpolator
    except ImportError:
        PchipInterpolator = None
    for points in (
        ((-100, -100), (0, 20), (100, 100)), ((0, -100), (50, 20), (100, 100)),
        ((-100, -80), (-30, -80), (10, 5), (20, 60), (100, 40)),
        ((-100, 0), (-60, 70), (-10, 65), (40, -20), (45, -20), (100, 100)),
        ((0, 100), (3, 100), (100, -100)), ((-100, -7), (100, 9)),
        ((-100, 10), (-90, 0), (100, 90)), ((0, 0), (90, 1), (100, 100)),
    ):
        ours = smooth(points)
        theirs = PchipInterpolator(*zip(*points)) if PchipInterpolator else None
        for i in range(801):
            x = points[0][0] + (points[-1][0] - points[0][0]) * i / 800
            if theirs:
                check(f"smooth {points} at {x}", ours(x), float(theirs(x)), 1e-10)
        for x, y in points:
            check(f"smooth {points} through {x}", ours(x), y, 1e-12)

    # Conditions: what binds tighter, and what an or joins.
    model = read_model(
        "{hingeline: 1, controls: {s: [low, mid, high], l: {lever: {a: 0, b: 40}}, roll stick: roll},"
        " phases: {high: l is b, ready: not high and s is low or mid}}")

    def holds(text, **position):
        return model.condition(text)(model.positions(position))

    for text, wanted in (
        ("s is low or mid", True), ("s is not low or mid", False), ("s is low or high is b", None),
        ("s is low or in high", True), ("not s is high and l is a", False), ("not (s is high or l is a)", True),
        ("l is b and s is high or s is mid", True), ("l is between 39.001% and 39.001", True),
        ("l is above 39.001%", False), ("l is at least 39.001%", True), ("ready", False), ("s is mid or high", True),
    ):
        count += 1
        try:
            got = holds(text, s="mid", l=39.001)
        except Mistake:
            got = None
        if got is not wanted:
            failures.append(f"condition {text}: got {got}, wanted {wanted}")

    for failure in failures:
        print("FAIL", failure, file=sys.stderr)
    print(f"{count} checks, {len(failures)} failed; "
          f"smooth curves {'compared with SciPy' if PchipInterpolator else 'not compared: SciPy is missing'}")
    return len(failures)


def main(arguments):
    if arguments == ["--selftest"]:
        return 1 if selftest() else 0
    if len(arguments) != 1:
        print(__doc__, file=sys.stderr)
        return 2
    try:
        with open(arguments[0], encoding="utf-8") as stream:
            model = read_model(stream)
        for line in sys.stdin:
            print(json.dumps(model.at(json.loads(line))))
    except Mistake as mistake:
        print(f"recompute.py: {mistake}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
