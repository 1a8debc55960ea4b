"""From a description of lifting surfaces to lattice cells.

Lengths are in any one unit; places are (aft, out, up) from the balance point.
A half is one side of a lifting surface, a chain of sections from its root to
its tip, each with the place of its leading edge and its chord. Controls and
spoilers are given by where they begin and end along the half's span, measured
from the first section.
"""

import math

import numpy as np

STRIPS = 20        # strips across a half, closer together towards the tip
CHORDWISE = 8      # cells along a chord
LEAST_HINGED = 2   # cells along a hinged surface's chord, and ahead of its hinge


class Mistake(Exception):
    """The description cannot be meant."""


WANTED = {"down": np.array([0.0, 0.0, -1.0]), "left": np.array([0.0, -1.0, 0.0])}


class Half:
    """One side of a lifting surface: places along its span and chord."""

    def __init__(self, given):
        self.name, self.group = given["name"], given["group"]
        sections = given["sections"]
        if len(sections) < 2:
            raise Mistake(f"{self.name}: two sections at least")
        self.leading = np.array([[s["aft"], s["out"], s["up"]] for s in sections], dtype=float)
        self.chords = np.array([s["chord"] for s in sections], dtype=float)
        steps = np.linalg.norm(np.diff(self.leading[:, 1:], axis=0), axis=1)
        if (steps <= 0).any() or (self.chords <= 0).any():
            raise Mistake(f"{self.name}: spans and chords must be more than 0")
        self.stations = np.concatenate([[0.0], np.cumsum(steps)])
        self.controls = given.get("controls", [])
        self.spoilers = given.get("spoilers", [])
        for c in self.controls + self.spoilers:
            if not 0 <= c["from"] < c["to"] <= self.stations[-1] * (1 + 1e-9):
                raise Mistake(f'{c["part"]}: from {c["from"]} to {c["to"]} is not on {self.name}')

    def chord(self, station):
        return float(np.interp(station, self.stations, self.chords))

    def point(self, station, fraction):
        """The place at a station and a fraction of the chord from the leading edge."""
        place = np.array([np.interp(station, self.stations, self.leading[:, k]) for k in range(3)])
        place[0] += fraction * self.chord(station)
        return place

    def edges(self):
        """Where strips begin and end: a strip never crosses the end of a control."""
        length = self.stations[-1]
        fixed = set(self.stations)
        for c in self.controls + self.spoilers:
            fixed |= {c["from"], min(c["to"], length)}
        fixed = sorted(fixed)
        fixed = [s for i, s in enumerate(fixed) if i == 0 or s - fixed[i - 1] > 1e-9 * length]
        edges = list(fixed)
        for k in range(1, STRIPS):
            s = length * math.sin(math.pi / 2 * k / STRIPS)
            spacing = length * math.pi / 2 / STRIPS * math.cos(math.pi / 2 * k / STRIPS)
            if min(abs(s - f) for f in fixed) > spacing / 2:
                edges.append(s)
        return sorted(edges)

    def over(self, things, first, second):
        """Those of the controls or spoilers that a strip lies in."""
        middle = (first + second) / 2
        return [c for c in things if c["from"] < middle < c["to"]]


class Cells:
    """The cells of all halves, and which of them each part moves."""

    def __init__(self):
        self.start, self.end, self.control, self.normal, self.group = [], [], [], [], []
        self.turn = {}     # by part: (cell, change of its normal for a radian)
        self.spoiled = {}  # by part: the cells of its strips
        self.strips = {}   # by part: (middle of the strip, its area)
        self._groups = {}

    def add(self, half):
        edges = half.edges()
        for first, second in zip(edges, edges[1:]):
            self._strip(half, first, second)

    def _strip(self, half, first, second):
        middle = (first + second) / 2
        controls = half.over(half.controls, first, second)
        if len(controls) > 1:
            raise Mistake(f"{controls[0]['part']} and {controls[1]['part']} share a strip of {half.name}")
        hinged = min(controls[0]["chord"] / half.chord(middle), 1.0) if controls else 0.0
        spoilers = half.over(half.spoilers, first, second)
        hinge = [half.point(first, 1 - hinged), half.point(second, 1 - hinged)]
        for fore, aft in chordwise(hinged):
            cell = self._cell(half, first, second, fore, aft)
            if controls and fore >= 1 - hinged - 1e-9:
                trailing = half.point(middle, 1.0)
                turned = self._turned(controls[0], hinge, trailing, self.normal[cell])
                self.turn.setdefault(controls[0]["part"], []).append((cell, turned))
            for s in spoilers:
                self.spoiled.setdefault(s["part"], []).append(cell)
        width = np.linalg.norm((half.point(second, 0) - half.point(first, 0))[1:])
        for s in spoilers:
            strip = (half.point(middle, 0.5), width * half.chord(middle))
            self.strips.setdefault(s["part"], []).append(strip)

    def _cell(self, half, first, second, fore, aft):
        quarter, control = fore + 0.25 * (aft - fore), fore + 0.75 * (aft - fore)
        start, end = half.point(first, quarter), half.point(second, quarter)
        diagonal = half.point(second, aft) - half.point(first, fore)
        other = half.point(second, fore) - half.point(first, aft)
        normal = np.cross(diagonal, other)
        self.start.append(start)
        self.end.append(end)
        self.control.append(half.point((first + second) / 2, control))
        self.normal.append(normal / np.linalg.norm(normal))
        self.group.append(self._groups.setdefault(half.group, len(self._groups)))
        return len(self.start) - 1

    @staticmethod
    def _turned(control, hinge, trailing, normal):
        """How a cell's normal changes for a radian of the control.

        The sense follows from where the trailing edge goes, never from which
        way the half or its normal happens to point.
        """
        axis = hinge[1] - hinge[0]
        axis = axis / np.linalg.norm(axis)
        moved = np.cross(axis, trailing - (hinge[0] + hinge[1]) / 2)
        wanted = float(moved @ WANTED[control["moves"]])
        if abs(wanted) < 0.1 * np.linalg.norm(moved):
            raise Mistake(f'{control["part"]}: its trailing edge cannot move {control["moves"]}')
        return math.copysign(1.0, wanted) * np.cross(axis, normal)


def chordwise(hinged):
    """Fractions of the chord between cells, with one at the hinge."""
    if hinged <= 0 or hinged >= 1:
        cuts = np.linspace(0, 1, CHORDWISE + 1)
    else:
        behind = min(max(round(CHORDWISE * hinged), LEAST_HINGED), CHORDWISE - LEAST_HINGED)
        ahead = np.linspace(0, 1 - hinged, CHORDWISE - behind + 1)
        cuts = np.concatenate([ahead, np.linspace(1 - hinged, 1, behind + 1)[1:]])
    return list(zip(cuts, cuts[1:]))
