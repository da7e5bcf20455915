"""Writes reference values of pint, CoolProp, chemicals, lubepy, numpy, scipy and bd_warehouse (see reference-tables)."""

import csv
import math
import sys
from fractions import Fraction
from importlib.metadata import distribution, version
from pathlib import Path

import CoolProp.CoolProp as CP
import numpy as np
import pint
from chemicals.viscosity import viscosity_index
from lubepy.lube.mixture import mixture_viscosity
from scipy import integrate, linalg, optimize

OUT = Path(sys.argv[1])
ATM = 101325.0


def line(*cells):
    return "\t".join(str(c) for c in cells)


def units():
    """Each unit of ours in the base of its dimension, by pint."""
    ureg = pint.UnitRegistry()
    rows = []
    pairs = [
        ("N.m", "N*m", "N*m"), ("N.mm", "N*mm", "N*m"), ("kN.m", "kN*m", "N*m"), ("lbf.ft", "lbf*ft", "N*m"),
        ("lbf.in", "lbf*inch", "N*m"), ("ozf.in", "ozf*inch", "N*m"), ("kgf.m", "kgf*m", "N*m"),
        ("kgf.cm", "kgf*cm", "N*m"), ("J", "J", "J"), ("N", "N", "N"), ("kN", "kN", "N"), ("lbf", "lbf", "N"),
        ("kgf", "kgf", "N"), ("turn", "turn", "degree"), ("rad", "radian", "degree"), ("deg", "degree", "degree"),
        ("mm", "mm", "mm"), ("cm", "cm", "mm"), ("m", "m", "mm"), ("um", "um", "mm"), ("in", "inch", "mm"),
        ("thou", "thou", "mm"), ("ft", "ft", "mm"), ("mm2", "mm**2", "mm**2"), ("cm2", "cm**2", "mm**2"),
        ("m2", "m**2", "mm**2"), ("in2", "inch**2", "mm**2"), ("ml", "ml", "ml"), ("l", "l", "ml"),
        ("mm3", "mm**3", "ml"), ("m3", "m**3", "ml"), ("in3", "inch**3", "ml"), ("qt", "US_liquid_quart", "ml"),
        ("fl_oz", "US_fluid_ounce", "ml"), ("mm4", "mm**4", "mm**4"), ("in4", "inch**4", "mm**4"),
        ("Pa", "Pa", "Pa"), ("kPa", "kPa", "Pa"), ("MPa", "MPa", "Pa"), ("GPa", "GPa", "Pa"), ("bar", "bar", "Pa"),
        ("mbar", "mbar", "Pa"), ("psi", "psi", "Pa"), ("ksi", "ksi", "Pa"), ("atm", "atm", "Pa"),
        ("kgf/cm2", "kgf/cm**2", "Pa"), ("delta_degC", "delta_degC", "kelvin"),
        ("delta_degF", "delta_degF", "kelvin"), ("kg", "kg", "kg"), ("g", "g", "kg"), ("lb", "lb", "kg"),
        ("oz", "oz", "kg"), ("kg/m3", "kg/m**3", "kg/m**3"), ("g/ml", "g/ml", "kg/m**3"), ("N/mm", "N/mm", "N/m"),
        ("lbf/in", "lbf/inch", "N/m"), ("kgf/mm", "kgf/mm", "N/m"), ("mm/s", "mm/s", "m/s"), ("in/s", "inch/s", "m/s"),
        ("ft/s", "ft/s", "m/s"), ("km/h", "km/hour", "m/s"), ("mm2/s", "cSt", "mm**2/s"), ("m2/s", "m**2/s", "mm**2/s"),
        ("St", "stokes", "mm**2/s"), ("P", "poise", "Pa*s"), ("cP", "cP", "Pa*s"), ("mPa.s", "mPa*s", "Pa*s"),
        ("N.s/mm", "N*s/mm", "N*s/m"), ("lbf.s/in", "lbf*s/inch", "N*s/m"), ("deg/s", "degree/s", "radian/s"),
        ("N.cm", "N*cm", "N*m"), ("ozf", "ozf", "N"), ("yd", "yard", "mm"), ("us_pint", "US_pint", "ml"),
        ("us_gallon", "gallon", "ml"), ("imperial_pint", "imperial_pint", "ml"),
        ("imperial_gallon", "imperial_gallon", "ml"), ("imperial_fl_oz", "imperial_fluid_ounce", "ml"),
        ("mmHg", "mmHg", "Pa"), ("inHg", "inHg", "Pa"), ("lbf/ft", "lbf/ft", "N/m"), ("mph", "mile/hour", "m/s"),
        ("ft2/s", "ft**2/s", "mm**2/s"), ("kN.s/m", "kN*s/m", "N*s/m"),
        ("min", "minute", "s"), ("h", "hour", "s"), ("%", "percent", "dimensionless"),
    ]
    for ours, theirs, base in pairs:
        rows.append(line(ours, repr(float(ureg.Quantity(1.0, theirs).to(base).magnitude)), base))
    for value in (-40.0, 0.0, 20.0, 37.5, 100.0, 451.0):
        for a, b in (("degC", "degF"), ("degF", "degC"), ("degC", "kelvin"), ("degF", "kelvin"), ("kelvin", "degC")):
            got = ureg.Quantity(value, a).to(b).magnitude
            rows.append(line("T", value, a.replace("kelvin", "K"), b.replace("kelvin", "K"), repr(float(got))))
    head = f"# pint {version('pint')} (PyPI): unit, size, in base; T rows: value, from, to, result"
    (OUT / "quantity" / "pint.tsv").write_text("\n".join([head, *rows]) + "\n")
    return len(rows)


