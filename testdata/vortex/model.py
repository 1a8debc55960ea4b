"""A described model in the air: what each movement does to it.

Coefficients are moments over dynamic pressure, area and span, all three by the
span so that they can be compared. Roll plus is the right wing down, pitch plus
the nose up, yaw plus the nose right.
"""

import math

import numpy as np

import lattice
import surfaces

# What a spoiler raised at a right angle does to its strip: all lift is lost, and
# the plate's drag is that of a tenth of the chord broadside to the air. In
# between by the sine of its angle. Common practice, no source; only signs are
# taken from it.
SPOILED = 1.0
SPOILER_DRAG = 1.2 * 0.1


class Model:
    """The lattice of a description and the points that push and drag."""

    def __init__(self, given):
        self.span, self.area = given["span"], given["area"]
        self.incidence = math.radians(given["incidence_deg"])
        cells = surfaces.Cells()
        for half in given["halves"]:
            cells.add(surfaces.Half(half))
        self.cells = cells
        self.lattice = lattice.Lattice(
            np.array(cells.start), np.array(cells.end), np.array(cells.control),
            np.array(cells.normal), np.array(cells.group), lattice.CORE * self.span / 2)
        self.points = {}  # by part: (place, which way it pushes along x for a percent)
        for p in given.get("points", []):
            push = {"drag": 0.01, "thrust": -0.01}[p["pushes"]]
            self.points.setdefault(p["part"], []).append(
                (np.array([p["aft"], p["out"], p["up"]], dtype=float), push))
        self.parts = set(cells.turn) | set(cells.spoiled) | set(self.points)

    def _onset(self, points, roll=0.0):
        wind = np.array([math.cos(self.incidence), 0.0, math.sin(self.incidence)])
        return wind + lattice.rolling(roll * 2 / self.span, points)

    def _through(self, movement, roll):
        """Air through the cells, and forces that are no part of the lattice."""
        onset = self._onset(self.lattice.control, roll)
        normal = self.lattice.normal.copy()
        places, pushes = [], []
        kept = np.ones(len(normal))
        for part, amount in movement.items():
            if part not in self.parts:
                raise surfaces.Mistake(f"no surface, spoiler or point belongs to {part}")
            for cell, turned in self.cells.turn.get(part, []):
                normal[cell] += math.radians(amount) * turned
            raised = math.sin(math.radians(max(-amount, 0.0)))
            for cell in self.cells.spoiled.get(part, []):
                kept[cell] -= SPOILED * raised
            for place, area in self.cells.strips.get(part, []):
                places.append(place)
                pushes.append([0.5 * area * SPOILER_DRAG * raised, 0.0, 0.0])
            for place, push in self.points.get(part, []):
                places.append(place)
                pushes.append([0.5 * self.area * push * amount / 100, 0.0, 0.0])
        through = kept * np.einsum("ik,ik->i", onset, normal)
        return through, np.array(places).reshape(-1, 3), np.array(pushes).reshape(-1, 3)

    def answers(self, cases):
        """Force (x, y, z) and moment coefficients of each case, a movement and a roll.

        A movement is degrees (plus trailing edge down or left; a spoiler raised
        is minus) or percent of thrust or drag, by part. Roll is pb/2V.
        """
        made = [self._through(movement, roll) for movement, roll in cases]
        circulations = self.lattice.circulations(np.array([m[0] for m in made]).T)
        results = []
        for k, (_, roll) in enumerate(cases):
            forces = self.lattice.forces(circulations[:, k], self._onset(self.lattice.middle, roll))
            moment = lattice.moments(self.lattice.middle, forces)
            moment = moment + lattice.moments(made[k][1], made[k][2])
            force = forces.sum(axis=0) + made[k][2].sum(axis=0)
            results.append((force * 2 / self.area, moment * 2 / (self.area * self.span)))
        return results

    def movements(self, movements):
        """Roll, pitch and yaw of each movement against nothing moved, and its pb/2V."""
        small = 0.01  # of pb/2V; the roll damping is linear in it
        rows = self.answers([({}, 0.0), ({}, small)] + [(m, 0.0) for m in movements])
        still, rolled = rows[0][1], rows[1][1]
        damping = (rolled[0] - still[0]) / small
        changes = []
        for _, moment in rows[2:]:
            roll, pitch, yaw = (moment - still).tolist()
            changes.append({"roll": roll, "pitch": pitch, "yaw": yaw, "helix": -roll / damping})
        return {"damping": damping, "changes": changes}
