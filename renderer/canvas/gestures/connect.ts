import type { Endpoint } from '../../../core/model/project.ts';
import { joinPorts, type PortChoice, portChoices } from '../../commands/join.ts';
import { portWords } from '../../commands/words.ts';
import type { PointPx, Sketch } from '../../store/view.ts';
import { isInside, nearest } from '../geometry.ts';
import { itemBounds, portPoint } from '../handles.ts';
import { type Gesture, PORT_REACH_PX, type Scene } from './gesture.ts';

type Target = PortChoice & { readonly at: PointPx };

/** Draws a run, feed or link from one port to another. Ports that fit are ringed; the others say why they do not. */
export function connectGesture(scene: Scene, from: Endpoint, start: PointPx): Gesture {
  const { store } = scene;
  const project = store.getState().project;
  const projection = scene.projection();
  const targets: Target[] = portChoices(project, from).flatMap((choice) => {
    const at = portPoint(project, choice.endpoint, projection);
    return at ? [{ ...choice, at }] : [];
  });
  const sketchTargets = targets
    .filter(({ port, fit }) => fit.fits || port.medium === mediumOf(targets))
    .map(({ endpoint, at, fit }) => ({ endpoint, at, fits: fit.fits, reason: fit.fits ? '' : fit.reason }));
  let aimed: Target | null = null;
  const aim = (at: PointPx): Target | null => nearest(at, targets, PORT_REACH_PX) ?? onItem(scene, targets, at);
  return {
    cursor: 'crosshair',
    move: (at) => {
      aimed = aim(at);
      const line = { from: start, to: aimed?.at ?? at, fits: aimed?.fit.fits ?? false };
      store.getState().setView({ sketch: { line, targets: sketchTargets, ...tipOf(aimed, at, project) } });
    },
    finish: (moved) => {
      store.getState().setView({ sketch: null });
      if (aimed) joinPorts(store, from, aimed.endpoint);
      else if (moved) {
        const text = `Nothing drawn: let go on a port of another item to connect ${portWords(project, from)}.`;
        store.getState().say({ tone: 'plain', text });
      }
    },
    cancel: () => store.getState().setView({ sketch: null }),
  };
}

/** The medium most of the fitting targets share: that of the port the line starts from. */
function mediumOf(targets: readonly Target[]): Target['port']['medium'] | undefined {
  return targets.find(({ fit }) => fit.fits)?.port.medium;
}

/** Let go on an item instead of a port of it: the first of its ports that fits, else the first, which says why not. */
function onItem(scene: Scene, targets: readonly Target[], at: PointPx): Target | null {
  const project = scene.store.getState().project;
  const item = project.items.find((candidate) => {
    const bounds = itemBounds(project, candidate, scene.projection());
    return bounds && isInside(at, bounds, 2);
  });
  const own = targets.filter(({ endpoint }) => endpoint.itemId === item?.id);
  return own.find(({ fit }) => fit.fits) ?? own[0] ?? null;
}

function tipOf(
  target: Target | null,
  at: PointPx,
  project: Parameters<typeof portWords>[0],
): Pick<Sketch, 'tip'> | Record<string, never> {
  if (!target) return {};
  const { fit, endpoint } = target;
  const caution = fit.fits && fit.caution ? `. ${fit.caution}` : '';
  const text = fit.fits ? `Connect to ${portWords(project, endpoint)}${caution}` : fit.reason;
  return { tip: { at, text, refusal: !fit.fits } };
}