def coolprop(rows):
    src = f"CoolProp {version('CoolProp')}"
    for gauge in (2, 3, 5, 8, 10, 14, 16, 20, 30, 60):
        rho = CP.PropsSI("D", "P", gauge * 1e5 + ATM, "T", 293.15, "Nitrogen")
        for t in (-30, -10, 0, 10, 40, 60, 80, 100, 120, 150):
            p = CP.PropsSI("P", "D", rho, "T", t + 273.15, "Nitrogen")
            call = f"p={gauge} bar gauge;T1=20 degC;T2={t} degC;model=real"
            rows.append(line(src, "charge-at-temperature", call, repr(float((p - ATM) / 1e5)), "bar", 2e-6))
    for bar in (1.01325, 5, 15, 40, 100, 200, 400):
        for t in (-40, 20, 80, 150):
            z = CP.PropsSI("Z", "P", bar * 1e5, "T", t + 273.15, "Nitrogen")
            rows.append(line(src, "compressibility", f"p={bar} bar abs;T={t} degC", repr(float(z)), "one", 1e-6))
    for bar in (6, 15, 25):
        for ratio in (1.1, 1.4, 2.0, 3.0):
            rho = CP.PropsSI("D", "P", bar * 1e5, "T", 293.15, "Nitrogen")
            s = CP.PropsSI("S", "P", bar * 1e5, "T", 293.15, "Nitrogen")
            p = CP.PropsSI("P", "D", rho * ratio, "S", s, "Nitrogen")
            call = f"p={bar} bar abs;T=20 degC;ratio={ratio};model=real;process=adiabatic"
            rows.append(line(src, "gas-compression", call, repr(float(p / 1e5)), "bar", 2e-6))
            p = CP.PropsSI("P", "D", rho * ratio, "T", 293.15, "Nitrogen")
            call = f"p={bar} bar abs;T=20 degC;ratio={ratio};model=real"
            rows.append(line(src, "gas-compression", call, repr(float(p / 1e5)), "bar", 2e-6))


