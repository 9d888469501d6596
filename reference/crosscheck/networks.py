"""Holds our sums of tubes and of networks of them against other libraries; with --bench, the speed of a large network.

Start at `main`. Our answers come from the example `networks` of the crate tribology, a line each. Tubes are held against the library
fluids, networks against the engine EPANET, made for towns' water, as the package wntr brings it. Only the engine is loaded, by its C
interface: the package around it wants half a dozen others. The largest relative difference of each sum is printed and must stay below
its bound.
"""

import csv
import ctypes
import importlib.util
import math
import random
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
from fluids import one_phase_dP

SEED = 1840
ROOT = Path(__file__).resolve().parent.parent.parent
TABLE = ROOT / "reference" / "contacts-and-circuits.csv"
PROGRAM = ["cargo", "run", "--quiet", "--locked", "--package", "tribology", "--example", "networks"]

FOOT = 0.3048
# What the engine has for the free fall and for the viscosity of water, to which it relates others: 32.2 ft/s2 and 1.1e-5 ft2/s.
ITS_GRAVITY = 32.2 * FOOT
ITS_WATER = 1.1e-5 * FOOT**2
GRAVITY = 9.80665


class Network:
    """Nodes with a head in metres, a flow drawn in m3/s or neither; tubes with length and bore in metres."""

    def __init__(self, name, viscosity, heads, drawn, tubes):
        self.name, self.viscosity, self.heads, self.drawn, self.tubes = name, viscosity, heads, drawn, tubes
        ends = dict.fromkeys(node for first, last, _, _ in tubes for node in (first, last))
        # The engine counts nodes whose head is sought first.
        self.nodes = [node for node in ends if node not in heads] + list(heads)

    def line(self, gravity):
        """The question to our example."""
        words = ["network", repr(self.viscosity), repr(gravity)]
        for node in self.nodes:
            if node in self.heads:
                words += ["head", node, repr(self.heads[node])]
            else:
                words += ["drawn", node, repr(self.drawn.get(node, 0.0))]
        for first, last, length, bore in self.tubes:
            words += ["tube", first, last, repr(length), repr(bore)]
        return " ".join(words)

    def file(self):
        """The engine's own file, in feet, inches and cubic feet a second, so that it has nothing to convert."""
        lines = ["[JUNCTIONS]"]
        lines += [f"{node} 0 {self.drawn.get(node, 0.0) / FOOT**3!r}" for node in self.nodes if node not in self.heads]
        lines += ["[RESERVOIRS]", *(f"{node} {head / FOOT!r}" for node, head in self.heads.items()), "[PIPES]"]
        for place, (first, last, length, bore) in enumerate(self.tubes):
            lines.append(f"{place} {first} {last} {length / FOOT!r} {bore / FOOT * 12!r} 0.001 0")
        viscosity = self.viscosity / ITS_WATER
        lines += ["[OPTIONS]", "UNITS CFS", "HEADLOSS D-W", f"VISCOSITY {viscosity!r}", "ACCURACY 1e-8", "[END]"]
        return "\n".join(lines) + "\n"


class Engine:
    """EPANET 2.2 with one network in it."""

    HEAD, FLOW = 10, 8
    # Zero is well; six only says that some node lies above the heads, as any node at height nought may.
    WELL = (0, 6)

    def __init__(self, network):
        package = Path(importlib.util.find_spec("wntr").submodule_search_locations[0])
        self.library = ctypes.CDLL(str(package / "epanet/libepanet/linux-x64/libepanet22.so"))
        self.network, self.project = network, ctypes.c_void_p()
        self.folder = tempfile.TemporaryDirectory()
        files = [Path(self.folder.name) / name for name in ("in", "report", "out")]
        files[0].write_text(network.file(), encoding="utf-8")
        self.library.EN_createproject(ctypes.byref(self.project))
        self.does("open", *(str(file).encode() for file in files))

    def does(self, name, *arguments):
        code = getattr(self.library, f"EN_{name}")(self.project, *arguments)
        if code not in self.WELL:
            report = Path(self.folder.name) / "report"
            raise ArithmeticError(f"{self.network.name}: the engine says {code} to {name}\n{report.read_text()}")

    def solves(self):
        """Lays out its matrix and solves, without files; gives the seconds that each took."""
        began = time.perf_counter()
        self.does("openH")
        laid_out = time.perf_counter()
        self.does("initH", 10)
        self.does("runH", ctypes.byref(ctypes.c_long()))
        return laid_out - began, time.perf_counter() - laid_out

    def answers(self):
        """The flow in each tube in m3/s, then the head at each node in metres."""
        value = ctypes.c_double()
        found = []
        for name, count, what, unit in [
            ("getlinkvalue", len(self.network.tubes), self.FLOW, FOOT**3),
            ("getnodevalue", len(self.network.nodes), self.HEAD, FOOT),
        ]:
            for place in range(count):
                self.does(name, place + 1, what, ctypes.byref(value))
                found.append(value.value * unit)
        return found

    def close(self):
        self.does("close")
        self.library.EN_deleteproject(self.project)
        self.folder.cleanup()


