"""5P change-point fits by numpy and scipy, over the same readings as the product's. Prints one line of JSON.

Brute grid: all pairs of a 0.5 K grid at once by the closed form of two wings that do not overlap, then Nelder-Mead from
the best three pairs. Descent: scipy's curve_fit from the quartiles of the temperatures, as it is mostly done.

    python3 fit-scipy.py FILE METERS POINTS METHOD     (METHOD is grid or descent)

FILE holds, meter by meter, the temperatures and then the energies as little-endian float64.
"""

import json
import sys
import time

import numpy as np
from scipy.optimize import curve_fit, minimize

STEP = 0.5
STARTS = 3


def sse_at(T, y, yy, c):
    """Least squares inside two given change points, by the normal equations."""
    if not c[0] <= c[1]:
        return np.inf
    h = np.maximum(0, c[0] - T)
    k = np.maximum(0, T - c[1])
    A = np.array([[len(T), h.sum(), k.sum()], [0, h @ h, 0], [0, 0, k @ k]])
    A = A + np.triu(A, 1).T
    b = np.array([y.sum(), h @ y, k @ y])
    try:
        return yy - b @ np.linalg.solve(A, b)
    except np.linalg.LinAlgError:
        return np.inf


def grid_fit(T, y):
    mean = y.mean()
    z = y - mean
    zz = z @ z
    grid = np.arange(np.ceil(T.min()) + 0.5, np.floor(T.max()) - 0.5, STEP)
    h = np.maximum(0, grid[:, None] - T)
    k = np.maximum(0, T - grid[:, None])
    n = len(T)
    H, HH, HY = h.sum(1), (h * h).sum(1), h @ z
    K, KK, KY = k.sum(1), (k * k).sum(1), k @ z
    level = (-(H * HY / HH)[:, None] - (K * KY / KK)[None, :]) / (
        n - (H * H / HH)[:, None] - (K * K / KK)[None, :])
    left = (HY[:, None] - level * H[:, None]) / HH[:, None]
    right = (KY[None, :] - level * K[None, :]) / KK[None, :]
    sse = zz - left * HY[:, None] - right * KY[None, :]
    sse[np.tril_indices(len(grid), -1)] = np.inf
    best = np.inf
    for at in np.argsort(sse, axis=None)[:STARTS]:
        i, j = np.unravel_index(at, sse.shape)
        found = minimize(lambda c: sse_at(T, z, zz, c), [grid[i], grid[j]], method="Nelder-Mead",
                         options={"xatol": 1e-7, "fatol": 1e-9 * zz})
        best = min(best, found.fun)
    return best


def five(T, b0, bh, th, bc, tc):
    return b0 + bh * np.maximum(0, th - T) + bc * np.maximum(0, T - tc)


def descent_fit(T, y):
    low, high = np.quantile(T, [0.25, 0.75])
    try:
        p, _ = curve_fit(five, T, y, p0=[np.median(y), 1, low, 1, high])
    except RuntimeError:
        return np.inf
    return float(np.sum((y - five(T, *p)) ** 2)) if p[2] <= p[4] else np.inf


file, meters, points, method = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]), sys.argv[4]
data = np.fromfile(file, dtype="<f8").reshape(meters, 2, points)
fit = grid_fit if method == "grid" else descent_fit
start = time.perf_counter()
cpu = time.process_time()
sse = [fit(T, y) for T, y in data]
print(json.dumps({"ms": (time.perf_counter() - start) * 1000, "cpuMs": (time.process_time() - cpu) * 1000,
                  "sse": [s if np.isfinite(s) else None for s in sse]}))
