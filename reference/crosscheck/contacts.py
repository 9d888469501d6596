"""Holds our sums of contacts against sums of another make; with --bench, the speed of the journal bearing.

Start at `main`. Our answers come from the example `contacts` of the crate tribology, a line each. No library at hand has these sums, so
the journal bearing is solved here in another way (a plain grid, and a general optimiser of scipy that keeps the pressure from falling
below nought), and the formulas of rolling bearings and of hard contacts are written once more. The largest relative difference of each
is printed and must stay below its bound.
"""

import math
import os
import random
import subprocess
import sys
import time
from pathlib import Path

# Vectors of a few thousand numbers are added up sooner by one thread than by threads that wait for each other.
os.environ["OPENBLAS_NUM_THREADS"] = "1"

import numpy as np
from scipy import sparse
from scipy.optimize import Bounds, minimize

SEED = 281
ROOT = Path(__file__).resolve().parent.parent.parent
PROGRAM = ["cargo", "run", "--quiet", "--locked", "--package", "tribology", "--example", "contacts"]

# No film from the widest gap reaches as far as this; `on_grid` sees to it that none did.
END = 1.5 * math.pi
# Steps round the bearing, and from its middle to the end face, of the coarser of two grids.
COARSE = (120, 15)
# What the optimiser may leave of the gradient where pressure is above nought, as a part of the largest load of a node.
LEFT = 1e-5


def stiffness(weights, step):
    """The matrix of -d/dx(w d/dx), for weights between the nodes, times the step; ends that are held have no row."""
    return sparse.diags_array([-weights[1:-1], weights[:-1] + weights[1:], -weights[1:-1]], offsets=[-1, 0, 1]) / step


def optimum(matrix, load):
    """The p >= 0 for which p K p / 2 - f p is least, by L-BFGS-B in variables that make the diagonal one."""
    scale = 1 / np.sqrt(matrix.diagonal())
    matrix = (sparse.diags_array(scale) @ matrix @ sparse.diags_array(scale)).tocsr()
    load = scale * load

    def energy(p):
        force = matrix @ p
        return 0.5 * (p @ force) - load @ p, force - load

    # A short memory: each step of it costs more than a step more.
    options = {"maxiter": 20_000, "maxfun": 20_000, "maxcor": 4, "ftol": 0.0, "gtol": 0.1 * LEFT * np.abs(load).max()}
    start = np.zeros_like(load)
    found = minimize(energy, start, jac=True, method="L-BFGS-B", bounds=Bounds(0, np.inf), options=options).x
    slope = energy(found)[1]
    left = max(np.abs(slope[found > 0]).max(), -slope.min()) / np.abs(load).max()
    if not left <= LEFT:
        raise ArithmeticError(f"the optimiser left {left:.1e} of the gradient")
    return scale * found


def on_grid(ratio, eccentricity, around, along):
    """Sommerfeld number, attitude in degrees, side flow over R C N L: five-point differences on even steps of the angle and the length."""
    step, rise = END / around, 1 / along
    theta = step * np.arange(1, around)
    between = 1 + eccentricity * np.cos(step * (np.arange(around) + 0.5))
    cube = (1 + eccentricity * np.cos(theta)) ** 3
    # The first node along the bearing is its middle, where the other half is the same; the end face is held.
    width = rise * np.where(np.arange(along) == 0, 0.5, 1.0)
    lengthwise = stiffness(np.ones(along + 1), rise).tolil()
    lengthwise[0, 0] /= 2
    matrix = sparse.kron(stiffness(between**3, step), sparse.diags_array(width))
    matrix += sparse.kron(sparse.diags_array(step * cube), lengthwise) / ratio**2
    pressure = optimum(matrix, np.kron(between[:-1] - between[1:], width)).reshape(around - 1, along)
    if pressure[-1].any():
        raise ArithmeticError("the film reaches the end of the grid")
    across, centres = step * np.sin(theta) @ pressure @ width, -step * np.cos(theta) @ pressure @ width
    fall = (18 * pressure[:, -1] - 9 * pressure[:, -2] + 2 * pressure[:, -3]) / (6 * rise)
    side = math.pi * step * (cube @ fall) / ratio**2
    return np.array([1 / (6 * math.pi * math.hypot(across, centres)), math.degrees(math.atan2(across, centres)), side])