def by_engine(network):
    engine = Engine(network)
    engine.solves()
    found = engine.answers()
    engine.close()
    return found


def of_table():
    """The networks of the rows of the table."""
    found = {}
    for row in csv.DictReader(TABLE.open(encoding="utf-8")):
        if row["id"].startswith("d-net-"):
            name = row["quantity"].split(", case ")[1]
            viscosity, _, heads, drawn, tubes = row["inputs"].split("; ")
            found[name] = Network(name, float(viscosity.split()[0][3:]), named(heads), named(drawn), pipes(tubes))
    return list(found.values())


def named(part):
    """`heads m T=0.5 O=0` and the like, where there may be `none`."""
    pairs = [word.split("=") for word in part.split()[2:] if word != "none"]
    return {name: float(number) for name, number in pairs}


def pipes(part):
    """`p1:T>X:0.8:4` and the like, with metres and millimetres, behind four words that say so."""
    found = []
    for word in part.split()[4:]:
        _, ends, length, bore = word.split(":")
        found.append((*ends.split(">"), float(length), float(bore) / 1000))
    return found


def any_network(name, chance):
    """A tree of tubes with some that close a ring, a dozen in all at most; two or three heads, and a flow drawn or fed at one node."""
    count = chance.randint(4, 9)
    nodes = [f"n{place}" for place in range(count)]
    joined = [(chance.choice(nodes[:place]), nodes[place]) for place in range(1, count)]
    joined += [tuple(chance.sample(nodes, 2)) for _ in range(chance.randint(1, 12 - len(joined)))]
    tubes = [(*ends, chance.uniform(0.2, 2), chance.uniform(0.002, 0.006)) for ends in joined]
    heads = {node: chance.uniform(-0.5, 2) for node in chance.sample(nodes, chance.randint(2, 3))}
    drawn = {chance.choice([node for node in nodes if node not in heads]): chance.uniform(-1e-6, 2e-6)}
    return Network(name, 10 ** chance.uniform(-4.5, -3.7), heads, drawn, tubes)


def lattice(wide, high):
    """A lattice of tubes of many bores, a tank at one corner and open ends at several heights along the far side."""
    heads, tubes = {"0-0": 1.0}, []
    for y in range(high):
        for x in range(wide):
            for right, down in ((1, 0), (0, 1)):
                if x + right < wide and y + down < high:
                    bore = (2 + (3 * x + 5 * y + right) % 9 / 2) / 1000
                    tubes.append((f"{x}-{y}", f"{x + right}-{y + down}", 0.3, bore))
    heads |= {f"{x}-{high - 1}": 0.06 * (x % 7) for x in range(0, wide, 4)}
    return Network("lattice", 6.8e-5, heads, {}, tubes)


def tube(chance):
    """A laminar tube, and the pressure that fluids has for it with a smooth wall."""
    bore, length, rho = chance.uniform(0.001, 0.012), 10 ** chance.uniform(-1, 1), chance.uniform(820, 960)
    viscosity, reynolds = rho * 10 ** chance.uniform(-5, -3), 10 ** chance.uniform(-4, 3.3)
    flow = reynolds * math.pi * bore * viscosity / (4 * rho)
    theirs = one_phase_dP(flow * rho, rho, viscosity, bore, roughness=0.0, L=length)
    return f"tube {bore!r} {length!r} {viscosity!r} {flow!r}", theirs


