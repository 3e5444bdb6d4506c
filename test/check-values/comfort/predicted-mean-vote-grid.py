"""Predicted mean votes at random conditions, worked out apart from this project's code.

    python3 predicted-mean-vote-grid.py > predicted-mean-vote-grid.json     (numpy 2.4.6, scipy 1.17.1)

Equations (1) to (4) of ISO 7730:2005, clause 4.1, in W/m2 and pascal; the surface temperature of the clothing is the root of
equation (2) by Brent's method (scipy.optimize.brentq) to 1e-12 K. The humidity is put in by the vapour pressure formula of that
standard's program, exp(16.6536 - 4030.183 / (t + 235)) kPa. Seed 20261129.
"""
import json
import sys

import numpy as np
from scipy.optimize import brentq


def vote(ta, tr, vr, rh, met, clo):
    heat = met * 58.15
    resistance = clo * 0.155
    pressure = rh / 100 * 1000 * np.exp(16.6536 - 4030.183 / (ta + 235))
    area = 1.05 + 0.645 * resistance if resistance > 0.078 else 1.0 + 1.29 * resistance

    def sides(tcl):
        natural = 2.38 * abs(tcl - ta) ** 0.25
        transfer = max(natural, 12.1 * np.sqrt(vr))
        radiant = 3.96e-8 * area * ((tcl + 273) ** 4 - (tr + 273) ** 4)
        return radiant, area * transfer * (tcl - ta)

    tcl = brentq(lambda t: 35.7 - 0.028 * heat - resistance * sum(sides(t)) - t, -50, 100, xtol=1e-12)
    radiant, convective = sides(tcl)
    skin = 3.05e-3 * (5733 - 6.99 * heat - pressure)
    sweat = max(0.0, 0.42 * (heat - 58.15))
    breath = 1.7e-5 * heat * (5867 - pressure) + 0.0014 * heat * (34 - ta)
    load = heat - skin - sweat - breath - radiant - convective
    return (0.303 * np.exp(-0.036 * heat) + 0.028) * load


random = np.random.default_rng(20261129)
cases = []
while len(cases) < 60:
    ta = round(random.uniform(16, 30), 1)
    inputs = {
        "ta": ta,
        "tr": round(ta + random.uniform(-5, 5), 1),
        "vr": round(random.uniform(0.05, 0.8), 2),
        "rh": round(random.uniform(15, 80)),
        "met": round(random.uniform(0.9, 2.2), 2),
        "clo": round(random.uniform(0.1, 1.5), 2),
    }
    pmv = vote(**inputs)
    if abs(pmv) > 2.5:
        continue
    ppd = 100 - 95 * np.exp(-0.03353 * pmv**4 - 0.2179 * pmv**2)
    cases.append(
        {
            "name": f"random-{len(cases) + 1}",
            "inputs": {**inputs, "wme": 0},
            "expected": {"pmv": round(float(pmv), 6), "ppd": round(float(ppd), 5)},
            "tolerance": {"pmv": 1e-5, "ppd": 3e-4},
        }
    )
json.dump(
    {
        "source": "ISO 7730:2005, equations (1) to (5)",
        "obtained": "independent",
        "how": "predicted-mean-vote-grid.py beside this file: random conditions with seed 20261129, root by Brent's method in scipy. Tolerances: last digit kept, and the 1e-6 K to which this project solves.",
        "cases": cases,
    },
    sys.stdout,
    indent=1,
)
