"""Holds two thousand seeded cases of our oil sums against other libraries; with --bench, their speed.

Start at `main`. Our answers come from the example `oils` of the crate tribology, a line each. The libraries are chemicals (viscosity
index, Saybolt, Redwood, Engler), fluids (dynamic viscosity) and tribology (viscosity at a temperature). The largest relative
difference of each sum is printed and must stay below its bound. Where two methods differ by design the bound says by how much.
"""

import importlib.util
import random
import subprocess
import sys
import time
from pathlib import Path

from chemicals.viscosity import viscosity_converter, viscosity_index
from fluids.core import nu_mu_converter

SEED = 1886
ROOT = Path(__file__).resolve().parent.parent.parent
PROGRAM = ["cargo", "run", "--quiet", "--locked", "--package", "tribology", "--example", "oils"]


def lubrication():
    """The one module that is needed, without those beside it that want to draw."""
    package = importlib.util.find_spec("tribology").submodule_search_locations[0]
    spec = importlib.util.spec_from_file_location("lubrication", Path(package) / "lubrication.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


WALTHER = lubrication().walther


def viscosity_case(chance):
    """A line of an oil that stays above 4 mm2/s: below, that library has ten for e in a term of Z that is not yet gone."""
    v40 = 10 ** chance.uniform(1.2, 3.5)
    v100 = max(4.0, v40 ** chance.uniform(0.45, 0.6))
    t = chance.uniform(-20, 100)
    return f"viscosity 40 {v40!r} 100 {v100!r} {t!r}", WALTHER(40, v40, 100, v100, t)


def index_case(chance):
    v100 = 10 ** chance.uniform(0.31, 2.2)
    v40 = v100 ** chance.uniform(1.6, 2.1)
    return f"index {v40!r} {v100!r}", viscosity_index(v40 * 1e-6, v100 * 1e-6)


def v100_case(chance):
    """Their index of a pair, from which we find the second of the pair again; away from the step at 70 mm2/s."""
    v100 = 10 ** chance.uniform(0.5, 1.8)
    v40 = v100 ** chance.uniform(1.75, 2.0)
    index = viscosity_index(v40 * 1e-6, v100 * 1e-6)
    return f"v100 {v40!r} {index!r}", v100


def sus_case(chance):
    viscosity = 10 ** chance.uniform(0.3, 3.5)
    return f"sus {viscosity!r} 100", viscosity_converter(viscosity * 1e-6, "kinematic viscosity", "saybolt universal")


def of_sus_case(chance):
    seconds = 10 ** chance.uniform(1.6, 4)
    return f"of_sus {seconds!r} 100", viscosity_converter(seconds, "saybolt universal", "kinematic viscosity") * 1e6


def redwood_case(chance):
    viscosity = 10 ** chance.uniform(1, 2.3)
    return f"r1 {viscosity!r}", viscosity_converter(viscosity * 1e-6, "kinematic viscosity", "redwood standard")


def engler_case(chance):
    viscosity = 10 ** chance.uniform(1, 2.5)
    return f"engler {viscosity!r}", viscosity_converter(viscosity * 1e-6, "kinematic viscosity", "engler")


def dynamic_case(chance):
    viscosity, rho = 10 ** chance.uniform(0, 4), chance.uniform(820, 960)
    return f"dynamic {viscosity!r} {rho!r}", nu_mu_converter(rho, nu=viscosity * 1e-6) * 1e3


# Name, how many, the bound, and why it is what it is. An index near nought is measured against a hundred.
SUMS = [
    ("viscosity at a temperature", 600, 1e-7, "the same equations but for that term", viscosity_case),
    ("viscosity index", 500, 1e-9, "the same table and procedures", index_case),
    ("viscosity at 100 C from the index", 300, 1e-7, "found by searching", v100_case),
    ("Saybolt seconds", 200, 1e-6, "the same equation", sus_case),
    ("viscosity from Saybolt seconds", 200, 1e-6, "the same equation, searched", of_sus_case),
    ("Redwood No. 1 seconds", 50, 0.06, "another formula against a table: 4 to 5 % by design", redwood_case),
    ("Engler degrees", 50, 0.06, "another formula against a table: up to 6 % by design", engler_case),
    ("dynamic viscosity", 100, 1e-12, "a product", dynamic_case),
]


def difference(name, ours, theirs):
    return abs(ours - theirs) / (max(abs(theirs), 100.0) if name == "viscosity index" else abs(theirs))


def check():
    chance = random.Random(SEED)
    cases = [(name, *make(chance)) for name, count, _, _, make in SUMS for _ in range(count)]
    asked = "\n".join(line for _, line, _ in cases) + "\n"
    done = subprocess.run(PROGRAM, input=asked, capture_output=True, text=True, cwd=ROOT, check=True)
    answers = done.stdout.split("\n")[: len(cases)]
    worst, failed = {}, 0
    for (name, line, theirs), answer in zip(cases, answers, strict=True):
        if not answer:
            failed += 1
            print(f"no answer to {line}, where the library says {theirs}")
            continue
        apart = difference(name, float(answer), theirs)
        if apart >= worst.get(name, (0.0, ""))[0]:
            worst[name] = (apart, f"{line}: ours {float(answer):.9g}, theirs {theirs:.9g}")
    print(f"{len(cases)} cases of oils, seed {SEED}")
    for name, count, bound, why, _ in SUMS:
        apart, where = worst.get(name, (float("inf"), "no answer at all"))
        failed += apart > bound
        print(f"{name}: {count} cases, largest relative difference {apart:.1e}, bound {bound:g} ({why})")
        if apart > bound:
            print(f"    beyond the bound at {where}")
    return 1 if failed else 0


def bench():
    """A million viscosities, each at another temperature: ours beside the library's, as a ratio in one run."""
    many = 1_000_000
    ours = subprocess.run(
        [*PROGRAM[:3], "--release", *PROGRAM[3:]], input=f"million {many}\n", capture_output=True, text=True, cwd=ROOT, check=True
    )
    ours = float(ours.stdout)
    few = many // 20
    began = time.perf_counter()
    for count in range(few):
        WALTHER(40, 68, 100, 8.53, 100 * count / few)
    theirs = 20 * (time.perf_counter() - began)
    print(f"a million viscosities: ours {ours:.2f} s, tribology (Python, one by one, a twentieth of them) {theirs:.1f} s,")
    print(f"ratio {theirs / ours:.0f}")
    return 0


if __name__ == "__main__":
    sys.exit(bench() if "--bench" in sys.argv else check())