def answers(lines, release=False):
    """The numbers of each line, from the example."""
    program = [*PROGRAM[:3], *(["--release"] if release else []), *PROGRAM[3:]]
    asked = "\n".join(lines) + "\n"
    done = subprocess.run(program, input=asked, capture_output=True, text=True, cwd=ROOT, check=True)
    return [[float(word) for word in line.split()] for line in done.stdout.split("\n")[: len(lines)]]


def apart(network, ours, theirs):
    """The largest difference of flows beside the largest flow, and of heads beside the largest head."""
    if len(ours) != len(theirs):
        return [math.inf, math.inf]
    tubes = len(network.tubes)
    pairs = [(ours[:tubes], theirs[:tubes]), (ours[tubes:], theirs[tubes:])]
    return [float(np.linalg.norm(np.subtract(*pair), np.inf)) / max(map(abs, pair[1])) for pair in pairs]


def report(name, differences, bound, why):
    """Prints the largest of some differences, each with where it is; says whether it is beyond the bound."""
    largest, where = max((math.inf if math.isnan(apart) else apart, where) for apart, where in differences)
    print(f"{name}: {len(differences)} cases, largest relative difference {largest:.1e}, bound {bound:g} ({why})")
    if not largest <= bound:
        print(f"    beyond the bound at {where}")
    return not largest <= bound


def check():
    chance = random.Random(SEED)
    tubes = [tube(chance) for _ in range(100)]
    of_rows = of_table()
    networks = of_rows + [any_network(f"seeded network {place}", chance) for place in range(1, 8)]
    lines = [line for line, _ in tubes]
    lines += [network.line(gravity) for gravity in (ITS_GRAVITY, GRAVITY) for network in networks]
    ours = answers(lines)
    print(f"{len(tubes)} tubes and {len(networks)} networks, {len(of_rows)} of them of the table, seed {SEED}")
    pressures = [(abs((found or [math.inf])[0] / theirs - 1), line) for (line, theirs), found in zip(tubes, ours)]
    failed = report("pressure of a tube", pressures, 1e-12, "the same law, by way of a friction factor")
    theirs = [by_engine(network) for network in networks]
    count = len(networks)
    for name, ours, bound, why in [
        ("its free fall", ours[-2 * count : -count], 1e-10, "the same linear law, in its own feet"),
        ("the standard one", ours[-count:], 1e-3, "it has 32.2 ft/s2: 0.081 % more"),
    ]:
        both = [apart(*three) for three in zip(networks, ours, theirs, strict=True)]
        for what, place in (("flows", 0), ("heads", 1)):
            cases = [(two[place], f"{network.name}: {network.line(GRAVITY)}") for network, two in zip(networks, both)]
            failed += report(f"{what} of networks, {name}", cases, bound, why)
    return 1 if failed else 0


def bench():
    """Two thousand tubes: our solution beside the engine's, each with its matrix laid out, as a ratio in one run."""
    network = lattice(32, 32)
    line = network.line(ITS_GRAVITY)
    [ours], found = answers([f"time {line}", line], release=True)
    layout = solution = math.inf
    for _ in range(20):
        engine = Engine(network)
        layout, solution = map(min, (layout, solution), engine.solves())
        theirs = engine.answers()
        engine.close()
    flows, heads = apart(network, found, theirs)
    print(f"a network of {len(network.tubes)} tubes: ours {ours * 1e3:.2f} ms, layout and all; EPANET {layout * 1e3:.2f} ms for the layout")
    print(f"of its matrix and {solution * 1e3:.2f} ms to solve, ratio {(layout + solution) / ours:.1f}, of its solving alone {solution / ours:.1f};")
    print(f"flows apart by {flows:.1e} of the largest, heads by {heads:.1e}")
    return 0


if __name__ == "__main__":
    sys.exit(bench() if "--bench" in sys.argv else check())
