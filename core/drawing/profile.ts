import type { Project } from '../model/project.ts';
import { drawBackdrop, wireAntennas } from './backdrop.ts';
import { type PlacedBalloon, placeBalloons } from './balloonLayout.ts';
import { drawBalloons } from './balloonShapes.ts';
import { drawServiceLine, type ServiceLine, serviceLines } from './feedLines.ts';
import { type Marks, marksOf } from './findingMarks.ts';
import { along, type Box, boxAround, type Point } from './geometry.ts';
import { drawGrid } from './grid.ts';
import { sheerZM } from './hullLines.ts';
import { cross, drawSymbols, isOnSheet } from './installation.ts';
import { drawKey } from './key.ts';
import { placeLabels, stretchOwner } from './labelLayout.ts';
import { drawLabels } from './labelShapes.ts';
import { Occupancy } from './occupancy.ts';
import { type DrawnResults, type ProfileOptions, subjectKey } from './options.ts';
import { drawOtherMarks, drawPlaceNames, drawPlaces } from './placeMarks.ts';
import { toDrawing } from './projection.ts';
import { stays } from './rig.ts';
import { runWords } from './runLabels.ts';
import { drawRun, type RunLine, runLines } from './runLines.ts';
import { silhouetteOf } from './silhouette.ts';
import { layoutSymbols, type SymbolLayout } from './symbols.ts';
import { drawTags } from './tags.ts';
import type { Drawing, Shape } from './types.ts';

export { drawBackdrop } from './backdrop.ts';
export type { DrawnResults, FailureView, ProfileOptions, ShownParts } from './options.ts';

/** The whole profile: backdrop below, installation above. Pure: the same input gives the same shapes. */
export function drawProfile(project: Project, results: DrawnResults, options: ProfileOptions): Drawing {
  return {
    width: options.width,
    height: options.height,
    projection: options.projection,
    shapes: [...drawBackdrop(project, options), ...drawInstallation(project, results, options)],
  };
}

/** Everything of the installation in the order it is inked: feeds and links, runs, symbols, labels, balloons, flags. */
export function drawInstallation(project: Project, results: DrawnResults, options: ProfileOptions): readonly Shape[] {
  const u = options.textSize / 11;
  const layout = layoutSymbols(project, options.projection, options.textSize);
  const runs = runLines(project, layout, options.projection, u);
  const services = serviceLines(project, layout, options);
  const marks = marksOf(project, results.findings, options);
  const key = drawKey(project, options);
  const words = options.show.grid ? [...drawGrid(project, options).boxes, key.box] : [];
  const balloons = balloonsOf(project, layout, { marks, words }, options);
  const taken = occupied(project, layout, { runs, services, balloons, words }, options);
  const labels = options.show.labels
    ? placeLabels(runs, runWords(project, results.paths, options.preferences), marks, taken, options)
    : [];
  const labelled = new Set(labels.map(({ runId }) => subjectKey({ kind: 'run', id: runId })));
  const otherMarks = new Map(
    [...marks].filter(([key]) => !labelled.has(key) && !(options.show.balloons && key.startsWith('item:'))),
  );
  return [
    ...(options.show.grid ? key.shapes : []),
    ...drawPlaces(project, options),
    ...services.map((service) => drawServiceLine(service, options)),
    ...runs.flatMap((run) => drawRun(project, run, options)),
    ...lostCrosses(runs, options),
    ...drawSymbols(project, layout, options),
    ...drawLabels(labels, options),
    ...drawTags(project, layout, taken, options),
    ...drawPlaceNames(project, taken, options),
    ...drawBalloons(balloons, options),
    ...drawOtherMarks(project, otherMarks, middlesOf(runs, services), taken, options),
  ];
}

function balloonsOf(
  project: Project,
  layout: SymbolLayout,
  around: { readonly marks: Marks; readonly words: readonly Box[] },
  options: ProfileOptions,
): readonly PlacedBalloon[] {
  if (!options.show.balloons) return [];
  const seen = project.items.flatMap((item) => {
    const symbol = layout.get(item.id);
    return symbol && isOnSheet(symbol, options) ? [symbol] : [];
  });
  const silhouette = silhouetteOf(project, layout, options);
  const keepClear = [...around.words, ...sparBoxes(project, options)];
  return placeBalloons(project, seen, { silhouette, marks: around.marks, keepClear }, options);
}