def bearing(ratio, eccentricity, coarse=COARSE):
    """What two grids point to, of which the finer has half the step."""
    around, along = coarse
    rough, fine = on_grid(ratio, eccentricity, around, along), on_grid(ratio, eccentricity, 2 * around, 2 * along)
    return list(fine + (fine - rough) / 3)


def bearings(chance):
    """The corners of what is asked, and six between."""
    corners = [(ratio, eccentricity) for ratio in (0.25, 1.0) for eccentricity in (0.2, 0.9)]
    inside = [(chance.uniform(0.25, 1.0), chance.uniform(0.2, 0.9)) for _ in range(6)]
    return [(f"reynolds {ratio!r} {eccentricity!r}", bearing(ratio, eccentricity)) for ratio, eccentricity in corners + inside]


def or_at(steps, chance, number):
    """One in ten times a number at which a formula passes into another, where a branch taken wrongly shows."""
    return chance.choice(steps) if chance.random() < 0.1 else number


def adequate(chance):
    """Viscosity at which a rolling bearing's film is just adequate, from ISO 281, in mm2/s, rpm and mm."""
    rpm, pitch = or_at([999.9, 1000.0], chance, 10 ** chance.uniform(1, 4.3)), 10 ** chance.uniform(1.2, 2.7)
    factor, power = (45_000, -0.83) if rpm < 1000 else (4500, -0.5)
    return f"adequate {rpm!r} {pitch!r}", [factor * rpm**power * pitch**-0.5]


def modification(balls, divisor, kappa, asked):
    """The life modification of ISO 281. More than 4 counts as 4; the factor is 50 at most."""
    kappa = min(kappa, 4.0)
    if kappa < 0.4:
        power, factor = 0.054381, 2.2649 if balls else 1.3993
    else:
        power, factor = 0.19087 if kappa < 1 else 0.071739, 1.9987 if balls else 1.2348
    inner, load = (2.5671 if balls else 1.5859) - factor / kappa**power, asked / divisor
    bracket = 1 - (inner**0.83 * load ** (1 / 3) if balls else inner * load**0.4)
    return min(50.0, 0.1 * bracket ** (-9.3 if balls else -9.185)) if bracket > 0 else 50.0


# Whether it has balls, and what its load is divided by.
CLASSES = {
    "radial-ball": (True, 1.0),
    "radial-roller": (False, 1.0),
    "thrust-ball": (True, 3.0),
    "thrust-roller": (False, 2.5),
}


def life(chance):
    name = chance.choice(list(CLASSES))
    kappa, load = or_at([0.4, 1.0, 4.0], chance, 10 ** chance.uniform(-0.99, 0.7)), 10 ** chance.uniform(-3, 0.3)
    return f"life {name} {kappa!r} {load!r}", [modification(*CLASSES[name], kappa, load)]


def oil_and_bodies(chance):
    """Speed, viscosity, pressure-viscosity coefficient, reduced modulus and radius, in SI units."""
    modulus, radius = chance.uniform(1e11, 2.4e11), 10 ** chance.uniform(-3, -1)
    return 10 ** chance.uniform(-2, 1), 10 ** chance.uniform(-2.5, 0), chance.uniform(1e-8, 3e-8), modulus, radius


def line_film(chance):
    """Dowson and Higginson's film of a contact along a line."""
    speed, viscosity, alpha, modulus, radius = bodies = oil_and_bodies(chance)
    load = 10 ** chance.uniform(3, 6)
    u, g, w = viscosity * speed / (modulus * radius), alpha * modulus, load / (modulus * radius)
    thinnest, middle = 2.65 * u**0.7 * g**0.54 * w**-0.13, 3.06 * u**0.69 * g**0.56 * w**-0.10
    return f"line {said(*bodies, load)}", [radius * thinnest, radius * middle]


def point_film(chance):
    """Hamrock and Dowson's film of a contact at a point."""
    speed, viscosity, alpha, modulus, radius = bodies = oil_and_bodies(chance)
    other, load = radius * chance.uniform(1.0, 20.0), 10 ** chance.uniform(0, 3)
    u, g, w = viscosity * speed / (modulus * radius), alpha * modulus, load / (modulus * radius**2)
    k = 1.03 * (other / radius) ** 0.64
    thinnest = 3.63 * u**0.68 * g**0.49 * w**-0.073 * (1 - math.exp(-0.68 * k))
    middle = 2.69 * u**0.67 * g**0.53 * w**-0.067 * (1 - 0.61 * math.exp(-0.73 * k))
    return f"point {said(*bodies, other, load)}", [radius * thinnest, radius * middle]