def oils(rows):
    src = f"chemicals {version('chemicals')}"
    for v40, v100 in [(5, 2.0), (10, 2.7), (15, 3.5), (16.1, 4.4), (22, 4.3), (32, 5.4), (46, 6.8), (68, 8.7),
                      (100, 11.4), (150, 15), (220, 19.4), (460, 30.5), (1000, 60), (2000, 82), (22.83, 5.05)]:
        vi = viscosity_index(v40 * 1e-6, v100 * 1e-6)
        call = f"v40={v40} mm2/s;v100={v100} mm2/s;want=unrounded"
        rows.append(line(src, "viscosity-index", call, repr(float(vi)), "one", 1e-9))
    src = f"lubepy {version('lubepy')}"
    for v1, pct, v2 in [(5, 60, 20), (10, 30, 32), (15, 50, 46), (7, 20, 100), (32, 80, 10)]:
        v = mixture_viscosity(float(v1), float(pct), float(v2), "40")
        rows.append(line(src, "oil-blend", f"v1={v1} mm2/s;pct1={pct};v2={v2} mm2/s;rule=k40", v, "mm2/s", 1e-3))
    # scipy solves D341's two equations for its constants, apart from our closed form.
    src = f"scipy {version('scipy')} (optimize.fsolve)"
    for v40, v100, t in [(15, 3.5, 20), (15, 3.5, -10), (32, 5.4, 60), (46, 6.8, 90), (10, 2.7, 0)]:
        w = lambda v: math.log10(math.log10(v + 0.7))
        f = lambda x: [x[0] - x[1] * math.log10(k) - w(v) for v, k in ((v40, 313.15), (v100, 373.15))]
        a, b = optimize.fsolve(f, [9.0, 3.5], xtol=1e-12)
        v = optimize.brentq(lambda v: w(v) - a + b * math.log10(t + 273.15), 0.5, 1e5, xtol=1e-12)
        call = f"v40={v40} mm2/s;v100={v100} mm2/s;T={t} degC"
        rows.append(line(src, "viscosity-at", call, repr(float(v)), "mm2/s", 1e-7))


def mechanics(rows):
    # Natural frequency as an eigenvalue; wheel and tyre as one matrix.
    src = f"scipy {version('scipy')} (linalg.eigh)"
    for k, m in [(60000, 250), (75357, 280), (25500, 410), (4800, 60)]:
        w2 = linalg.eigh([[k]], [[m]], eigvals_only=True)[0]
        rows.append(line(src, "natural-frequency", f"k={k} N/m;m={m} kg", repr(float(math.sqrt(w2) / 2 / math.pi)), "Hz", 1e-9))
    for k, kt, m in [(25500, 230000, 410), (97804, 318030, 294)]:
        # The unsprung mass made vanishing: the lowest eigenvalue is the mass on both springs in series.
        w2 = linalg.eigh([[k, -k], [-k, k + kt]], [[m, 0], [0, 1e-9]], eigvals_only=True)[0]
        call = f"k={k} N/m;k_t={kt} N/m;m={m} kg"
        rows.append(line(src, "natural-frequency", call, repr(float(math.sqrt(w2) / 2 / math.pi)), "Hz", 1e-6))
    # Logarithmic decrement measured on the integrated motion.
    src = f"scipy {version('scipy')} (integrate.solve_ivp)"
    for k, m, c in [(5400, 8, 40), (60000, 250, 2000), (25500, 410, 1800)]:
        wd = math.sqrt(k / m - (c / 2 / m) ** 2)
        t = 2 * math.pi / wd
        f = lambda _, y: [y[1], -(c * y[1] + k * y[0]) / m]
        x = integrate.solve_ivp(f, (0, t), [1.0, -c / 2 / m], rtol=1e-11, atol=1e-13, method="DOP853").y[0][-1]
        rows.append(line(src, "log-decrement", f"k={k} N/m;m={m} kg;c={c} N.s/m", repr(float(math.log(1 / x))), "one", 1e-6))
    # Preload and tender by energy: work stored is the integral of force, and its minimum is the equilibrium.
    src = f"scipy {version('scipy')} (optimize.minimize_scalar)"
    for main, tender, travel, force in [(60, 25, 40, 600), (60, 25, 40, 1800), (80, 12, 30, 500)]:
        def spring(x):
            split = optimize.minimize_scalar(
                lambda y: tender * y * y / 2 + main * (x - y) ** 2 / 2, bounds=(0, min(travel, x)), method="bounded",
                options={"xatol": 1e-12})
            return split.fun
        x = optimize.minimize_scalar(lambda x: spring(x) - force * x, bounds=(1e-6, 400), method="bounded",
                                     options={"xatol": 1e-10}).x
        call = f"k_main={main} N/mm;k_tender={tender} N/mm;tender_travel={travel} mm;F={force} N"
        rows.append(line(src, "dual-rate", call, repr(float(x)), "mm", 1e-5))
    # Section moduli by quadrature over the section.
    src = f"scipy {version('scipy')} (integrate.quad)"
    for d, b in [(11.5, 8.0), (10.827, 6.0), (40.0, 30.0), (14.0, 0.0)]:
        polar = integrate.quad(lambda r: 2 * math.pi * r ** 3, b / 2, d / 2, epsabs=1e-12)[0]
        rows.append(line(src, "polar-moment", f"D={d} mm;d={b} mm", repr(float(polar)), "mm4", 1e-9))
        rows.append(line(src, "torsion-modulus", f"D={d} mm;d={b} mm", repr(float(polar / (d / 2))), "mm3", 1e-9))
    # Rate of a helical spring by Castigliano: the work of the torque F D / 2 along the wire.
    for d, mean, n, g in [(10.5, 70.5, 6, 81500), (7, 42, 8, 81370), (2.5, 28.5, 13, 81000), (4, 24, 6.28, 81370)]:
        j = math.pi * d ** 4 / 32
        flex = integrate.quad(lambda a: (mean / 2) ** 3 / (g * j), 0, 2 * math.pi * n)[0]
        rows.append(line(src, "spring-rate", f"d={d} mm;D={mean} mm;n={n};G={g} MPa", repr(float(1 / flex)), "N/mm", 1e-9))
    # Lever law: the moment of a force at the grip about the fastener and about the drive, as vectors.
    src = f"numpy {version('numpy')} (cross)"
    for torque, length, reach, theta in [(50, 450, 45, 0), (50, 450, 45, 30), (50, 450, 45, 90), (60, 300, 50, 135), (25, 250, 22.5, 180)]:
        a = math.radians(theta)
        grip = np.array([-length, 0.0, 0.0])
        fastener = np.array([reach * math.cos(a), reach * math.sin(a), 0.0])
        force = np.array([0.0, -1.0, 0.0])
        drive, bolt = np.cross(grip, force)[2], np.cross(grip - fastener, force)[2]
        call = f"T={torque} N.m;L={length} mm;E={reach} mm;theta={theta} deg"
        rows.append(line(src, "wrench-setting", call, repr(float(torque * drive / bolt)), "N.m", 1e-9))


