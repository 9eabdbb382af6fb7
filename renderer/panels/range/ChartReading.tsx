import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import { useFormat } from '../../ui/text.ts';
import { LEFT_PX, type LevelScale, PLOT_PX, RIGHT_PX } from './chartLayout.ts';
import { levelAtDbm, readingWords } from './reading.ts';
import type { DistanceScale } from './scale.ts';

const STEPS = 100;

/**
 * A cross on the curve under the pointer or moved by the arrow keys, and what it reads in words. It keeps its state to
 * itself, so that reading does not draw the chart anew.
 */
export function ChartReading({
  curve,
  distance,
  level,
  top,
  width,
}: {
  curve: LevelCurve;
  distance: DistanceScale;
  level: LevelScale;
  top: number;
  width: number;
}) {
  const { rich } = useFormat();
  const [shownKm, setShownKm] = useState<number | null>(null);
  const { endKm } = distance;
  const km = shownKm === null ? null : Math.min(shownKm, endKm);
  const words = km === null ? null : rich(readingWords(curve, km));
  const plotPx = Math.max(1, width - LEFT_PX - RIGHT_PX);
  const read = (event: PointerEvent): void => {
    const { left } = event.currentTarget.getBoundingClientRect();
    setShownKm(clamped(((event.clientX - left) / plotPx) * endKm, endKm));
  };
  const step = (event: KeyboardEvent): void => {
    const next = keyedKm(event.key, km ?? endKm / 2, endKm);
    if (next === null) return;
    event.preventDefault();
    setShownKm(clamped(next, endKm));
  };
  return (
    <>
      {km === null ? null : <Cross curve={curve} km={km} distance={distance} level={level} top={top} width={width} />}
      {/* A slide that is moved along the curve: its value in words is the reading, and is read out as it moves. */}
      <div
        className="chart-reading"
        style={{ left: LEFT_PX, top, width: plotPx, height: PLOT_PX }}
        role="slider"
        tabIndex={0}
        aria-label="Reading of the level curve at a distance"
        aria-valuemin={0}
        aria-valuemax={round(endKm)}
        aria-valuenow={round(km ?? endKm / 2)}
        aria-valuetext={rich(readingWords(curve, km ?? endKm / 2))}
        onPointerMove={read}
        onPointerDown={read}
        onPointerLeave={(event) => event.currentTarget !== document.activeElement && setShownKm(null)}
        onFocus={() => setShownKm(km ?? endKm / 2)}
        onBlur={() => setShownKm(null)}
        onKeyDown={step}
      />
      <p className="small chart-words">
        {words ?? (
          <span className="soft">Point at the curve, or move along it with the arrow keys, to read a level.</span>
        )}
      </p>
    </>
  );
}

const round = (km: number): number => Math.round(km * 10) / 10;
const clamped = (km: number, endKm: number): number => Math.min(endKm, Math.max(endKm / STEPS, km));

/** Where a key takes the reading, km; null for a key that has nothing to do with it. */
function keyedKm(key: string, km: number, endKm: number): number | null {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: 1,
    ArrowUp: 1,
    ArrowLeft: -1,
    ArrowDown: -1,
    PageUp: 10,
    PageDown: -10,
    End: STEPS,
    Home: -STEPS,
  };
  const by = steps[key];
  return by === undefined ? null : km + (by * endKm) / STEPS;
}

function Cross({
  curve,
  km,
  distance,
  level,
  top,
  width,
}: {
  curve: LevelCurve;
  km: number;
  distance: DistanceScale;
  level: LevelScale;
  top: number;
  width: number;
}) {
  const dbm = levelAtDbm(curve.points, km);
  if (dbm === null) return null;
  const x = distance.x(km);
  const y = Math.max(top, level(dbm));
  return (
    <svg className="chart-cross" width={width} height={top + PLOT_PX} aria-hidden="true">
      <path className="chart-cross-line" d={`M${x} ${top}V${top + PLOT_PX}M${LEFT_PX} ${y}H${width - RIGHT_PX}`} />
      <circle className="chart-cross-dot" cx={x} cy={y} r={4} />
    </svg>
  );
}
