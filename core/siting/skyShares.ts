import type { Direction } from './skyGeometry.ts';
import type { SkyObstacle, SkyView } from './types.ts';

/** Loss from which a direction counts as blocked, dB. */
export const BLOCKED_DB = 20;
/** Sky that is counted begins here, degrees: satellites are seldom worked lower. */
export const COUNTED_FROM_DEG = 10;
/** Rows of equal area the counted sky is cut into. */
const ROWS = 180;

type Span = readonly [from: number, to: number];

/** Where a ring is crossed at one elevation: spans of azimuth within 0 to 360. */
export function spansAt(ring: readonly Direction[], elevationDeg: number): readonly Span[] {
  const crossings: number[] = [];
  ring.forEach((from, index) => {
    const to = ring[(index + 1) % ring.length] ?? from;
    if (from.elevationDeg <= elevationDeg === to.elevationDeg <= elevationDeg) return;
    const share = (elevationDeg - from.elevationDeg) / (to.elevationDeg - from.elevationDeg);
    crossings.push(from.azimuthDeg + share * (to.azimuthDeg - from.azimuthDeg));
  });
  crossings.sort((a, b) => a - b);
  return crossings.flatMap((from, index) => (index % 2 === 0 ? folded(from, crossings[index + 1] ?? from) : []));
}

/** A span brought within 0 to 360, in two pieces where it runs over the bow. */
function folded(from: number, to: number): readonly Span[] {
  if (to - from >= 360) return [[0, 360]];
  const start = from - 360 * Math.floor(from / 360);
  const end = start + (to - from);
  return end <= 360
    ? [[start, end]]
    : [
        [start, 360],
        [0, end - 360],
      ];
}

/** Degrees of azimuth that spans cover, each once. */
function coveredDeg(spans: readonly Span[]): number {
  let [covered, reached] = [0, 0];
  for (const [from, to] of spans.toSorted((a, b) => a[0] - b[0])) {
    covered += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return covered;
}

/**
 * Share of the sky above 10 degrees that is blocked, and that is blocked or weakened, per cent of its solid angle. The sky is cut
 * into 180 rows of equal area; in each the azimuths are exact, and what two things hide counts once.
 */
export function skyShares(obstacles: readonly SkyObstacle[]): Pick<SkyView, 'blockedPercent' | 'weakenedPercent'> {
  const lowest = Math.sin((COUNTED_FROM_DEG * Math.PI) / 180);
  let [blockedDeg, weakenedDeg] = [0, 0];
  for (let row = 0; row < ROWS; row++) {
    const elevationDeg = (Math.asin(lowest + ((row + 0.5) / ROWS) * (1 - lowest)) * 180) / Math.PI;
    const seen = obstacles.map((obstacle) => ({ obstacle, spans: spansAt(obstacle.outline, elevationDeg) }));
    const blocking = seen.filter(({ obstacle }) => obstacle.kind === 'blocks');
    blockedDeg += coveredDeg(blocking.flatMap(({ spans }) => spans));
    weakenedDeg += coveredDeg(seen.flatMap(({ spans }) => spans));
  }
  const percent = 100 / (360 * ROWS);
  return { blockedPercent: blockedDeg * percent, weakenedPercent: weakenedDeg * percent };
}
