import { assess } from '../../core/assess.ts';
import { drawInstallation } from '../../core/drawing/profile.ts';
import { fitProjection } from '../../core/drawing/projection.ts';
import { moveItems } from '../../core/edit/items.ts';
import type { Project } from '../../core/model/project.ts';
import { METRIC_PREFERENCES } from '../../core/units/preferences.ts';
import { generatedVessel } from '../support/generatedVessel.ts';
import { demo } from './demo.ts';
import { median, milliseconds } from './timing.ts';

/** A copy that shares nothing, so that no cache by identity can help. */
const cold = (project: Project): Project => structuredClone(project);

/** The antenna is moved, because most hangs on it. */
function moved(project: Project, step: number): Project {
  const antenna = project.items.find((item) => item.partId.startsWith('antenna')) ?? project.items[0];
  return antenna ? moveItems(project, [antenna.id], { dxM: 0.01 * step, dyM: 0, dzM: 0 }) : project;
}

function draw(project: Project): unknown {
  const { paths, findings } = assess(project);
  const projection = fitProjection(project, 1100, 700, 20);
  const show = {
    grid: true,
    boat: true,
    labels: true,
    balloons: true,
    findingMarks: true,
    feeds: false,
    links: false,
    places: false,
  };
  const options = { width: 1100, height: 700, projection, textSize: 11, preferences: METRIC_PREFERENCES, show };
  return drawInstallation(project, { paths, findings }, options);
}

function row(name: string, project: Project): Record<string, string | number> {
  const coldTimes = Array.from({ length: 7 }, () => {
    const copy = cold(project);
    return milliseconds(() => assess(copy));
  });
  let current = project;
  assess(current);
  draw(current);
  const moveTimes: number[] = [];
  const stepTimes: number[] = [];
  for (let step = 1; step <= 31; step += 1) {
    const next = moved(current, step % 2 === 0 ? 1 : -1);
    const assessed = milliseconds(() => assess(next));
    moveTimes.push(assessed);
    stepTimes.push(assessed + milliseconds(() => draw(next)));
    current = next;
  }
  return {
    vessel: name,
    items: project.items.length,
    'cold, ms': median(coldTimes).toFixed(1),
    'after a move, ms': median(moveTimes).toFixed(1),
    'drag step with drawing, ms': median(stepTimes).toFixed(1),
    'worst drag step, ms': Math.max(...stepTimes).toFixed(1),
  };
}

/** Of the demo boats and of made-up vessels: a full assessment cold, after one item moved, and a drag step with its drawing. */
export function assessmentRows(): readonly Record<string, string | number>[] {
  const demos = ['brannoch-tern', 'pelluna', 'vessarine'].map((name) => row(name, demo(name)));
  const generated = [50, 500, 2000].map((count) => row(`generated, ${count} items`, generatedVessel(count)));
  return [...demos, ...generated];
}