# Rows that are no reference: least widths where the others are nominal, and the widths of before 1982.
NOT_NOMINAL = {"din931:s": ("M1.6", "M2-", "M2.5", "M3.5"), "iso4035:s": ("M10-", "M12-", "M14-", "M22-")}


def hexagons(rows):
    """Hexagons and keys, row by row, from the tables of a package of fasteners (read, not imported)."""
    src = f"bd_warehouse {version('bd_warehouse')}"
    tables = [
        ("hex_head", "across-flats", {"iso4014:s": "ISO 4014", "iso4017:s": "ISO 4017", "din931:s": "DIN 931"}),
        ("hex_nut", "across-flats", {"iso4032:s": "ISO 4032", "iso4033:s": "ISO 4033", "iso4035:s": "ISO 4035"}),
        ("socket_head_cap", "hex-key", {"iso4762:s": "ISO 4762", "asme_b18.3:s": "cap ASME B18.3"}),
        ("setscrew", "hex-key", {"iso4026:s": "ISO 4026"}),
        ("imperial_set_screw", "hex-key", {"Socket_Size": "set ASME B18.3"}),
        ("shoulder_screw", "hex-key", {"iso7379:s": "ISO 7379"}),
    ]
    for table, working, columns in tables:
        name = table if table == "shoulder_screw" else f"{table}_parameters"
        path = distribution("bd_warehouse").locate_file(f"bd_warehouse/data/{name}.csv")
        with open(path, newline="", encoding="utf-8") as file:
            for row in csv.DictReader(file, skipinitialspace=True):
                row = {key.strip(): value for key, value in row.items() if key}
                for column, head in columns.items():
                    size, thread = row.get(column), row["Size"]
                    if not size or thread.startswith(NOT_NOMINAL.get(column, ())):
                        continue
                    value = float(sum(Fraction(part) for part in size.split()))
                    unit = "mm" if thread.startswith("M") else "in"
                    rows.append(line(src, working, f"thread={thread};head={head}", repr(value), unit, 1e-9))


def main():
    rows = []
    hexagons(rows)
    coolprop(rows)
    oils(rows)
    mechanics(rows)
    head = "# library and version, working, inputs, value, unit, relative tolerance"
    (OUT / "workings" / "reference.tsv").write_text("\n".join([head, *rows]) + "\n")
    print(f"{units()} units, {len(rows)} workings")


main()
