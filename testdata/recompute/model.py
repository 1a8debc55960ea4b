"""One model: its file, and what all of it does in a pose."""

import sys

try:
    import yaml
except ImportError:
    sys.exit("recompute.py: the yaml module is missing (Debian: python3-yaml)")

from channel import Channel
from controls import ConditionReader, read_controls
from demand import Demand
from parts import Extra, Hinged, Motor
from words import Mistake, known_keys, plain, settings


class Model:
    def __init__(self, document):
        known_keys("the file", document, "hingeline", "name", "about", "mass_kg", "still_deg",
                   "airspeed_ms", "wing", "script", "controls", "phases", "demands", "channels",
                   "surfaces", "wheels", "motors", "extras")
        if document.get("hingeline") != "1":
            raise Mistake("hingeline: 1 must be there")
        section = lambda name: document.get(name) or {}
        self.controls, self.trims = read_controls(section("controls"))
        self.phases = {}
        for name, body in section("phases").items():
            body = settings(body, "when")
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
