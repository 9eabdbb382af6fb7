import { type KeyboardEvent, type PointerEvent, useId } from 'react';
import type { SkyView } from '../../../core/siting/types.ts';
import {
  BALLOON_PX,
  type Direction,
  type Dome,
  type DrawnObstacle,
  domeDirection,
  domePoint,
  drawnObstacles,
  type PointPx,
  RIM_ROOM_PX,
  RINGS_DEG,
} from './skyLayout.ts';

/** The sky over one antenna, seen as the boat sees it, with what stands in it. Arrow keys and the pointer move the sight. */
export function SkyDome({
  view,
  size,
  at,
  reading,
  describedBy,
  satelliteDeg,
  onLook,
}: {
  view: SkyView;
  /** Width and height, px. */
  size: number;
  at: Direction;
  /** What is found there, in words. */
  reading: string;
  describedBy: string;
  /** Elevation at which a geostationary satellite stands; null for none. */
  satelliteDeg: number | null;
  onLook: (at: Direction) => void;
}) {
  const dome: Dome = { centre: { x: size / 2, y: size / 2 }, radius: size / 2 - RIM_ROOM_PX };
  const look = (event: PointerEvent<HTMLDivElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const direction = domeDirection(dome, { x: event.clientX - box.left, y: event.clientY - box.top });
    if (direction) onLook(direction);
  };
  return (
    <div
      className="dome"
      role="slider"
      tabIndex={0}
      aria-label="Direction looked at: left and right arrows turn, up and down arrows raise"
      aria-valuemin={0}
      aria-valuemax={359}
      aria-valuenow={Math.round(at.azimuthDeg) % 360}
      aria-valuetext={reading}
      aria-describedby={describedBy}
      onPointerMove={look}
      onPointerDown={look}
      onKeyDown={(event) => turn(event, at, onLook)}
    >
      <DomeDrawing view={view} size={size} dome={dome} at={at} satelliteDeg={satelliteDeg} />
    </div>
  );
}

function DomeDrawing({
  view,
  size,
  dome,
  at,
  satelliteDeg,
}: {
  view: SkyView;
  size: number;
  dome: Dome;
  at: Direction;
  satelliteDeg: number | null;
}) {
  const id = useId();
  const drawn = drawnObstacles(dome, view.obstacles);
  return (
    <svg width={size} height={size} aria-hidden="true">
      <Hatches id={id} />
      <Sky dome={dome} isShut={view.isShut} id={id} />
      <g clipPath={`url(#${id}-rim)`}>
        {drawn.map(({ obstacle, path }) => (
          <g key={obstacle.key}>
            <path className={`dome-area dome-area--${obstacle.kind}`} d={path} />
            <path className="dome-outline" d={path} fill={`url(#${id}-${obstacle.kind})`} />
          </g>
        ))}
      </g>
      <Rings dome={dome} satelliteDeg={satelliteDeg} />
      {drawn.map((each) => (
        <Balloon key={each.obstacle.key} drawn={each} />
      ))}
      <Sight dome={dome} at={at} />
    </svg>
  );
}

const [TURN_DEG, RAISE_DEG] = [5, 5];

function turn(event: KeyboardEvent, at: Direction, onLook: (at: Direction) => void): void {
  const [azimuth, elevation] = [Math.round(at.azimuthDeg / 5) * 5, Math.round(at.elevationDeg / 5) * 5];
  const next: Readonly<Record<string, Direction>> = {
    ArrowLeft: { azimuthDeg: azimuth - TURN_DEG, elevationDeg: elevation },
    ArrowRight: { azimuthDeg: azimuth + TURN_DEG, elevationDeg: elevation },
    ArrowUp: { azimuthDeg: azimuth, elevationDeg: elevation + RAISE_DEG },
    ArrowDown: { azimuthDeg: azimuth, elevationDeg: elevation - RAISE_DEG },
    Home: { azimuthDeg: 0, elevationDeg: elevation },
    End: { azimuthDeg: 180, elevationDeg: elevation },
  };
  const to = next[event.key];
  if (!to) return;
  event.preventDefault();
  onLook({
    azimuthDeg: (to.azimuthDeg + 360) % 360,
    elevationDeg: Math.max(0, Math.min(90, to.elevationDeg)),
  });
}

