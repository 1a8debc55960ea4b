"""The fewest columns that hit every row, by an independent exact solver.

Reads {"columns": N, "rows": [[column, ...], ...]} from standard input and prints the
optimum, as scipy.optimize.milp (HiGHS) finds it. With --selftest it solves known cases and
must find wrong answers that are planted among them.
"""

import json
import sys

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix


def fewest(columns, rows):
    if not rows:
        return 0
    hits = lil_matrix((len(rows), columns))
    for i, row in enumerate(rows):
        for column in row:
            hits[i, column] = 1
    answer = milp(
        numpy.ones(columns),
        constraints=LinearConstraint(hits.tocsr(), lb=1),
        integrality=numpy.ones(columns),
        bounds=Bounds(0, 1),
    )
    if answer.status != 0:
        raise SystemExit("the solver did not finish: " + answer.message)
    chosen = [column for column in range(columns) if answer.x[column] > 0.5]
    missed = left_out(rows, chosen)
    if missed:
        raise SystemExit("the solver leaves out rows %s" % missed)
    return len(chosen)


def left_out(rows, chosen):
    return [i for i, row in enumerate(rows) if not set(row) & set(chosen)]


def disagreements(cases):
    found = []
    for columns, rows, want in cases:
        got = fewest(columns, rows)
        if got != want:
            found.append((columns, got, want))
    return found


def selftest():
    nine = [[0, 1, 2], [3, 4, 5], [6, 7, 8], [0, 3, 6], [1, 4, 7], [2, 5, 8],
            [0, 4, 8], [1, 5, 6], [2, 3, 7], [0, 5, 7], [1, 3, 8], [2, 4, 6]]
    # 5 for the nine points: Fulkerson, Nemhauser and Trotter 1974, from memory.
    right = [(3, [[0], [1], [2]], 3), (3, [[0, 1], [1, 2]], 1), (9, nine, 5), (2, [], 0)]
    wrong = [(3, [[0], [1], [2]], 2), (3, [[0, 1], [1, 2]], 2), (9, nine, 4), (9, nine, 6)]
    found = disagreements(right)
    if found:
        raise SystemExit("selftest: columns, got, want: %s" % found)
    found = disagreements(wrong)
    if len(found) != len(wrong):
        raise SystemExit("selftest: of the planted wrong answers only %s were found" % found)
    if left_out(nine, [0, 1, 2]) != [1, 2] or left_out(nine, [0, 1, 2, 3, 6]):
        raise SystemExit("selftest: a row that is left out was not found")
    print("selftest passed")


if __name__ == "__main__":
    if sys.argv[1:] == ["--selftest"]:
        selftest()
    else:
        problem = json.load(sys.stdin)
        print(fewest(problem["columns"], problem["rows"]))
