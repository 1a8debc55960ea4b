"""The lattice against what others have found, before anyone relies on it.

A lattice is a lifting surface, so that it should meet the lifting line at large
aspect ratios and fall below it at small ones; each tolerance says how far.
"""

import math

import liftingline
import model
import surfaces

# The lifting line's own series against figures computed with another library:
# their last digit.
SERIES, SERIES_HELIX = 2e-4, 2.5e-3

# A lattice of a rectangle against Helmbold's slope, which is fitted to elliptic
# wings: a rectangle has less.
HELMBOLD = 0.07

# Lattice against lifting line at aspect ratio 6, where a lifting surface is
# damped less, and at 40, where they nearly agree.
AT_SIX, AT_FORTY = 0.16, 0.03

# pb/2V at aspect ratio 6: less damping shows more than less moment, because the
# ailerons are short and far out.
HELIX = 0.10

# A hinged quarter chord of a very long wing against thin-aerofoil theory: eight
# cells along the chord cannot show the peak at the hinge. With sixteen it is
# half as far off.
HINGED = 0.06


class Report:
    """Prints each comparison and counts those that fail."""

    def __init__(self):
        self.failed = 0

    def near(self, what, got, want, part):
        good = abs(got - want) <= part * abs(want)
        self.failed += not good
        mark = "ok " if good else "BAD"
        print(f"{mark} {what}: {got:.4f}, wanted {want:.4f} within {100 * part:.3g} %"
              f" (it is {100 * (got / want - 1):+.2f} %)")

    def holds(self, what, good):
        self.failed += not good
        print(("ok " if good else "BAD"), what)


def wing(aspect, chord, controls=()):
    """A wing of semispan 1 whose chord(y) is scaled to the aspect ratio, on a straight quarter line."""
    mean = sum(chord((k + 0.5) / 2000) for k in range(2000)) / 2000
    scale = 2 / aspect / mean
    stations = [math.sin(math.pi / 2 * k / 24) for k in range(24)] + [1.0]
    halves = []
    for side, name in ((-1, "port"), (1, "starboard")):
        sections = [{"aft": -0.25 * scale * chord(y), "out": side * y, "up": 0.0, "chord": scale * chord(y)}
                    for y in stations]
        mine = [dict(c, part=f'{name} {c["part"]}') for c in controls]
        for c in mine:
            c["chord"] *= scale
        halves.append({"name": name + " wing", "group": "wing", "sections": sections, "controls": mine})
    return {"span": 2.0, "area": 4 / aspect, "incidence_deg": 0.0, "halves": halves}


def rectangle(_):
    return 1.0


def half_taper(y):
    return 1 - y / 2


def ellipse(y):
    return math.sqrt(max(1 - y * y, 4e-4))


def lift_slope(aspect):
    given = wing(aspect, rectangle)
    lifts = []
    for degrees in (0.0, 1.0):
        given["incidence_deg"] = degrees
        force, _ = model.Model(given).answers([({}, 0.0)])[0]
        turn = math.radians(degrees)
        lifts.append(force[2] * math.cos(turn) - force[0] * math.sin(turn))
    return (lifts[1] - lifts[0]) / math.radians(1.0)


def lift_slopes(report):
    # Helmbold's equation: formula from memory, values computed.
    for aspect, helmbold in ((4, 3.8832), (6, 4.5287), (8, 4.9058), (10, 5.1510)):
        report.near(f"lift slope of a rectangle, A = {aspect}, Helmbold", lift_slope(aspect), helmbold, HELMBOLD)
    report.near("lift slope of a slender rectangle, A = 0.05, R. T. Jones's πA/2 (from memory)",
                lift_slope(0.05), math.pi * 0.05 / 2, 0.04)
    report.near("lift slope of a very long rectangle, 2π", lift_slope(1000), 2 * math.pi, 0.02)


def damping_and_helix(report):
    # The wanted figures at A = 6 were computed with a general-purpose numerical library.
    shapes = (("ellipse", ellipse, -0.4712), ("rectangle", rectangle, -0.5233), ("taper 0.5", half_taper, -0.4866))
    for name, chord, wanted in shapes:
        line = liftingline.damping(6, chord)
        report.near(f"Clp of the lifting line, {name}, A = 6", line, wanted, SERIES)
        got = model.Model(wing(6, chord)).movements([])["damping"]
        report.near(f"Clp of the lattice, {name}, A = 6, lifting line", got, wanted, AT_SIX)
        report.holds(f"… and a lifting surface is damped less than a lifting line ({got:.4f})", abs(got) < abs(wanted))
        report.near(f"Clp of the lattice, {name}, A = 40, lifting line",
                    model.Model(wing(40, chord)).movements([])["damping"], liftingline.damping(40, chord), AT_FORTY)
    tau = 1 / 3 + math.sqrt(3) / (2 * math.pi)  # Glauert, R&M 1095: a hinged quarter chord
    report.near("pb/2V of the lifting line", liftingline.helix(6, rectangle, tau, 0.6, 0.95), 0.514, SERIES_HELIX)
    aileron = [{"part": "aileron", "from": 0.6, "to": 0.95, "chord": 0.25, "moves": "down"}]
    both = {"port aileron": 1.0, "starboard aileron": -1.0}
    change = model.Model(wing(6, rectangle, aileron)).movements([both])["changes"][0]
    report.near("pb/2V per radian of the lattice, ailerons 60 to 95 %, lifting line",
                change["helix"] / math.radians(1), 0.514, HELIX)
    flap = [{"part": "flap", "from": 0.0, "to": 1.0, "chord": 0.25, "moves": "down"}]
    long = model.Model(wing(1000, rectangle, flap))
    rows = long.answers([({}, 0.0), ({"port flap": 1.0, "starboard flap": 1.0}, 0.0)])
    report.near("lift of a hinged quarter chord against all of it, τ",
                (rows[1][0][2] - rows[0][0][2]) / math.radians(1) / lift_slope(1000), tau, HINGED)


