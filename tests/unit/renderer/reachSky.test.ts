import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SkyObstacle, SkyView } from '../../../core/siting/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import type { RichText } from '../../../core/units/quantity.ts';
import {
  BALLOON_PX,
  type Dome,
  domeDirection,
  domePoint,
  drawnObstacles,
  outlinePoints,
  spreadAngles,
} from '../../../renderer/panels/reach/skyLayout.ts';
import {
  bearingWords,
  headingShares,
  sightReading,
  skySummary,
  standingDeg,
} from '../../../renderer/panels/reach/skyWords.ts';

const said = (text: RichText): string => formatText(text, METRIC_PREFERENCES);
const DOME: Dome = { centre: { x: 180, y: 180 }, radius: 140 };

const ring = (from: number, to: number, low: number, high: number): SkyObstacle['outline'] => [
  { azimuthDeg: from, elevationDeg: low },
  { azimuthDeg: to, elevationDeg: low },
  { azimuthDeg: to, elevationDeg: high },
  { azimuthDeg: from, elevationDeg: high },
];
const obstacle = (key: string, outline: SkyObstacle['outline'], lossDb = 20): SkyObstacle => ({
  key,
  label: key,
  subject: null,
  kind: lossDb >= 20 ? 'blocks' : 'weakens',
  lossDb,
  outline,
});

describe('the dome', () => {
  it('has the bow up, starboard right, the zenith in the middle and the horizon at the rim', () => {
    expect(domePoint(DOME, { azimuthDeg: 0, elevationDeg: 0 })).toEqual({ x: 180, y: 40 });
    const starboard = domePoint(DOME, { azimuthDeg: 90, elevationDeg: 45 });
    expect(starboard.x).toBeCloseTo(250, 9);
    expect(starboard.y).toBeCloseTo(180, 9);
    expect(domePoint(DOME, { azimuthDeg: 77, elevationDeg: 90 })).toEqual({ x: 180, y: 180 });
  });

  it('finds the direction under a point again', () => {
    const azimuth = fc.double({ min: 0, max: 359.9, noNaN: true });
    const elevation = fc.double({ min: 0.01, max: 89, noNaN: true });
    fc.assert(
      fc.property(azimuth, elevation, (azimuthDeg, elevationDeg) => {
        const found = domeDirection(DOME, domePoint(DOME, { azimuthDeg, elevationDeg }));
        expect(found?.elevationDeg).toBeCloseTo(elevationDeg, 6);
        expect(Math.cos((((found?.azimuthDeg ?? 0) - azimuthDeg) * Math.PI) / 180)).toBeCloseTo(1, 9);
      }),
    );
    expect(domeDirection(DOME, { x: 0, y: 0 })).toBeNull();
  });

  it('runs a line of one elevation round the zenith instead of straight across', () => {
    const points = outlinePoints(DOME, ring(20, 160, 30, 60));
    const radii = points.map(({ x, y }) => Math.hypot(x - 180, y - 180));
    const [inner, outer] = [(30 / 90) * 140, (60 / 90) * 140];
    for (const radius of radii) {
      expect(radius).toBeGreaterThan(inner - 1e-6);
      expect(radius).toBeLessThan(outer + 1e-6);
    }
    expect(radii.filter((radius) => Math.abs(radius - outer) < 1e-6).length).toBeGreaterThan(40);
  });

  it('fills the whole disc for what is overhead all round', () => {
    const points = outlinePoints(DOME, ring(0, 360, 0, 90));
    for (const { x, y } of points) expect(Math.hypot(x - 180, y - 180)).toBeCloseTo(140, 6);
    expect(points.length).toBeGreaterThan(100);
  });

  it('puts the dot of a leader inside its area and the balloons clear of each other, outside the rim', () => {
    const drawn = drawnObstacles(DOME, [
      obstacle('mast', ring(-2, 2, 0, 80)),
      obstacle('boom', ring(-30, 30, 5, 20)),
      obstacle('sail', ring(-3, 1, 10, 70), 2),
      obstacle('dome', ring(170, 190, 0, 15)),
      obstacle('GRP overhead', ring(0, 360, 0, 90), 1.5),
    ]);
    expect(drawn.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
    for (const [index, { anchor, balloon }] of drawn.entries()) {
      expect(Math.hypot(anchor.x - 180, anchor.y - 180)).toBeLessThan(140);
      expect(Math.hypot(balloon.x - 180, balloon.y - 180)).toBeGreaterThanOrEqual(140 + BALLOON_PX);
      for (const other of drawn.slice(index + 1)) {
        const apart = Math.hypot(balloon.x - other.balloon.x, balloon.y - other.balloon.y);
        expect(apart).toBeGreaterThan(2 * BALLOON_PX);
      }
    }
    const boom = domeDirection(DOME, drawn[1]?.anchor ?? { x: 0, y: 0 });
    expect(boom?.elevationDeg).toBeGreaterThan(5);
    expect(boom?.elevationDeg).toBeLessThan(20);
  });

  it('spreads angles by no less than the gap, whatever they were', () => {
    const angles = fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { maxLength: 20 });
    fc.assert(
      fc.property(angles, (given) => {
        const placed = spreadAngles(given, 0.15).toSorted((a, b) => a - b);
        for (const [index, at] of placed.entries()) {
          const next = placed[index + 1] ?? (placed[0] ?? 0) + 2 * Math.PI;
          expect(next - at).toBeGreaterThan(placed.length === 1 ? 1 : 0.148);
        }
      }),
    );
  });

  it('leaves angles alone that are far enough apart', () => {
    expect(spreadAngles([3, 1, 2], 0.5)).toEqual([3, 1, 2]);
  });
});

