"""The vortex lattice: horseshoes in a steady, incompressible, inviscid flow.

Axes, from the balance point: x aft, y out to starboard, z up (right-handed; x
cross y is z). The airspeed is 1 and so is the density; the air comes from ahead
and, at an incidence, from below.

Each lattice cell carries a horseshoe: a bound vortex along its quarter-chord
line and two legs that run straight aft to infinity. The air may not pass
through a cell at the middle of its three-quarter line. Moved surfaces turn the
normals of their cells, not the cells themselves, so that the circulations are
linear in the angles; the force on a bound vortex is its circulation times the
whole local velocity across it (Kutta and Joukowski), so that induced drag and
side force are in it.
"""

import numpy as np

# A cell this close to a vortex of another lifting surface feels a core and not
# a line, in parts of the semispan: legs of the wing that pass a tail plane are
# spread out by then. Common practice, no source.
CORE = 0.03

# Keeps 0/0 out on a line's own axis, where a straight vortex induces nothing.
NOTHING = 1e-18


def rolling(p, points):
    """The air's velocity at points because the model rolls at p rad a unit of time.

    Plus p is the right wing going down: the air meets the starboard wing from
    below and what is above the balance point from starboard.
    """
    velocity = np.zeros_like(points)
    velocity[:, 1] = -p * points[:, 2]
    velocity[:, 2] = p * points[:, 1]
    return velocity


def moments(points, forces):
    """Roll, pitch and yaw about the balance point of forces at points.

    Roll plus is the right wing down, pitch plus the nose up, yaw plus the nose
    right. About x (aft) the right-hand rule lifts the starboard wing, about z
    (up) it swings the tail to starboard: those two change sign.
    """
    total = np.cross(points, forces).sum(axis=0)
    return np.array([-total[0], total[1], -total[2]])


def _leg(points, start, core2):
    """Velocity at points from a unit leg that runs aft to infinity from start."""
    r = points[:, None, :] - start[None, :, :]
    aft = np.array([1.0, 0.0, 0.0])
    across = np.cross(np.broadcast_to(aft, r.shape), r)
    distance2 = np.einsum("ijk,ijk->ij", across, across)
    length = np.sqrt(np.einsum("ijk,ijk->ij", r, r)) + NOTHING
    strength = (1 + r[:, :, 0] / length) / (4 * np.pi * (distance2 + core2))
    return across * strength[:, :, None]


def _bound(points, start, end, core2):
    """Velocity at points from a unit straight vortex from start to end."""
    r0 = end - start
    r1 = points[:, None, :] - start[None, :, :]
    r2 = points[:, None, :] - end[None, :, :]
    across = np.cross(r1, r2)
    area2 = np.einsum("ijk,ijk->ij", across, across)
    unit1 = r1 / (np.linalg.norm(r1, axis=2, keepdims=True) + NOTHING)
    unit2 = r2 / (np.linalg.norm(r2, axis=2, keepdims=True) + NOTHING)
    along = np.einsum("jk,ijk->ij", r0, unit1 - unit2)
    core = core2 * np.einsum("jk,jk->j", r0, r0)[None, :]
    return across * (along / (4 * np.pi * (area2 + core)))[:, :, None]


class Lattice:
    """Cells with their influence on each other, ready to be asked.

    start, end    ends of the bound vortices, (n, 3)
    control       where the air may not pass through, (n, 3)
    normal        across each cell, either way, length 1, (n, 3)
    group         the lifting surface of each cell, (n,) integers
    core          radius of the core between groups
    """

    def __init__(self, start, end, control, normal, group, core):
        self.start, self.end, self.control, self.normal = start, end, control, normal
        self.middle = (start + end) / 2
        self.core2 = np.where(group[:, None] == group[None, :], 0.0, core * core) + NOTHING
        through = self._influence(control)
        self.matrix = np.einsum("ijk,ik->ij", through, normal)
        self.at_middle = self._influence(self.middle)

    def _influence(self, points):
        """Velocity at one point a cell from each unit horseshoe, (n, n, 3)."""
        return (_bound(points, self.start, self.end, self.core2)
                + _leg(points, self.end, self.core2) - _leg(points, self.start, self.core2))

    def circulations(self, through):
        """Circulations that stop the air passing through the cells.

        through is the speed along the normals without the lattice, one column
        for each case.
        """
        return np.linalg.solve(self.matrix, -through)

    def forces(self, circulation, onset):
        """The force on each bound vortex; onset is the air's velocity there, (n, 3)."""
        velocity = onset + np.einsum("ijk,j->ik", self.at_middle, circulation)
        return circulation[:, None] * np.cross(velocity, self.end - self.start)
