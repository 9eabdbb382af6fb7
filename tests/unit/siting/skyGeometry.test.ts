import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block, type Direction, outline, post, sail } from '../../../core/siting/skyGeometry.ts';
import { overheadLossDb, sailLossDb, shellLossDb, uprightLossDb } from '../../../core/siting/skyLoss.ts';
import { skyShares } from '../../../core/siting/skyShares.ts';
import { sightAt } from '../../../core/siting/skyView.ts';
import type { SkyObstacle, SkyView } from '../../../core/siting/types.ts';

const EYE = { xM: 0, yM: 0, zM: 0 };
const at = (forwardM: number, starboardM: number, zM: number) => ({ xM: -forwardM, yM: -starboardM, zM });

function ringOf(body: Parameters<typeof outline>[0] | null, heelDeg = 0): readonly Direction[] {
  const ring = body && outline(body, heelDeg);
  if (!ring) throw new Error('nothing is seen of it');
  return ring;
}
const azimuths = (ring: readonly Direction[]): readonly number[] => ring.map((point) => point.azimuthDeg);
const elevations = (ring: readonly Direction[]): readonly number[] => ring.map((point) => point.elevationDeg);
const widthDeg = (ring: readonly Direction[]): number => Math.max(...azimuths(ring)) - Math.min(...azimuths(ring));
const asObstacle = (ring: readonly Direction[], lossDb = 20): SkyObstacle => ({
  key: 'it',
  label: 'it',
  subject: null,
  kind: lossDb >= 20 ? 'blocks' : 'weakens',
  lossDb,
  outline: ring,
});
const viewOf = (...obstacles: SkyObstacle[]): SkyView => ({
  obstacles,
  blockedPercent: 0,
  weakenedPercent: 0,
  isShut: false,
});

describe('a post', () => {
  it.each([
    [0.09, 2],
    [0.25, 5],
    [1, 1.01],
  ])('of radius %d m with its axis %d m off takes 2 asin(r/d) of the horizon, exactly', (radiusM, distanceM) => {
    const ring = ringOf(post(EYE, at(distanceM, 0, -3), 40, radiusM));
    const exact = (2 * Math.asin(radiusM / distanceM) * 180) / Math.PI;
    expect(widthDeg(ring)).toBeCloseTo(exact, 9);
    expect(Math.min(...azimuths(ring)) + Math.max(...azimuths(ring))).toBeCloseTo(0, 9);
  });

  it('rises to the angle of its top: the far edge of the cap is the highest that is hidden behind the near one', () => {
    const ring = ringOf(post(EYE, at(10, 0, -1), 10, 0.1));
    expect(Math.max(...elevations(ring))).toBeCloseTo((Math.atan2(10, 9.9) * 180) / Math.PI, 6);
    expect(Math.min(...elevations(ring))).toBe(0);
  });

  it('farther off is smaller, and one wholly below the horizon is not seen', () => {
    expect(widthDeg(ringOf(post(EYE, at(20, 0, -1), 10, 0.1)))).toBeLessThan(
      widthDeg(ringOf(post(EYE, at(10, 0, -1), 10, 0.1))),
    );
    const low = post(EYE, at(10, 0, -5), -0.01, 0.1);
    expect(low && outline(low, 0)).toBeNull();
  });

  it('is where it stands: port is 270, starboard 90, astern 180 degrees', () => {
    const middle = (forwardM: number, starboardM: number): number => {
      const list = azimuths(ringOf(post(EYE, at(forwardM, starboardM, -1), 5, 0.1)));
      const deg = (Math.max(...list) + Math.min(...list)) / 2;
      return deg - 360 * Math.floor(deg / 360);
    };
    expect(middle(0, 3)).toBeCloseTo(90, 9);
    expect(middle(0, -3)).toBeCloseTo(270, 9);
    expect(middle(-3, 0)).toBeCloseTo(180, 9);
  });

  it('says nothing of a post the antenna stands in, and sees none above it from its truck', () => {
    expect(post(EYE, at(0.05, 0, -3), 3, 0.1)).toBeNull();
    const under = post(EYE, at(0, 0, -3), -0.1, 0.1);
    expect(under && outline(under, 0)).toBeNull();
  });
});

