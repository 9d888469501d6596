"""Holds every row of reference/quantities.csv against the pint library.

Start at `main`. The conversions are done in decimal arithmetic of thirty figures, so what is
compared is the definitions of the units and not somebody's rounding. Run it by hand or from the
check; it needs the packages pinned in requirements.txt beside it and no network.
"""

import csv
import sys
from decimal import Decimal, getcontext
from pathlib import Path

import pint

TABLE = Path(__file__).resolve().parent.parent / "quantities.csv"

# Units that pint writes in another way than people type them.
PINT_NAMES = {
    "US fl oz": "US_fluid_ounce",
    "mil": "thou",
    "US pint": "US_pint",
    "US quart": "US_liquid_quart",
    "US gallon": "US_liquid_gallon",
    "UK fl oz": "imperial_fluid_ounce",
    "UK pint": "imperial_pint",
    "UK quart": "imperial_quart",
    "UK gallon": "imperial_gallon",
    "US gal/min": "US_liquid_gallon/minute",
    "UK gal/min": "imperial_gallon/minute",
    "US fl oz/h": "US_fluid_ounce/hour",
    "mL/h": "milliliter/hour",
    "C": "degC",
    "F": "degF",
    "rpm": "revolution/minute",
    "/s": "revolution/second",
    "/min": "revolution/minute",
    "Hz": "revolution/second",
    "/GPa": "1/gigapascal",
    "/MPa": "1/megapascal",
    "/Pa": "1/pascal",
    "in2/lbf": "inch**2/pound_force",
    "lbf.ft": "pound_force*foot",
    "lbf.in": "pound_force*inch",
    "kgf.m": "kilogram_force*meter",
    "kgf/cm2": "kilogram_force/centimeter**2",
    "mmH2O": "millimeter_H2O",
    "inH2O": "inch_H2O",
    "h": "hour",
    "W/m2K": "watt/meter**2/kelvin",
    "ft/s2": "foot/second**2",
    "m/s2": "meter/second**2",
    "per s": "1/second",
    "per h": "1/hour",
    "per day": "1/day",
    "per week": "1/week",
}


def pint_name(unit, kind):
    """How pint writes a unit of the table."""
    if kind == "temperature difference":
        return {"K": "kelvin", "C": "delta_degree_Celsius", "F": "delta_degree_Fahrenheit"}[unit]
    if unit in PINT_NAMES:
        return PINT_NAMES[unit]
    name = unit.replace(".", "*")
    for power in "23":
        name = name.replace(power, "**" + power)
    return name


def allowed(tolerance, expected):
    """The difference that a row allows, in its own unit."""
    how, size = tolerance.split()
    return Decimal(size) * (abs(expected) if how == "rel" else 1)


def main():
    getcontext().prec = 30
    registry = pint.UnitRegistry(non_int_type=Decimal, autoconvert_offset_to_baseunit=True)
    rows = list(csv.DictReader(TABLE.open(encoding="utf-8")))
    worst = {"rel": Decimal(0), "abs": Decimal(0)}
    failed = 0
    for row in rows:
        number, unit = row["inputs"].split(" ", 1)
        typed = registry.Quantity(Decimal(number), pint_name(unit, row["quantity"]))
        found = typed.to(pint_name(row["unit"], row["quantity"])).magnitude
        expected = Decimal(row["expected"])
        how = row["tolerance"].split()[0]
        worst[how] = max(worst[how], abs(found - expected) / abs(expected or 1))
        if abs(found - expected) > allowed(row["tolerance"], expected):
            failed += 1
            print(f"{row['id']}: {row['inputs']} is {found} {row['unit']}, not {expected}")
    print(f"{len(rows)} rows, pint {pint.__version__}, {failed} apart")
    print(f"largest relative difference: {worst['rel']:.1e} where all figures are given,")
    print(f"{worst['abs']:.1e} where the source prints few")
    return 1 if failed or not rows else 0


if __name__ == "__main__":
    sys.exit(main())
