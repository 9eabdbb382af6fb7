import { describe, expect, it } from 'vitest';
import { complex, polar } from '../../core/propagation/complex.ts';
import { faddeeva } from '../../core/propagation/faddeeva.ts';
import { type GroundWavePath, groundWaveAttenuation } from '../../core/propagation/groundWave.ts';
import { residueRoot } from '../../core/propagation/residueRoots.ts';
import { askMpmath, hasMpmath, MPMATH_MISSING, type Pair } from '../support/mpmath.ts';
import { worstOf } from '../support/worst.ts';

// The mathematics of the ground wave against an independent implementation, run here and now: Airy and error functions of
// mpmath, and the wave itself by an integral along a contour instead of a sum over residues.

const apart = ({ re, im }: { re: number; im: number }, [otherRe, otherIm]: Pair): number =>
  Math.hypot(re - otherRe, im - otherIm);

describe.skipIf(!hasMpmath)(`special functions against mpmath${MPMATH_MISSING}`, () => {
  it('Faddeeva function, 0.001 to 200 from nought at 13 angles of the upper half plane: within 1e-11 of its size', () => {
    const points = [0.001, 0.1, 0.5, 1, 2, 3.3, 5, 8, 20, 200].flatMap((size) =>
      Array.from({ length: 13 }, (_, i) => polar(size, (Math.PI * i) / 12)).map(
        ({ re, im }): Pair => [re, Math.max(0, im)],
      ),
    );
    const answers = askMpmath({ faddeeva: points }).faddeeva;
    const { error, text } = worstOf(points, ([re, im], i) => {
      const known = answers[i] ?? [Number.NaN, Number.NaN];
      return apart(faddeeva(complex(re, im)), known) / Math.hypot(...known);
    });
    expect(error, text).toBeLessThan(1e-11);
  });

  it('roots of w′(t) = q w(t), the 1st to the 60th, every ground parameter of MF and HF: within 2e-6 of where Newton ends', () => {
    const cases = [Math.PI / 4, 1, Math.PI / 2, 2].flatMap((angle) =>
      [0.02, 0.3, 0.9, 1.1, 2, 6, 30].flatMap((size) =>
        [1, 2, 3, 4, 5, 12, 60].map((n) => ({ n, q: polar(size, angle) })),
      ),
    );
    const roots = cases.map(({ n, q }) => residueRoot(n, q));
    const answers = askMpmath({
      roots: cases.map(({ q }, i) => [q.re, q.im, roots[i]?.re ?? 0, roots[i]?.im ?? 0]),
    }).roots;
    const { error, text } = worstOf(roots, (root, i) => apart(root, answers[i] ?? [Number.NaN, Number.NaN]));
    expect(error, text).toBeLessThan(2e-6);
  });
});

describe.skipIf(!hasMpmath)(`ground wave by a contour integral with mpmath${MPMATH_MISSING}`, () => {
  const LAND = { permittivity: 30, conductivitySPerM: 0.01 };
  const far: readonly GroundWavePath[] = [
    { frequencyMhz: 0.518, distanceKm: 400 },
    { frequencyMhz: 2.182, distanceKm: 150 },
    { frequencyMhz: 8.291, distanceKm: 45 },
    { frequencyMhz: 16.42, distanceKm: 300, surfaceRefractivity: 360 },
    { frequencyMhz: 4.125, distanceKm: 200, ground: LAND },
  ];
  const near: readonly GroundWavePath[] = [
    { frequencyMhz: 2.182, distanceKm: 12 },
    { frequencyMhz: 2.182, distanceKm: 60 },
    { frequencyMhz: 8.291, distanceKm: 30 },
    { frequencyMhz: 30, distanceKm: 25 },
  ];

  it.each([
    ['residue series', far, 'residue-series', 1e-5],
    ['flat earth with curvature, where it is an approximation', near, 'flat-earth-with-curvature', 0.01],
  ] as const)('%s: attenuation of the cases within the stated decibels', (_, paths, method, tolerance) => {
    const answers = askMpmath({ waves: paths }).waves;
    for (const path of paths) expect(groundWaveAttenuation(path).method).toBe(method);
    const { error, text } = worstOf(
      paths,
      (path, i) => groundWaveAttenuation(path).attenuationDb - (answers[i] ?? Number.NaN),
    );
    expect(error, text).toBeLessThan(tolerance);
  });
});