/** Masts and booms, which no balloon is drawn over. */
function sparBoxes(project: Project, options: ProfileOptions): readonly Box[] {
  if (!options.show.boat) return [];
  const box = (xForeM: number, xAftM: number, zLowM: number, zHighM: number): Box => {
    const high = toDrawing(options.projection, { xM: xAftM, zM: zHighM });
    const low = toDrawing(options.projection, { xM: xForeM, zM: zLowM });
    return { left: high.x, right: low.x, top: high.y, bottom: low.y };
  };
  return project.boat.masts.flatMap(({ xM, footZM, truckZM, boomZM, boomLengthM }) => [
    box(xM - 0.15, xM + 0.15, footZM, truckZM),
    ...(boomZM === null ? [] : [box(xM, xM + boomLengthM, boomZM - 0.1, boomZM + 0.07 * boomLengthM)]),
  ]);
}

/** What labels must not cover, and what they had better not. */
function occupied(
  project: Project,
  layout: SymbolLayout,
  drawn: {
    readonly runs: readonly RunLine[];
    readonly services: readonly ServiceLine[];
    readonly balloons: readonly PlacedBalloon[];
    readonly words: readonly Box[];
  },
  options: ProfileOptions,
): Occupancy {
  const taken = new Occupancy(26 * (options.textSize / 11));
  for (const box of drawn.words) taken.addBox(box);
  for (const { box, item } of layout.values()) if (!item.endPosition) taken.addBox(box);
  for (const { center, radius, flag, dot } of drawn.balloons) {
    taken.addBox(boxAround(center, radius, radius));
    if (flag) taken.addBox(flag);
    taken.addLine(dot, center, 2);
  }
  for (const { run, points } of drawn.runs) addChain(taken, points, 1.4, run.id);
  for (const { points } of drawn.services) addChain(taken, points, 0.7);
  if (options.show.boat) for (const { points, weight } of boatLines(project, options)) addChain(taken, points, weight);
  return taken;
}

function addChain(taken: Occupancy, points: readonly Point[], weight: number, runId?: string): void {
  points.forEach((point, index) => {
    const previous = points[index - 1];
    if (previous) taken.addLine(previous, point, weight, runId && stretchOwner(runId, index));
  });
}

/** Lines of the boat that words had better not cover, and how much it matters. */
function boatLines(project: Project, options: ProfileOptions): readonly { points: readonly Point[]; weight: number }[] {
  const { boat } = project;
  const wires = wireAntennas(project);
  const at = (xM: number, zM: number): Point => toDrawing(options.projection, { xM, zM });
  const stations = Array.from({ length: 9 }, (_, index) => (boat.loaM * index) / 8);
  return [
    ...stays(boat, wires).map((stay) => ({ points: stay.points.map(([xM, zM]) => at(xM, zM)), weight: 0.5 })),
    ...boat.masts.map(({ xM, footZM, truckZM }) => ({ points: [at(xM, footZM), at(xM, truckZM)], weight: 2 })),
    { points: stations.map((xM) => at(xM, sheerZM(boat, xM))), weight: 0.6 },
    ...wires.map(({ position, endPosition }) => ({
      points: [position, endPosition ?? position].map((end) => at(end.xM, end.zM)),
      weight: 2,
    })),
  ];
}

/** A run that is lost is crossed out in its middle. */
function lostCrosses(runs: readonly RunLine[], options: ProfileOptions): readonly Shape[] {
  const u = options.textSize / 11;
  return runs.flatMap(({ run, points }) => {
    if (!options.failure?.lost.has(`run:${run.id}`)) return [];
    const middle = middleOf(points);
    return middle ? [cross(middle, 4 * u, u)] : [];
  });
}

function middlesOf(runs: readonly RunLine[], services: readonly ServiceLine[]): ReadonlyMap<string, Point> {
  const middles = new Map<string, Point>();
  for (const { run, points } of runs) {
    const middle = middleOf(points);
    if (middle) middles.set(`run:${run.id}`, middle);
  }
  for (const { kind, id, points } of services) {
    const middle = middleOf(points);
    if (middle) middles.set(`${kind}:${id}`, middle);
  }
  return middles;
}

/** Middle of the longest stretch. */
function middleOf(points: readonly Point[]): Point | null {
  let best: { readonly middle: Point; readonly length: number } | null = null;
  points.forEach((point, index) => {
    const previous = points[index - 1];
    if (!previous) return;
    const length = Math.hypot(point.x - previous.x, point.y - previous.y);
    if (!best || length > best.length) best = { middle: along(previous, point, 0.5), length };
  });
  return (best as { readonly middle: Point } | null)?.middle ?? null;
}
