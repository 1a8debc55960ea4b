"""What the pilot asks for: a control, softened, bent by a curve, scaled and trimmed."""

import math

from words import Mistake, held_to, known_keys, percent, plain, settings, switch_word, two_sided


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


def softened(x, k):
    if k >= 0:
        return (1 - k) * x + k * x ** 3
    return (1 + k) * x - k * math.copysign(1 - (1 - abs(x)) ** 3, x)


class Demand:
    def __init__(self, name, body, model):
        self.name = name
        body = settings(body, "from")
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
