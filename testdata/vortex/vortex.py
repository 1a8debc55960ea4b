#!/usr/bin/env python3
"""What each moved surface does to a model, by a vortex lattice.

It shares nothing with the program that it is compared with: no strips, no lift
slopes, no rule for which way a force points. Where a trailing edge goes turns
the lattice's boundary condition, and moments are sums of place cross force.

    vortex.py < description.json > result.json
    vortex.py --selftest

A description, lengths in any one unit, places from the balance point:

    {"span": 2, "area": 0.6, "incidence_deg": 4,
     "halves": [{"name": "starboard wing", "group": "wing",
                 "sections": [{"aft": -0.1, "out": 0, "up": 0, "chord": 0.3}, …],
                 "controls": [{"part": "starboard aileron", "from": 0.55, "to": 0.95,
                               "chord": 0.08, "moves": "down"}],
                 "spoilers": [{"part": "starboard spoiler", "from": 0.3, "to": 0.5}]}],
     "points": [{"part": "port motor", "aft": -0.3, "out": -0.35, "up": 0, "pushes": "thrust"}],
     "movements": [{"starboard aileron": -5}, {"port motor": 50}]}

A section's place is its leading edge's, root first; from and to are along the
span from the root. Halves of one group meet edge to edge; between groups a
vortex has a core. Angles are degrees, plus for a trailing edge that goes the
way that "moves" says (down, or left seen from behind); a raised spoiler is
minus. Points push forward (thrust) or aft (drag) by percent.

The result: "damping", the roll moment for a pb/2V of 1, and "changes", for each
movement roll, pitch, yaw (moment over dynamic pressure, area and span; right
wing down, nose up, nose right) against nothing moved, and "helix", the pb/2V at
which the model would roll steadily, plus to the right.
"""

import json
import sys

try:
    import numpy  # noqa: F401
except ImportError:
    sys.exit("vortex.py: the numpy module is missing (Debian: python3-numpy)")

import model
import selftest
import surfaces


def main(arguments):
    if arguments == ["--selftest"]:
        return selftest.run()
    if arguments:
        print(__doc__, file=sys.stderr)
        return 2
    try:
        given = json.load(sys.stdin)
        result = model.Model(given).movements(given["movements"])
        json.dump(result, sys.stdout, allow_nan=False)
    except (surfaces.Mistake, KeyError, ValueError) as mistake:
        print(f"vortex.py: {mistake!r}", file=sys.stderr)
        return 3
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
