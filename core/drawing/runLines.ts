import { indexProject } from '../catalogue/lookup.ts';
import type { Mast, Position } from '../model/boat.ts';
import type { Part } from '../model/part.ts';
import type { Endpoint, Project, Run } from '../model/project.ts';
import type { Point } from './geometry.ts';
import type { ProfileOptions } from './options.ts';
import { toDrawing } from './projection.ts';
import { path, pathOf } from './shapes.ts';
import { inkOf, LOST_OPACITY, type State, stateOf } from './state.ts';
import { onSheet, type SymbolLayout } from './symbols.ts';
import type { Projection, Shape } from './types.ts';

/** A run as its line lies on the sheet, from port to port. */
export interface RunLine {
  readonly run: Run;
  readonly points: readonly Point[];
}

/** Distance between parallel runs, units of a screen pixel. */
const LANE = 3.4;

/** Lines of all runs. Runs that share a mast or a bend lie side by side, in document order. */
export function runLines(
  project: Project,
  layout: SymbolLayout,
  projection: Projection,
  u: number,
): readonly RunLine[] {
  const lanes = lanesOf(project);
  return project.runs.map((run) => {
    const bends = run.via.map(({ position }) => {
      const { x, y } = toDrawing(projection, position);
      const key = laneKey(project.boat.masts, position);
      const riders = lanes.get(key) ?? [];
      const offset = (riders.indexOf(run.id) - (riders.length - 1) / 2) * LANE * u;
      return key.startsWith('mast ') ? { x: x + offset, y } : { x: x + offset, y: y + offset };
    });
    const ends = [endPoint(layout, run.from), endPoint(layout, run.to)] as const;
    return { run, points: [ends[0], ...bends, ends[1]].filter((point) => point !== undefined) };
  });
}

function endPoint(layout: SymbolLayout, endpoint: Endpoint): Point | undefined {
  const symbol = layout.get(endpoint.itemId);
  if (!symbol) return undefined;
  return onSheet(symbol, symbol.glyph.ports.get(endpoint.portId) ?? { x: 0, y: 0 });
}

/** Which runs pass each mast and each shared bend. */
function lanesOf(project: Project): ReadonlyMap<string, readonly string[]> {
  const lanes = new Map<string, string[]>();
  for (const run of project.runs) {
    for (const { position } of run.via) {
      const key = laneKey(project.boat.masts, position);
      const riders = lanes.get(key);
      if (!riders) lanes.set(key, [run.id]);
      else if (!riders.includes(run.id)) riders.push(run.id);
    }
  }
  return lanes;
}

/** Bends in one mast share its lanes all the way up; elsewhere bends within 5 cm of each other do. */
function laneKey(masts: readonly Mast[], { xM, zM }: Position): string {
  const mast = masts.find((m) => Math.abs(m.xM - xM) <= 0.3 && zM >= m.footZM - 0.3 && zM <= m.truckZM + 0.3);
  return mast ? `mast ${mast.id}` : `${Math.round(xM / 0.05)} ${Math.round(zM / 0.05)}`;
}

/** The line of each run: its dash tells the family of cable, its width whether it is a thick one. */
export function drawRun(project: Project, line: RunLine, options: ProfileOptions): readonly Shape[] {
  const { run, points } = line;
  if (points.length < 2 || !isNearSheet(points, options)) return [];
  const u = options.textSize / 11;
  const state = stateOf(options, 'run', run.id);
  const style = cableStyle(indexProject(project).parts.get(run.cableId));
  const d = pathOf(points);
  const subject = { kind: 'run', id: run.id } as const;
  const dash = state.fate === 'lost' ? [2, 3] : style.dash;
  const under = state.selected
    ? [path(d, { layer: 'installation', stroke: 'run-selected', width: (style.width + 4) * u, opacity: 0.25 })]
    : [];
  return [
    ...under,
    path(d, {
      layer: 'installation',
      stroke: inkOf(state, 'run'),
      width: style.width * u,
      dash: dash?.map((length) => length * u),
      opacity: state.opacity,
      subject,
    }),
  ];
}

/** Something of the line may be seen. */
export function isNearSheet(points: readonly Point[], { width, height }: ProfileOptions): boolean {
  return (
    points.some(({ x }) => x >= 0) &&
    points.some(({ x }) => x <= width) &&
    points.some(({ y }) => y >= 0) &&
    points.some(({ y }) => y <= height)
  );
}

export interface CableStyle {
  readonly family: string;
  readonly width: number;
  /** Units of a screen pixel. */
  readonly dash: readonly number[] | undefined;
}

const SOLID = undefined;

/**
 * How a type of cable is drawn, by its family: thick low-loss and thick solid-dielectric in broad lines, medium and thin
 * ones in narrower, more broken ones; 75 ohm dotted; a single wire dash-dot-dot.
 */
export function cableStyle(part: Part | undefined): CableStyle {
  if (part?.kind !== 'coax') return { family: 'Unknown cable', width: 1.7, dash: [1.5, 4] };
  const { impedanceOhm, outsideDiameterMm, lossK2 } = part.figures;
  if (part.id.startsWith('lead-in') || impedanceOhm.value > 120) {
    return { family: 'Single-wire lead-in', width: 1.8, dash: [8, 2, 1.5, 2, 1.5, 2] };
  }
  if (impedanceOhm.value >= 65) return { family: '75 ohm coax', width: 1.8, dash: [1.8, 2.4] };
  const od = outsideDiameterMm.value;
  const lowLoss = lossK2.value < LOW_LOSS_K2;
  if (od >= 9)
    return { family: lowLoss ? 'Thick low-loss coax' : 'Thick coax', width: 2.2, dash: lowLoss ? SOLID : [15, 2.5] };
  if (od >= 5.7) {
    return {
      family: lowLoss ? 'Medium low-loss coax' : 'Medium coax',
      width: 1.8,
      dash: lowLoss ? [11, 2.5, 2, 2.5] : [9, 3],
    };
  }
  return {
    family: lowLoss ? 'Thin low-loss coax' : 'Thin coax',
    width: 1.6,
    dash: lowLoss ? [6, 2, 1.5, 2] : [5, 2.5],
  };
}

/** Foam-and-foil cables lose next to nothing in the dielectric; solid and braided ones several times this, dB / (100 m MHz). */
const LOW_LOSS_K2 = 0.0035;

/** What a failure leaves of a label. */
export const labelOpacity = (state: State): number | undefined =>
  state.fate === 'lost' ? LOST_OPACITY + 0.2 : undefined;