describe('words for the sky', () => {
  const view: SkyView = {
    obstacles: [obstacle('mast', ring(0, 1, 0, 80))],
    blockedPercent: 0.4,
    weakenedPercent: 12,
    isShut: false,
  };

  it('say how much of it is gone', () => {
    expect(said(skySummary(view))).toBe('0.4 % of the sky above 10° is blocked, 12 % more is weakened.');
    expect(said(skySummary({ ...view, blockedPercent: 0 }))).toBe(
      'Nothing blocks it; 12 % of the sky above 10° is weakened.',
    );
    expect(said(skySummary({ ...view, blockedPercent: 12 }))).toBe('12 % of the sky above 10° is blocked.');
    expect(said(skySummary({ ...view, isShut: true }))).toContain('No sky at all');
    expect(said(skySummary({ ...view, obstacles: [] }))).toContain('whole sky is open');
  });

  it.each([
    [0, 'dead ahead'],
    [359.7, 'dead ahead'],
    [35, '35° to starboard of the bow'],
    [100, '80° to starboard of the stern'],
    [180, 'right astern'],
    [270, 'on the port beam'],
    [300, '60° to port of the bow'],
    [190, '10° to port of the stern'],
  ])('name a bearing of %f degrees', (deg, words) => {
    expect(said(bearingWords(deg))).toBe(words);
  });

  it('say what stands in a direction and what it takes', () => {
    const at = { azimuthDeg: 35, elevationDeg: 30 };
    expect(said(sightReading(at, { lossDb: 0, obstacle: null }))).toBe(
      '35° to starboard of the bow, 30° up: open sky.',
    );
    const sail = obstacle('Mainsail', ring(0, 1, 0, 1), 2);
    expect(said(sightReading({ azimuthDeg: 0, elevationDeg: 30 }, { lossDb: 2, obstacle: sail }))).toBe(
      'Dead ahead, 30° up: Mainsail takes 2.0 dB.',
    );
    const mast = obstacle('Main mast', ring(0, 1, 0, 1));
    expect(said(sightReading({ azimuthDeg: 0, elevationDeg: 90 }, { lossDb: 20, obstacle: mast }))).toBe(
      'Straight up: Main mast blocks it, 20 dB or more.',
    );
  });

  it('know where a geostationary satellite stands, and when it is below the horizon', () => {
    expect(standingDeg(0, 0)).toBeCloseTo(90, 6);
    expect(standingDeg(45, 0)).toBeCloseTo(38.2, 1);
    expect(standingDeg(85, 0)).toBeNull();
    expect(standingDeg(45, 80)).toBeNull();
  });

  it('count the headings on which it is hidden', () => {
    expect(headingShares(30, () => 0)).toEqual({ blockedPercent: 0, weakenedPercent: 0 });
    const shares = headingShares(30, ({ azimuthDeg }) => (azimuthDeg < 90 ? 20 : azimuthDeg < 180 ? 3 : 0));
    expect(shares).toEqual({ blockedPercent: 25, weakenedPercent: 25 });
  });
});
