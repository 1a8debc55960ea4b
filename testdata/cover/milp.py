"""The fewest columns that hit every row, by an independent exact solver.

Reads {"columns": N, "rows": [[column, ...], ...]} from standard input and prints the
optimum, as scipy.optimize.milp (HiGHS) finds it. With --selftest it solves known cases and
must find a planted wrong answer.
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
    return int(round(answer.fun))


def selftest():
    nine = [[0, 1, 2], [3, 4, 5], [6, 7, 8], [0, 3, 6], [1, 4, 7], [2, 5, 8],
            [0, 4, 8], [1, 5, 6], [2, 3, 7], [0, 5, 7], [1, 3, 8], [2, 4, 6]]
    cases = [(3, [[0], [1], [2]], 3), (3, [[0, 1], [1, 2]], 1), (9, nine, 5), (2, [], 0)]
    for columns, rows, want in cases:
        got = fewest(columns, rows)
        if got != want:
            raise SystemExit("selftest: got %d, want %d" % (got, want))
    if fewest(9, nine) == 4:
        raise SystemExit("selftest: a planted wrong answer was not found")
    print("selftest passed")


if __name__ == "__main__":
    if sys.argv[1:] == ["--selftest"]:
        selftest()
    else:
        problem = json.load(sys.stdin)
        print(fewest(problem["columns"], problem["rows"]))
