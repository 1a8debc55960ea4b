"""What moves on the model."""

import math

from demand import straight
from linkage import Linkage
from words import (ANGLE_WORDS, Mistake, degrees, directed_degrees, held_to, known_keys, microseconds,
                   millimetres, percent, plain, settings)


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
        servo = settings(body["servo"], "plus_swings")
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
    SURFACE_KEYS = ("kind", "chord_mm", "span_mm", "aft_mm", "up_mm", "tilt_deg")

    def __init__(self, name, body, model, wheel):
        known_keys(name, body, *self.KEYS, *(("place",) if wheel else self.SURFACE_KEYS))
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


# Where a part is says nothing of how far it moves.
PLACE_KEYS = ("out_mm", "aft_mm", "up_mm")


class Motor:
    def __init__(self, name, body, model):
        known_keys(name, body, *PLACE_KEYS, "channel", "side", "idle_us", "full_us", "stopped_below",
                   "stopped_when", "aka")
        self.channel = model.channel_numbered(body["channel"])
        self.idle = microseconds(body.get("idle_us", "1000"))
        self.full = microseconds(body.get("full_us", "2000"))

    def at(self, channels):
        share = (channels[self.channel]["pulse"] - self.idle) / (self.full - self.idle)
        return {"amount": held_to(100 * share, 0.0, 100.0)}


class Extra:
    def __init__(self, name, body, model):
        known_keys(name, body, *PLACE_KEYS, "kind", "channel", "plus_moves", "side", "aka")
        self.channel = model.channel_numbered(body["channel"])
        self.way = {"out": 1.0, "in": -1.0}[plain(body.get("plus_moves", "out"))]

    def at(self, channels):
        return {"amount": held_to((self.way * channels[self.channel]["output"] + 100) / 2, 0.0, 100.0)}


def chord_travel(chord, degrees_from_neutral):
    return 2 * chord * math.sin(math.radians(abs(degrees_from_neutral)) / 2)