describe('heel', () => {
  it('to starboard takes a masthead straight ahead to starboard, and mirrors to port', () => {
    const mast = post(EYE, at(5, 0, 0), 10, 0.1);
    const [toStarboard, toPort, upright] = [ringOf(mast, 20), ringOf(mast, -20), ringOf(mast)];
    expect(Math.max(...azimuths(toStarboard))).toBeGreaterThan(30);
    expect(Math.min(...azimuths(toStarboard))).toBeLessThan(Math.max(...azimuths(upright)));
    expect(Math.min(...azimuths(toPort))).toBeCloseTo(-Math.max(...azimuths(toStarboard)), 6);
    expect(Math.max(...elevations(toPort))).toBeCloseTo(Math.max(...elevations(toStarboard)), 6);
  });

  it('turns directions rigidly: the solid angle of what stays above the horizon does not change', () => {
    const box = block(EYE, { origin: at(6, 0, 6), swungDeg: 0, from: [-1, -1, 0], to: [1, 1, 2] });
    const shares = [0, 10, 25].map((heel) => skyShares([asObstacle(ringOf(box, heel))]).blockedPercent);
    expect(shares[0]).toBeGreaterThan(0.5);
    for (const share of shares) expect(Math.abs(share - (shares[0] ?? 0))).toBeLessThan(0.02);
  });
});

describe('the share of the sky', () => {
  it('of a post that reaches far up is its breadth in azimuth, within 0.01 per cent of the sky', () => {
    const { blockedPercent } = skyShares([asObstacle(ringOf(post(EYE, at(2, 0, -1), 2000, 0.5)))]);
    // Above 10 degrees the sides of a tall post close on the zenith; its breadth at elevation e is unchanged in azimuth.
    const exact = (2 * Math.asin(0.25) * 180) / Math.PI / 3.6;
    expect(Math.abs(blockedPercent - exact)).toBeLessThan(0.01);
  });

  it('of a square lid overhead is what its solid angle is (rectangular pyramid, textbook)', () => {
    const lid = block(EYE, { origin: at(0, 0, 1), swungDeg: 0, from: [-1, -1, 0], to: [1, 1, 0.001] });
    const { blockedPercent } = skyShares([asObstacle(ringOf(lid))]);
    const solidAngle = 4 * Math.asin(1 / 2);
    const counted = 2 * Math.PI * (1 - Math.sin((10 * Math.PI) / 180));
    expect(Math.abs(blockedPercent - (100 * solidAngle) / counted)).toBeLessThan(0.05);
  });

  it('counts what two things hide once', () => {
    const mast = asObstacle(ringOf(post(EYE, at(4, 0, -1), 20, 0.3)));
    const alone = skyShares([mast]);
    expect(skyShares([mast, { ...mast, key: 'twin' }])).toEqual(alone);
    const weak = asObstacle(ringOf(post(EYE, at(4, 0, -1), 20, 0.6)), 2);
    const both = skyShares([mast, weak]);
    expect(both.blockedPercent).toBe(alone.blockedPercent);
    expect(both.weakenedPercent).toBeCloseTo(skyShares([weak]).weakenedPercent, 9);
  });

  it('never changes by where the bow points', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0.5, max: 30, noNaN: true }),
        fc.double({ min: 0.05, max: 0.4, noNaN: true }),
        (bearing, distanceM, radiusM) => {
          const turned = (deg: number) =>
            post(
              EYE,
              at(distanceM * Math.cos((deg * Math.PI) / 180), distanceM * Math.sin((deg * Math.PI) / 180), -2),
              9,
              radiusM,
            );
          const [one, other] = [ringOf(turned(0)), ringOf(turned(bearing))];
          expect(widthDeg(other)).toBeCloseTo(widthDeg(one), 6);
          const [a, b] = [skyShares([asObstacle(one)]), skyShares([asObstacle(other)])];
          expect(Math.abs(a.blockedPercent - b.blockedPercent)).toBeLessThan(1e-6);
        },
      ),
      { seed: 20261125, numRuns: 100 },
    );
  });

  it('of a body and its ring agree: a ray that hits the body is inside the ring, one that misses is not', () => {
    const radiusM = 0.4;
    fc.assert(
      fc.property(
        fc.double({ min: 0.6, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0.5, max: 89, noNaN: true }),
        (distanceM, azimuthDeg, elevationDeg) => {
          const view = viewOf(asObstacle(ringOf(post(EYE, at(0, distanceM, -2), 5, radiusM))));
          const [azimuth, elevation] = [(azimuthDeg * Math.PI) / 180, (elevationDeg * Math.PI) / 180];
          // Along the ground, where the ray enters the circle of the post, if it does.
          const off = distanceM * Math.sin(azimuth - Math.PI / 2);
          const along = distanceM * Math.cos(azimuth - Math.PI / 2);
          const inside = radiusM ** 2 - off ** 2;
          const entersM = along - Math.sqrt(Math.max(0, inside));
          const marginM = Math.min(Math.abs(Math.abs(off) - radiusM), Math.abs(entersM * Math.tan(elevation) - 5));
          if (marginM < 0.02) return;
          const hits = along > 0 && inside > 0 && entersM * Math.tan(elevation) < 5;
          expect(sightAt(view, azimuthDeg, elevationDeg).obstacle !== null).toBe(hits);
        },
      ),
      { seed: 20261125, numRuns: 2000 },
    );
  });
});

