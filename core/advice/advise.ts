import { assess } from '../assess.ts';
import { RefusedEdit, requireSound } from '../edit/refused.ts';
import type { Project } from '../model/project.ts';
import { SERVICES, type ServiceId } from '../model/services.ts';
import { candidatesOf } from './candidates.ts';
import { effectOf, lostPoint } from './effect.ts';
import { materialOf } from './material.ts';
import { type Survey, surveyOf } from './survey.ts';
import type { Advice, AdviceProgress, Candidate, Effect, PointAdvice, RankedChange } from './types.ts';
import { whyNone } from './whyNone.ts';

const cache = new WeakMap<Project, Advice>();

/**
 * The changes that would free the boat of a single point of failure, each tried on the model, best first. Pure, and the
 * same object for the same project. Method and what it is worth: docs/advice.md.
 */
export function advise(project: Project): Advice {
  const steps = adviceSteps(project);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Advice that has been worked out before for this very project. */
export function knownAdvice(project: Project): Advice | undefined {
  return cache.get(project);
}

/** The same, half a change tried at each step, so that a screen can do a little at a time and leave off. */
export function* adviceSteps(project: Project): Generator<AdviceProgress, Advice> {
  const known = cache.get(project);
  if (known) return known;
  const survey = surveyOf(project);
  // The boat as an object of its own: results remembered by boat stay those of the drawing on the screen.
  const trial: Project = { ...project, boat: { ...project.boat } };
  const candidates = candidatesOf(survey);
  const total = candidates.length;
  const changes: RankedChange[] = [];
  for (const [done, candidate] of candidates.entries()) {
    yield { done, total };
    const after = applied(trial, candidate);
    if (!after || after === trial) continue;
    assess(after);
    // Between the two halves of a trial, so that a large boat does not hold up the screen for both at once.
    yield { done, total };
    const effect = effectOf(survey, after);
    if (helps(effect)) changes.push({ candidate, material: materialOf(project, after), effect });
  }
  const ranked = changes.toSorted(byWorth);
  const points = pointsOf(survey, ranked);
  const advice: Advice = { tried: total, changes: ranked, best: bestOf(ranked), points };
  cache.set(project, advice);
  return advice;
}

/**
 * A service that hangs on fewer things; or, with no single point put in, more cells of the matrix that rise than fall; or a
 * grave remark gone at no cost. All else is a swap, and is not offered.
 */
function helps({ serviceIds, cellsBetter, cellsWorse, bringsSingles, clears, worsens }: Effect): boolean {
  if (serviceIds.length > 0) return true;
  if (!bringsSingles && cellsBetter > cellsWorse) return true;
  return worsens.length === 0 && clears.some(({ severity }) => severity === 'A');
}

function applied(project: Project, candidate: Candidate): Project | null {
  try {
    return requireSound(candidate.apply(project), candidate.title);
  } catch (error) {
    if (error instanceof RefusedEdit) return null;
    throw error;
  }
}

/** Services freed, then single cut sets gone, then what becomes worse, then cells that rise, pairs gone, the smaller job. */
function byWorth(a: RankedChange, b: RankedChange): number {
  const gone = ({ effect }: RankedChange, order: 'singles' | 'pairs'): number =>
    effect.before[order] - effect.after[order];
  return (
    b.effect.serviceIds.length - a.effect.serviceIds.length ||
    gone(b, 'singles') - gone(a, 'singles') ||
    a.effect.worsens.length - b.effect.worsens.length ||
    b.effect.cellsBetter - a.effect.cellsBetter ||
    gone(b, 'pairs') - gone(a, 'pairs') ||
    a.material.count - b.material.count ||
    (a.candidate.id < b.candidate.id ? -1 : 1)
  );
}

/** Of several answers to one question the best: the list is then of different things to do. */
function bestOf(ranked: readonly RankedChange[]): readonly RankedChange[] {
  const answered = new Set<string>();
  return ranked.filter(({ candidate: { question } }) => {
    const isFirst = !answered.has(question);
    answered.add(question);
    return isFirst;
  });
}

function pointsOf(survey: Survey, ranked: readonly RankedChange[]): readonly PointAdvice[] {
  const lost = survey.lost.map((serviceId): readonly [string, readonly ServiceId[]] => [
    lostPoint(serviceId),
    [serviceId],
  ]);
  const taken = [...survey.singles].toSorted(([, a], [, b]) => b.length - a.length);
  return [...lost, ...taken].map(([pointId, serviceIds]): PointAdvice => {
    const changes = ranked
      .filter(({ effect }) => effect.rescues.some((rescue) => rescue.pointId === pointId))
      .toSorted((a, b) => rescuedFrom(b, pointId) - rescuedFrom(a, pointId) || byWorth(a, b));
    const { label, subject } = nameOf(survey, pointId, serviceIds);
    const why = changes.length === 0 ? whyNone(survey, pointId, serviceIds) : null;
    return { pointId, label, subject, serviceIds, changes, why };
  });
}

const rescuedFrom = ({ effect }: RankedChange, pointId: string): number =>
  effect.rescues.find((rescue) => rescue.pointId === pointId)?.serviceIds.length ?? 0;

function nameOf(
  survey: Survey,
  pointId: string,
  [first]: readonly ServiceId[],
): Pick<PointAdvice, 'label' | 'subject'> {
  const known = survey.study.labels.get(pointId);
  if (known) return known;
  const service = SERVICES.find(({ id }) => id === first);
  return { label: `${service?.name ?? pointId}: no way as drawn`, subject: null };
}
