#!/usr/bin/env python3
"""A second computation of the chain from the pilot's hand to the trailing edge.

It reads an airframe file and a stream of poses, and works out every demand,
channel and part from the two texts that say what the file means (the file's
reference page and the package comment of the core) and from nothing else. It
shares no code and, where there was a choice, no method with the program it is
compared with: the four-bar is tracked from neutral by a safeguarded Newton
iteration on the loop-closure equation, the smooth curve is evaluated by de
Casteljau's construction.

    recompute.py AIRFRAME.yaml < poses.jsonl > results.jsonl
    recompute.py --selftest

A pose is one line of JSON:

    {"position": {"roll stick": 37.5, "rate switch": "high", "roll trim": -20},
     "signal_lost": false}

A control left out is at rest. "held": {"3": 12.5} may say what output a
channel had before the signal was lost; otherwise it is the output of the pose.
Only the steady state is computed: fades have ended, slow channels have arrived.

A result is one line of JSON with "demands", "channels" (sum, output, pulse) and
"parts" (angle and travel of the trailing edge, or amount), by their names.

Signs: trailing edge down and left are positive; a wheel that turns the rolling
model left is positive. Angles are degrees, pulses microseconds, the rest
percent.
"""

import json
import sys

sys.dont_write_bytecode = True  # nothing is left beside these files

import model
import selftest
import words


def main(arguments):
    if arguments == ["--selftest"]:
        return 1 if selftest.selftest() else 0
    if len(arguments) != 1:
        print(__doc__, file=sys.stderr)
        return 2
    try:
        with open(arguments[0], encoding="utf-8") as stream:
            read = model.read_model(stream)
        for line in sys.stdin:
            print(json.dumps(read.at(json.loads(line))))
    except words.Mistake as mistake:
        print(f"recompute.py: {mistake}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