describe('a sail', () => {
  const corners = [at(8, 0, 10), at(3, 2, 1), at(8, 0, 1)] as const;

  it('is its three corners, and gone when seen edge-on', () => {
    const ring = ringOf(sail(EYE, corners));
    expect(Math.max(...elevations(ring))).toBeCloseTo((Math.atan2(10, 8) * 180) / Math.PI, 6);
    expect(sail(EYE, [at(8, 0, 10), at(3, 0, 1), at(8, 0, 1)])).toBeNull();
  });
});

describe('what a thing takes', () => {
  // Obstruction table of an L-band terminal installation manual, read.
  it.each([
    [0.2, 2, 2],
    [0.2, 4, 1],
    [0.4, 9, 2],
    [0.6, 22, 2],
    [0.8, 40, 2],
    [1, 65, 2],
  ])('a mast of %d m at %d m costs %d dB', (breadthM, distanceM, lossDb) => {
    expect(uprightLossDb(breadthM, distanceM, 1600)).toBeCloseTo(lossDb, 3);
  });

  it('less from farther off, more when broader or higher in frequency, without a step, never above 20 dB', () => {
    for (let distanceM = 0.05; distanceM < 90; distanceM *= 1.02) {
      for (const breadthM of [0.05, 0.19, 0.2, 0.3, 0.55, 1, 1.4]) {
        const here = uprightLossDb(breadthM, distanceM, 1600);
        expect(here).toBeLessThanOrEqual(20);
        const farther = uprightLossDb(breadthM, distanceM * 1.02, 1600);
        expect(farther).toBeLessThanOrEqual(here);
        expect(here - farther).toBeLessThan(0.3);
        expect(uprightLossDb(breadthM * 1.02, distanceM, 1600)).toBeGreaterThanOrEqual(here);
        expect(uprightLossDb(breadthM, distanceM, 1700)).toBeGreaterThanOrEqual(here);
      }
    }
  });

  it('metal and carbon block, plastic, wood and cloth only weaken', () => {
    expect(['steel', 'aluminium', 'carbon', 'ferrocement'].map((m) => shellLossDb(m as 'steel', 1600))).toEqual([
      20, 20, 20, 20,
    ]);
    for (const material of ['grp', 'wood', 'fabric'] as const) {
      expect(shellLossDb(material, 1600)).toBeGreaterThan(0);
      expect(shellLossDb(material, 12_000)).toBeGreaterThan(shellLossDb(material, 1600));
      expect(shellLossDb(material, 12_000)).toBeLessThan(20);
    }
    expect(overheadLossDb('open', 1600)).toBe(0);
    expect(overheadLossDb('metal', 1600)).toBe(20);
  });

  it.each([[0], [-1], [Number.NaN], [Number.POSITIVE_INFINITY]])('refuses %d', (bad) => {
    expect(() => uprightLossDb(bad, 1, 1600)).toThrow(RangeError);
    expect(() => uprightLossDb(0.2, bad, 1600)).toThrow(RangeError);
    expect(() => uprightLossDb(0.2, 1, bad)).toThrow(RangeError);
    expect(() => sailLossDb(bad)).toThrow(RangeError);
    expect(() => shellLossDb('grp', bad)).toThrow(RangeError);
  });
});
