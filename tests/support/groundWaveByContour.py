"""Independent mathematics for the ground-wave tests, with mpmath (arbitrary precision, its own Airy and error functions).

Reads one JSON object from standard input, writes one to standard output:
  faddeeva: [[re, im], ...]            -> w(z) = exp(-z^2) erfc(-jz)
  roots:    [[q re, q im, t re, t im]] -> the root of w'(t) = q w(t) that Newton's rule finds from t
  waves:    [{frequencyMhz, distanceKm, permittivity, conductivitySPerM, surfaceRefractivity}]
                                       -> attenuation, dB

The attenuation is not summed over residues, as the engine does it: it is integrated along a contour around the ray that the poles
lie on, so neither a root nor the end of a series enters. Time factor exp(-jwt), w(t) = Ai(t e^(2 pi j / 3)).
"""

import json
import sys

from mpmath import airyai, exp, erfc, findroot, log10, mp, mpc, mpf, pi, quad, sqrt

mp.dps = 18
TURN = exp(2j * pi / 3)
EPSILON_0 = mpf("8.8541878128e-12")
LIGHT = mpf(299792458)


def outgoing(t):
    return airyai(t * TURN)


def outgoing_slope(t):
    return TURN * airyai(t * TURN, derivative=1)


def faddeeva(z):
    return exp(-z * z) * erfc(-1j * z)


def polished(q, t):
    return findroot(lambda s: outgoing_slope(s) - q * outgoing(s), t)


def attenuation_db(wave):
    frequency_hz = mpf(wave["frequencyMhz"]) * 10**6
    radius = 6370000 / (1 - mpf("0.04665") * exp(mpf("0.005577") * mpf(wave["surfaceRefractivity"])))
    nu = (pi * radius * frequency_hz / LIGHT) ** (mpf(1) / 3)
    eta = mpc(wave["permittivity"], mpf(wave["conductivitySPerM"]) / (2 * pi * frequency_hz * EPSILON_0))
    q = 1j * nu * sqrt(eta - 1) / eta
    x = nu * mpf(wave["distanceKm"]) * 1000 / radius

    def integrand(t):
        return exp(1j * x * t) / (outgoing_slope(t) / outgoing(t) - q)

    # Both rays start at nought, below the first pole, and leave the ray of the poles (60 degrees) between them.
    total = mpc(0)
    for angle, sign in ((pi / 12, 1), (7 * pi / 12, -1)):
        ray = exp(1j * angle)
        end = 60 / (x * ray.imag)
        edges = [end * (mpf(k) / 10) ** 4 for k in range(11)]
        total += sign * quad(lambda r: integrand(r * ray) * ray, edges, method="gauss-legendre", maxdegree=4)
    series = total / (2j * pi)
    return -20 * log10(abs(sqrt(pi * x) * series))


def pair(z):
    return [float(z.real), float(z.imag)]


asked = json.load(sys.stdin)
json.dump(
    {
        "faddeeva": [pair(faddeeva(mpc(*z))) for z in asked.get("faddeeva", [])],
        "roots": [pair(polished(mpc(a, b), mpc(c, d))) for a, b, c, d in asked.get("roots", [])],
        "waves": [float(attenuation_db(wave)) for wave in asked.get("waves", [])],
    },
    sys.stdout,
)