def plain_aeroplane():
    """An aeroplane with ailerons, a tail plane with elevator, and a fin with rudder; semispan 1."""
    halves = []
    for side, name in ((-1, "port"), (1, "starboard")):
        halves.append({"name": name + " wing", "group": "wing",
                       "sections": [{"aft": -0.08, "out": side * y, "up": 0.0, "chord": 0.3} for y in (0, 1)],
                       "controls": [{"part": name + " aileron", "from": 0.55, "to": 0.95, "chord": 0.07, "moves": "down"}],
                       "spoilers": [{"part": name + " spoiler", "from": 0.3, "to": 0.5}]})
        halves.append({"name": name + " tail", "group": "tail",
                       "sections": [{"aft": 0.75, "out": side * y, "up": 0.03, "chord": 0.2} for y in (0.005, 0.3)],
                       "controls": [{"part": "elevator", "from": 0.0, "to": 0.295, "chord": 0.08, "moves": "down"}]})
    halves.append({"name": "fin", "group": "fin",
                   "sections": [{"aft": 0.75, "out": 0.0, "up": z, "chord": 0.2} for z in (0.04, 0.25)],
                   "controls": [{"part": "rudder", "from": 0.0, "to": 0.21, "chord": 0.08, "moves": "left"}]})
    points = [{"part": "port motor", "aft": -0.2, "out": -0.35, "up": 0.0, "pushes": "thrust"},
              {"part": "starboard brake", "aft": 0.0, "out": 0.9, "up": 0.0, "pushes": "drag"}]
    return {"span": 2.0, "area": 0.6, "incidence_deg": 4.0, "halves": halves, "points": points}


def senses(report):
    # Roll right, right wing down; rearward, nose up; right pedal, nose right: 14 CFR 23.779
    # and the FAA Airplane Flying Handbook, ch. 3, p. 3-2. The surfaces: left roll, left aileron
    # up and right aileron down (AOPA Air Safety Institute, July 2024); stick forward, elevator
    # down; stick left, rudder left (LMMAC and WMAC club lists). The last four: common practice,
    # no source.
    expected = (
        ("left aileron up, right aileron down", {"port aileron": -5, "starboard aileron": 5}, "roll", -1),
        ("right aileron up", {"starboard aileron": -5}, "roll", 1),
        ("elevator down", {"elevator": 5}, "pitch", -1),
        ("elevator up", {"elevator": -5}, "pitch", 1),
        ("rudder left", {"rudder": 5}, "yaw", -1),
        ("rudder right", {"rudder": -5}, "yaw", 1),
        ("right spoiler raised, roll", {"starboard spoiler": -30}, "roll", 1),
        ("right spoiler raised, yaw", {"starboard spoiler": -30}, "yaw", 1),
        ("port motor harder", {"port motor": 50}, "yaw", 1),
        ("starboard brake out", {"starboard brake": 50}, "yaw", 1),
    )
    plain = model.Model(plain_aeroplane())
    changes = plain.movements([movement for _, movement, _, _ in expected])["changes"]
    for (name, _, axis, sign), change in zip(expected, changes):
        report.holds(f"{name}: {axis} {change[axis]:+.5f}", sign * change[axis] > 1e-4)
    level = plain.movements([{"elevator": 5}])["changes"][0]
    report.holds("the elevator neither rolls nor yaws", max(abs(level["roll"]), abs(level["yaw"])) < 1e-9)


def refusals(report):
    crossed = plain_aeroplane()
    crossed["halves"][4]["controls"][0]["moves"] = "down"
    unknown = plain_aeroplane()
    for what, act in (("a rudder that moves down", lambda: model.Model(crossed)),
                      ("a part that is not there", lambda: model.Model(unknown).movements([{"fin": 5}]))):
        try:
            act()
        except surfaces.Mistake as mistake:
            report.holds(f"refused: {what}: {mistake}", True)
        else:
            report.holds(f"refused: {what}", False)


def run():
    report = Report()
    for check in (lift_slopes, damping_and_helix, senses, refusals):
        check(report)
    print(f"{report.failed} failed")
    return 1 if report.failed else 0
