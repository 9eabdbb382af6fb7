import { assess } from '../assess.ts';
import type { Project } from '../model/project.ts';
import { type Grade, SERVICES, type ServiceId } from '../model/services.ts';
import { studyFailures } from '../redundancy/study.ts';
import type { FailureStudy, Redundancy, ServiceCuts } from '../redundancy/types.ts';
import type { Survey } from './survey.ts';
import type { CutCount, Effect, Remark, Rescue } from './types.ts';

/** Id of the point that stands for a service with no way as drawn. */
export const lostPoint = (serviceId: ServiceId): string => `lost:${serviceId}`;

/**
 * What a change does: the boat with it is assessed and its failures studied anew, and the two are compared. A service is
 * rescued from a point that no longer takes it alone, unless the point was only swapped for another: taken out of the boat,
 * and as many single points put in.
 */
export function effectOf(survey: Survey, after: Project): Effect {
  const assessed = assess(after);
  const study = studyFailures(after, assessed.paths);
  const pairs = pairedCuts(survey.study, study);
  const rescues = rescuesOf(pairs, new Set([...study.model.events, ...study.model.causes.map(({ id }) => id)]));
  const freed = new Set(pairs.filter(isFreer).map(({ was }) => was.serviceId));
  const counted = pairs.filter(({ was, is }) => !was.lostFromStart && !is.lostFromStart);
  const cells = comparedCells(survey.assessment.redundancy, assessed.redundancy);
  const fresh = newSingles(pairs, study);
  const remarks = comparedRemarks(survey, assessed.findings);
  return {
    rescues,
    serviceIds: SERVICES.map(({ id }) => id).filter((id) => freed.has(id)),
    before: total(counted.map(({ was }) => was)),
    after: total(counted.map(({ is }) => is)),
    cellsBetter: cells.better,
    cellsWorse: cells.worse,
    bringsSingles: fresh.length > 0,
    clears: remarks.clears,
    worsens: [...fresh, ...cells.sentences, ...remarks.worsens],
  };
}

interface Paired {
  readonly was: ServiceCuts;
  readonly is: ServiceCuts;
}

/** The cut sets of each service before and after; a service shown in one drawing only is left out. */
function pairedCuts(before: FailureStudy, after: FailureStudy): readonly Paired[] {
  const later = new Map(after.cuts.map((cut) => [cut.serviceId, cut]));
  return before.cuts.flatMap((was) => {
    const is = later.get(was.serviceId);
    return is ? [{ was, is }] : [];
  });
}

/** Whether a service hangs on fewer single things, or has a way at last. */
function isFreer({ was, is }: Paired): boolean {
  if (was.lostFromStart || is.lostFromStart) return was.lostFromStart && !is.lostFromStart;
  return is.singles.length < was.singles.length;
}

/** @param stillThere components and causes of the boat with the change */
function rescuesOf(pairs: readonly Paired[], stillThere: ReadonlySet<string>): readonly Rescue[] {
  const points = new Map<string, ServiceId[]>();
  const add = (id: string, serviceId: ServiceId): void => {
    points.set(id, [...(points.get(id) ?? []), serviceId]);
  };
  for (const pair of pairs) {
    const { was, is } = pair;
    if (was.lostFromStart && !is.lostFromStart) add(lostPoint(was.serviceId), was.serviceId);
    if (was.lostFromStart || is.lostFromStart) continue;
    for (const id of was.singles) {
      if (!is.singles.includes(id) && (isFreer(pair) || stillThere.has(id))) add(id, was.serviceId);
    }
  }
  return [...points].map(([pointId, serviceIds]) => ({ pointId, serviceIds }));
}

const total = (cuts: readonly ServiceCuts[]): CutCount => ({
  singles: cuts.reduce((sum, { countByOrder }) => sum + (countByOrder[0] ?? 0), 0),
  pairs: cuts.reduce((sum, { countByOrder }) => sum + (countByOrder[1] ?? 0), 0),
});

/** A change brings parts, and parts can fail: those that then take alone a service that had a way before. */
function newSingles(pairs: readonly Paired[], { labels }: FailureStudy): readonly string[] {
  return pairs.flatMap(({ was, is }) => {
    if (was.lostFromStart) return [];
    const fresh = is.singles.filter((id) => !was.singles.includes(id));
    if (fresh.length === 0) return [];
    const names = fresh.map((id) => labels.get(id)?.label ?? id).join(', ');
    return [`${codeOf(was.serviceId)} then hangs on ${names} as well.`];
  });
}

const codeOf = (serviceId: ServiceId): string => SERVICES.find(({ id }) => id === serviceId)?.code ?? serviceId;

const RANK: Readonly<Record<Grade, number>> = { lost: 0, reduced: 1, full: 2 };

interface Cells {
  readonly better: number;
  readonly worse: number;
  /** What falls, one sentence for each service and fall. */
  readonly sentences: readonly string[];
}

/** Cells of the events and services that both matrices have. */
function comparedCells(before: Redundancy, after: Redundancy): Cells {
  const rows = new Map(after.matrix.map((row) => [row.event.id, row]));
  const falls = new Map<string, string[]>();
  let [better, worse] = [0, 0];
  for (const { event, states } of before.matrix) {
    const row = rows.get(event.id);
    for (const was of row ? states : []) {
      const is = row?.states.find(({ serviceId }) => serviceId === was.serviceId);
      if (!is || is.grade === was.grade) continue;
      if (RANK[is.grade] > RANK[was.grade]) {
        better += 1;
        continue;
      }
      worse += 1;
      const fall = `${codeOf(was.serviceId)} falls from ${was.grade} to ${is.grade}`;
      falls.set(fall, [...(falls.get(fall) ?? []), event.label]);
    }
  }
  return { better, worse, sentences: [...falls].map(([fall, events]) => fallSentence(fall, events)) };
}

/** Events named in one sentence; more are counted. */
const MOST_NAMED = 2;

function fallSentence(fall: string, events: readonly string[]): string {
  if (events.length <= MOST_NAMED) return `${fall}: ${events.join('; ')}.`;
  const [first] = events;
  return `${fall} in ${events.length} rows of the matrix, from “${first}” on.`;
}

type Findings = Survey['assessment']['findings'];

/**
 * Grave remarks that go and that come. The same words are the same remark, and so is a rule's remark about fewer things than
 * before: three sets that fell together and are two now have neither gone nor come.
 */
function comparedRemarks(
  survey: Survey,
  after: Findings,
): { readonly clears: readonly Remark[]; readonly worsens: readonly string[] } {
  const [before, left] = [grave(survey.assessment.findings), grave(after)];
  const matched = new Set<Findings[number]>();
  const pair = (isSame: (was: Findings[number], is: Findings[number]) => boolean): void => {
    for (const is of left) {
      const was = matched.has(is) ? undefined : before.find((each) => !matched.has(each) && isSame(each, is));
      if (was) matched.add(was).add(is);
    }
  };
  pair((was, is) => was.title === is.title);
  pair(
    (was, is) => was.ruleId === is.ruleId && is.subjects.every(({ id }) => was.subjects.some((old) => old.id === id)),
  );
  return {
    clears: before.filter((each) => !matched.has(each)).map(remarkOf),
    worsens: left
      .filter((each) => !matched.has(each))
      .map(({ severity, title }) => `New remark (${severity}): ${title}.`),
  };
}

const grave = (findings: Findings): Findings =>
  findings.filter(({ severity, overruled }) => severity !== 'C' && overruled === null);

const remarkOf = ({ severity, title }: Findings[number]): Remark => ({
  severity: severity === 'A' ? 'A' : 'B',
  title,
});
