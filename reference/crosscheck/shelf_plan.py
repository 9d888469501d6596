"""Holds our fewest oils against HiGHS on shops drawn by chance; with --bench, the speed of both on a large one.

Start at `main`. The shops and our answers come from the example `shelf_plan` of the crate advice. For HiGHS (scipy.optimize.milp) the same
sum is written as it is told in ARCHITECTURE.md, without our merging of oils: an oil is chosen or not; for each place and each step of harm
the step is paid for unless an oil below it is chosen; every place that any oil may serve gets one; no more than k are chosen. Equal rows
are added up, as HiGHS would do by itself. Both must come to the same harm for every k.
"""

import subprocess
import sys
import time
from pathlib import Path

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix

ROOT = Path(__file__).resolve().parent.parent.parent
PROGRAM = ["cargo", "run", "--quiet", "--locked", "--package", "advice", "--example", "shelf_plan"]
# Points, oils, seed, where the bands of body end.
SMALL = [(points, oils, seed, edges) for points, oils in ((30, 10), (80, 24)) for seed in (1, 2, 3) for edges in ("alike", "odd")]
LARGE = (5000, 200, 1)
# Beyond this HiGHS is stopped and its own gap is told.
SECONDS = 60


def planned(points, oils, seed, edges, most, *, release=False):
    """Our answer: the rows, the harm and bound for each number of oils, and the seconds."""
    program = [*PROGRAM[:3], "--release", *PROGRAM[3:]] if release else PROGRAM
    asked = [str(word) for word in (points, oils, seed, edges, most, "rows")]
    done = subprocess.run([*program, "--", *asked], capture_output=True, text=True, cwd=ROOT, check=True)
    lines = [line.split() for line in done.stdout.splitlines()]
    rows = [[int(harm) for harm in line[1:]] for line in lines if line[0] == "row"]
    choices = {int(line[1]): (int(line[2]), int(line[3])) for line in lines if line[0] == "choice"}
    few = [int(line[1]) for line in lines if line[0] == "few"]
    merged = next(line[1:] for line in lines if line[0] == "merged")
    seconds = next(float(line[1]) for line in lines if line[0] == "seconds")
    return rows, choices, few, merged, seconds


class Program:
    """The sum as a mixed-integer program; only the number of oils changes."""

    def __init__(self, rows):
        paid, musts, self.base = {}, set(), 0
        for row in rows:
            levels = sorted({harm for harm in row if harm >= 0})
            if not levels:
                continue
            self.base += levels[0]
            for level, higher in zip(levels, levels[1:]):
                below = tuple(oil for oil, harm in enumerate(row) if 0 <= harm <= level)
                paid[below] = paid.get(below, 0) + higher - level
            musts.add(tuple(oil for oil, harm in enumerate(row) if harm >= 0))
        self.oils = len(rows[0])
        wishes = [*paid, *musts]
        count = self.oils + len(paid)
        table = lil_matrix((len(wishes) + 1, count))
        for number, below in enumerate(wishes):
            table[number, list(below)] = 1
            if number < len(paid):
                table[number, self.oils + number] = 1
        table[len(wishes), : self.oils] = 1
        self.table = table.tocsr()
        self.price = numpy.concatenate([numpy.zeros(self.oils), numpy.array(list(paid.values()), dtype=float)])
        self.whole = numpy.concatenate([numpy.ones(self.oils), numpy.zeros(len(paid))])

    def solve(self, k):
        """The least harm of k oils with its bound; nothing where k are too few."""
        low = numpy.concatenate([numpy.ones(self.table.shape[0] - 1), [0]])
        high = numpy.concatenate([numpy.full(self.table.shape[0] - 1, numpy.inf), [k]])
        options = {"time_limit": SECONDS, "mip_rel_gap": 0}
        found = milp(
            self.price, constraints=LinearConstraint(self.table, low, high), integrality=self.whole, bounds=Bounds(0, 1), options=options
        )
        if found.status == 2:
            return None
        harm = None if found.x is None else self.base + round(found.fun)
        return harm, self.base + found.mip_dual_bound


def check():
    compared, failed = 0, 0
    for shop in SMALL:
        rows, choices, few, _, _ = planned(*shop, most=shop[1])
        program = Program(rows)
        best = None
        for k in range(1, max(choices) + 1):
            best = choices.get(k, (best, best))[0]
            theirs = program.solve(k)
            theirs = None if theirs is None else theirs[0]
            compared += 1
            if theirs != best or (theirs is None) != (k in few):
                failed += 1
                print(f"{shop}, {k} oils: ours {best}, HiGHS {theirs}")
            if k in choices and choices[k][0] != choices[k][1]:
                failed += 1
                print(f"{shop}, {k} oils: ours is not proven, {choices[k]}")
    print(f"{len(SMALL)} shops, {compared} numbers of oils: {failed} differ from HiGHS or are not proven")
    return 1 if failed else 0


def bench():
    """A shop of 5,000 points and 200 oils, every number of oils that does less harm than the one before: ours beside HiGHS."""
    for edges, most in (("alike", 200), ("odd", 8)):
        rows, choices, _, merged, ours = planned(*LARGE, edges, most, release=True)
        program = Program(rows)
        began = time.perf_counter()
        theirs = {k: program.solve(k) for k in choices}
        seconds = time.perf_counter() - began
        points, oils, seed = LARGE
        print(f"{points} points by {oils} oils, seed {seed}, {edges}; {merged[0]} wishes and {merged[1]} oils are left after merging")
        for k, (harm, bound) in choices.items():
            state = "proven" if harm == bound else f"not proven, at most {harm - bound} better"
            print(f"    {k} oils: ours {harm} ({state}), HiGHS {theirs[k][0]} (bound {theirs[k][1]:.0f})")
        print(f"    seconds for all of them: ours {ours:.2f}, HiGHS {seconds:.2f} (at most {SECONDS} each), ratio {seconds / ours:.0f}")
    return 0


if __name__ == "__main__":
    sys.exit(bench() if "--bench" in sys.argv else check())
