"""Figures from books, manuals and other programs that the second computation must give."""

import math
import sys

from demand import smooth, softened
from linkage import FourBar, Linkage
from model import read_model
from parts import chord_travel
from words import Mistake


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
