"""Open-circuit voltage as a monotone cubic through a few rows of a fine table."""

import numpy as np

from reference import columns

KNOTS = 25


def hermite(z, z0, z1, v0, v1, m0, m1):
    h = z1 - z0
    t = (z - z0) / h
    return v0 * (1 + 2 * t) * (1 - t) ** 2 + m0 * h * t * (1 - t) ** 2 + v1 * t * t * (3 - 2 * t) + m1 * h * t * t * (t - 1)


def choose_knots(name, count=KNOTS):
    """The `count` rows of a 401-row table, with slopes, whose cubic has the least worst error: exact, by dynamic programming.

    A piece is allowed only if both slopes lie within 0..3 times its chord: sufficient for a monotone cubic (Fritsch and
    Carlson, SIAM J. Numer. Anal. 17:238-246, 1980, from memory).
    """
    table = columns(name)
    z, v = table["soc"], table["OCV_V"]
    m = np.gradient(v, z, edge_order=2).round(3)
    n = len(z)
    cost = np.full((n, n), np.inf)
    for i in range(n - 1):
        for j in range(i + 1, n):
            chord = (v[j] - v[i]) / (z[j] - z[i])
            if 0 <= m[i] <= 3 * chord and 0 <= m[j] <= 3 * chord:
                got = hermite(z[i : j + 1], z[i], z[j], v[i], v[j], m[i], m[j])
                cost[i, j] = np.abs(got - v[i : j + 1]).max()
    best = np.full(n, np.inf)
    best[0], back = 0.0, []
    for _ in range(count - 1):
        through = np.maximum(best[:, None], cost)
        back.append(through.argmin(0))
        best = through.min(0)
    path = [n - 1]
    for step in reversed(back):
        path.append(int(step[path[-1]]))
    path = path[::-1]
    return z[path], v[path], m[path]


class Ocv:
    def __init__(self, name):
        self.name = name
        self.z, self.v, self.m = choose_knots(name)

    def __call__(self, at):
        at = np.clip(at, 0.0, 1.0)
        i = np.clip(np.searchsorted(self.z, at, side="right") - 1, 0, len(self.z) - 2)
        return hermite(at, self.z[i], self.z[i + 1], self.v[i], self.v[i + 1], self.m[i], self.m[i + 1])

    def slope(self, at, d=1e-6):
        return float((self(at + d) - self(at - d)) / (2 * d))

    def mean_v(self, down_to):
        z = np.linspace(down_to, 1, 20001)
        return float(np.mean(self(z)))

    def errors(self):
        table = columns(self.name)
        e = 1000 * np.abs(self(table["soc"]) - table["OCV_V"])
        low = table["soc"] < 0.03
        return e[~low].max(), e[low].max()
