#!/usr/bin/env python3
"""A second computation of what package verify/fit searches for.

Reads one JSON document on standard input: a list of cases, each with the linkage as
written, the arm's swing at each output in degrees, the angle of the surface measured
there, and whether the pushrod's length and the horn's lean are free. Writes the minimum that SciPy's
least_squares finds for each: the sum of squares, the values, and the standard deviations
of those for readings whose own is 1 degree, by the singular values of the Jacobian.

The four-bar is solved here by the angle between the line from hinge to arm tip and the
horn (cosine law and an arc cosine), which is another way than the program's.
"""
import json
import math
import sys

import numpy as np
from scipy.optimize import least_squares

LEAST_LEAN, MOST_LEAN, FACTOR, ROD_BY_ARMS = 10.0, 170.0, 3.0, 1.0


def tip(arm, lean, crossed, swing):
    angle = math.radians(lean - swing)
    return arm * math.cos(angle), (-1 if crossed else 1) * arm * math.sin(angle)


def horn_angle(x, y, horn, rod, branch):
    d = math.hypot(x, y)
    c = (d * d + horn * horn - rod * rod) / (2 * d * horn)
    return math.atan2(y, x) + branch * math.acos(max(-1.0, min(1.0, c)))


def surface(case, arm, lean, rod, horn_deg):
    """The horn's swing at each swing of the arm, degrees."""
    g = case["linkage"]
    px, py = g["pivots"], g["offset"]
    neutral = math.radians(horn_deg)
    hx, hy = g["horn"] * math.cos(neutral), g["horn"] * math.sin(neutral)
    x0, y0 = tip(arm, lean, g["crossed"], 0)
    x0, y0 = x0 - px, y0 - py
    if rod is None:
        rod = math.hypot(hx - x0, hy - y0)
    branch = 1 if x0 * hy - y0 * hx >= 0 else -1
    out = []
    for s in case["swings"]:
        x, y = tip(arm, lean, g["crossed"], s)
        turned = neutral - horn_angle(x - px, y - py, g["horn"], rod, branch)
        out.append(math.degrees(math.remainder(turned, 2 * math.pi)))
    return np.array(out) * case["sign"], rod


def solve(case):
    g = case["linkage"]
    _, rod0 = surface(case, g["arm"], g["arm_deg"], g["pushrod"] or None, g["horn_deg"])
    measured = np.array(case["angles"])

    def values(p):
        rod, horn = g["pushrod"] or None, g["horn_deg"]
        if case["rod_free"]:
            rod = rod0 + p[2] * g["arm"]
        if case["horn_free"]:
            horn += 10 * p[-1]
        return g["arm"] * math.exp(p[0]), g["arm_deg"] + 10 * p[1], rod, horn

    def residuals(p):
        return surface(case, *values(p))[0] - measured

    edge = math.log(FACTOR)
    free = [0, 1] + [2] * case["rod_free"] + [3] * case["horn_free"]
    low = [-edge, (LEAST_LEAN - g["arm_deg"]) / 10, -ROD_BY_ARMS, (LEAST_LEAN - g["horn_deg"]) / 10]
    high = [edge, (MOST_LEAN - g["arm_deg"]) / 10, ROD_BY_ARMS, (MOST_LEAN - g["horn_deg"]) / 10]
    low, high = [low[i] for i in free], [high[i] for i in free]
    starts = [[0, 0, 0, 0], [0.3, 0, 0, 0], [-0.3, 0, 0, 0], [0, 2, 0, 0], [0, -2, 0, 0]]
    if case["horn_free"]:
        starts += [[0, 0, 0, 1.5], [0, 0, 0, -1.5]]
    best = None
    for start in starts:
        r = least_squares(residuals, [start[i] for i in free], bounds=(low, high), xtol=1e-14, ftol=1e-14, gtol=1e-14)
        if best is None or r.cost < best.cost:
            best = r
    arm, lean, rod, horn = values(best.x)
    _, singular, rows = np.linalg.svd(best.jac, full_matrices=False)
    off = np.sqrt(np.sum((rows.T / singular) ** 2, axis=1))
    return {"sum": 2 * best.cost, "arm": arm, "arm_deg": lean, "pushrod": rod or 0, "horn_deg": horn,
            "arm_off": off[0] * arm, "arm_deg_off": off[1] * 10, "horn_deg_off": off[-1] * 10 if case["horn_free"] else 0}


json.dump([solve(c) for c in json.load(sys.stdin)], sys.stdout)