/** Close hatching for what blocks, wide and the other way for what weakens. */
function Hatches({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={`${id}-blocks`} width={4} height={4} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className="dome-hatch" d="M0 0V4" />
      </pattern>
      <pattern id={`${id}-weakens`} width={9} height={9} patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path className="dome-hatch dome-hatch--light" d="M0 0V9" />
      </pattern>
    </defs>
  );
}

function Sky({ dome: { centre, radius }, isShut, id }: { dome: Dome; isShut: boolean; id: string }) {
  return (
    <>
      <clipPath id={`${id}-rim`}>
        <circle cx={centre.x} cy={centre.y} r={radius} />
      </clipPath>
      <circle className="dome-sky" cx={centre.x} cy={centre.y} r={radius} />
      {isShut ? <circle cx={centre.x} cy={centre.y} r={radius} fill={`url(#${id}-blocks)`} /> : null}
    </>
  );
}

/** Rings of elevation, the four quarters, the boat in the middle of it all, and where a geostationary satellite stands. */
function Rings({ dome, satelliteDeg }: { dome: Dome; satelliteDeg: number | null }) {
  const { centre, radius } = dome;
  const r = (elevationDeg: number): number => ((90 - elevationDeg) / 90) * radius;
  const words = radius + RIM_ROOM_PX - 6;
  return (
    <g>
      <path
        className="dome-ring"
        d={`M${centre.x - radius} ${centre.y}H${centre.x + radius}M${centre.x} ${centre.y - radius}V${centre.y + radius}`}
      />
      {RINGS_DEG.map((deg) => (
        <circle key={deg} className="dome-ring" cx={centre.x} cy={centre.y} r={r(deg)} />
      ))}
      {RINGS_DEG.map((deg) => (
        <RingTag key={deg} deg={deg} at={domePoint(dome, { azimuthDeg: 135, elevationDeg: deg })} />
      ))}
      <circle className="dome-rim" cx={centre.x} cy={centre.y} r={radius} />
      {satelliteDeg === null ? null : (
        <circle className="dome-satellite" cx={centre.x} cy={centre.y} r={r(satelliteDeg)} />
      )}
      <path className="dome-boat" d={`M${centre.x} ${centre.y - 9}c4 5 4 10 3 16h-6c-1 -6 -1 -11 3 -16z`} />
      <text className="dome-quarter" x={centre.x} y={centre.y - words + 8} textAnchor="middle">
        bow
      </text>
      <text className="dome-quarter" x={centre.x} y={centre.y + words} textAnchor="middle">
        stern
      </text>
      <Side x={centre.x + words - 4} y={centre.y} turnDeg={90} word="starboard" />
      <Side x={centre.x - words + 4} y={centre.y} turnDeg={-90} word="port" />
    </g>
  );
}

function RingTag({ deg, at: { x, y } }: { deg: number; at: PointPx }) {
  return (
    <g>
      <rect className="dome-tag-back" x={x - 11} y={y - 8} width={22} height={15} />
      <text className="dome-tag" x={x} y={y + 4} textAnchor="middle">
        {deg}°
      </text>
    </g>
  );
}

function Side({ x, y, turnDeg, word }: { x: number; y: number; turnDeg: number; word: string }) {
  return (
    <text className="dome-quarter" textAnchor="middle" transform={`translate(${x} ${y}) rotate(${turnDeg})`}>
      {word}
    </text>
  );
}

function Balloon({ drawn: { number, anchor, balloon } }: { drawn: DrawnObstacle }) {
  return (
    <g>
      <path className="dome-leader dome-leader--halo" d={`M${anchor.x} ${anchor.y}L${balloon.x} ${balloon.y}`} />
      <path className="dome-leader" d={`M${anchor.x} ${anchor.y}L${balloon.x} ${balloon.y}`} />
      <circle className="dome-dot" cx={anchor.x} cy={anchor.y} r={2} />
      <circle className="dome-balloon" cx={balloon.x} cy={balloon.y} r={BALLOON_PX} />
      <text className="dome-number" x={balloon.x} y={balloon.y + 4} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

/** Where the sight is laid. */
function Sight({ dome, at }: { dome: Dome; at: Direction }) {
  const { x, y } = domePoint(dome, at);
  return (
    <g className="dome-sight">
      <circle className="dome-sight-halo" cx={x} cy={y} r={6} />
      <circle cx={x} cy={y} r={6} />
      <path d={`M${x - 10} ${y}h6M${x + 4} ${y}h6M${x} ${y - 10}v6M${x} ${y + 4}v6`} />
    </g>
  );
}
