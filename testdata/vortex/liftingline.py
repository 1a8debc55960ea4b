"""Prandtl's lifting line by Glauert's sine series: a second opinion for the lattice.

The series is fitted by projection on its own terms, not at single points, so
that an aileron's ends cost no accuracy. Places along the span are in semispans,
incidences in radians; sections lift 2π a radian. Plus roll is the right wing
down, as everywhere here.
"""

import math

import numpy as np

TERMS = 60
POINTS = 40000  # of the quadrature, over half the wing


def rolling_moment(aspect, chord, incidence):
    """Roll coefficient (by area and span) of an antisymmetric incidence.

    chord(y) is in any unit, y from 0 to 1; incidence(y) belongs to starboard and
    is the other way to port. More incidence to starboard rolls left.
    """
    step = math.pi / 2 / POINTS
    theta = (np.arange(POINTS) + 0.5) * step
    places, sine = np.cos(theta), np.sin(theta)
    chords = np.array([chord(y) for y in places])
    mean = float(chords @ sine) * step
    # Section slope times chord over four spans; the mean chord is span over aspect.
    mu = 2 * math.pi * chords / mean / (4 * aspect)
    orders = 2 * np.arange(1, TERMS + 1)
    sines = np.sin(np.outer(orders, theta))
    terms = sines.T * (sine[:, None] + np.outer(mu, orders))
    wanted = mu * sine * np.array([incidence(y) for y in places])
    series = np.linalg.solve(sines @ terms, sines @ wanted)
    return -math.pi * aspect * series[0] / 4


def damping(aspect, chord):
    """Roll coefficient for a pb/2V of 1."""
    return rolling_moment(aspect, chord, lambda y: y)


def helix(aspect, chord, effectiveness, start, end):
    """pb/2V for a radian of both ailerons, starboard up and port down."""
    up = rolling_moment(aspect, chord, lambda y: -effectiveness if start < y < end else 0.0)
    return -up / damping(aspect, chord)