def said(*numbers):
    return " ".join(repr(number) for number in numbers)


def each(count, make):
    return lambda chance: [make(chance) for _ in range(count)]


POWERS = "the same formula; powers of two libraries"
ENDING = "the edge of the film goes by whole steps here, which two grids do not take out"
SIDE = "the same; taken from three pressures at the end face"
# Name, what makes the cases, and for each number of an answer its name, bound and the reason for it.
SUMS = [
    ("journal bearing", bearings, [("S", 5e-4, ENDING), ("attitude", 5e-4, ENDING), ("side flow", 1e-4, SIDE)]),
    ("adequate viscosity", each(100, adequate), [("viscosity", 1e-13, POWERS)]),
    ("life modification, four classes", each(100, life), [("a", 1e-12, POWERS + ", the ninth of a difference")]),
    ("film along a line", each(50, line_film), [("thinnest", 1e-13, POWERS), ("middle", 1e-13, POWERS)]),
    ("film at a point", each(50, point_film), [("thinnest", 1e-13, POWERS), ("middle", 1e-13, POWERS)]),
]


def answers(lines, release=False):
    """The numbers of each line, from the example."""
    program = [*PROGRAM[:3], *(["--release"] if release else []), *PROGRAM[3:]]
    asked = "\n".join(lines) + "\n"
    done = subprocess.run(program, input=asked, capture_output=True, text=True, cwd=ROOT, check=True)
    return [[float(word) for word in line.split()] for line in done.stdout.split("\n")[: len(lines)]]


def check():
    chance = random.Random(SEED)
    cases = [(name, numbers, *case) for name, make, numbers in SUMS for case in make(chance)]
    worst, failed = {}, 0
    for (name, numbers, line, theirs), ours in zip(cases, answers([case[2] for case in cases]), strict=True):
        if len(ours) != len(theirs):
            failed += 1
            print(f"no answer to {line}, where the other sum says {theirs}")
            continue
        for (number, _, _), here, there in zip(numbers, ours, theirs, strict=True):
            apart = abs(here - there) / abs(there)
            apart = math.inf if math.isnan(apart) else apart
            if apart >= worst.get((name, number), (0.0, ""))[0]:
                worst[name, number] = (apart, f"{line}: ours {here:.9g}, theirs {there:.9g}")
    print(f"{len(cases)} cases of contacts, seed {SEED}")
    for name, _, numbers in SUMS:
        count = sum(case[0] == name for case in cases)
        for number, bound, why in numbers:
            apart, where = worst.get((name, number), (math.inf, "no answer at all"))
            print(f"{name}: {number}, {count} cases, largest relative difference {apart:.1e}, bound {bound:g} ({why})")
            if not apart <= bound:
                failed += 1
                print(f"    beyond the bound at {where}")
    return 1 if failed else 0


def bench():
    """One bearing: our full solution beside the one here, and beside our fit, each as a ratio in one run."""
    ratio, eccentricity = 1.0, 0.6
    at = f"{ratio} {eccentricity}"
    asked = [f"time-reynolds {at} 20", f"time-fast {at} 200000", f"reynolds {at}", f"fast {at}"]
    [full], [fit], solved, fitted = answers(asked, release=True)
    began = time.perf_counter()
    theirs = bearing(ratio, eccentricity)
    here = time.perf_counter() - began
    apart = max(abs(a / b - 1) for a, b in zip(solved, theirs, strict=True))
    print(f"a journal bearing, L/D {ratio}, eccentricity {eccentricity}: ours {full * 1e3:.1f} ms, scipy's L-BFGS-B {here * 1e3:.0f} ms,")
    print(f"apart by {apart:.1e} at most, ratio {here / full:.0f}")
    apart = max(abs(a / b - 1) for a, b in zip(fitted, solved, strict=True))
    print(f"our fit of such solutions {fit * 1e6:.2f} us, apart from the full one by {apart:.1e} at most, ratio {full / fit:.0f}")
    return 0


if __name__ == "__main__":
    sys.exit(bench() if "--bench" in sys.argv else check())
