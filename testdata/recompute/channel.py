"""What a channel is told and what it puts out."""

import re

from words import NUMBER, held_to, known_keys, listed, microseconds, percent, plain, settings, switch_word, two_sided


class Channel:
    def __init__(self, key, body, model):
        self.number = int(key)
        body = settings(body, "mix")
        known_keys(f"channel {key}", body, "name", "mix", "limit", "reversed", "end_points",
                   "sub_trim", "pulse_us", "slow", "failsafe")
        self.lines = [self.line(each, model) for each in listed(body["mix"])]
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
