import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { Project } from '../../../core/model/project.ts';
import type { FeedResult } from '../../../core/power/types.ts';
import { type Quantity, q, type RichText } from '../../../core/units/quantity.ts';

const rated = (value: number, unit: 'A' | 'mm2'): Quantity =>
  q(value, unit, [0, 1].find((each) => Math.abs(value - Number(value.toFixed(each))) < 1e-9) ?? 2);

/** Whether fuse or breaker is right for its wire, in words. */
export function protectionText({ protection }: FeedResult): RichText {
  const { ratingA, verdict, fromSourceM, largestRatingA } = protection;
  const device: RichText =
    ratingA === null ? ['The source limits the current'] : [rated(ratingA, 'A'), ' fuse or breaker'];
  switch (verdict) {
    case 'good':
      return device;
    case 'missing':
      return ['No fuse or breaker: the wire is not protected'];
    case 'too-large':
      return [...device, ': too large, this conductor may have ', rated(largestRatingA, 'A'), ' at most'];
    case 'too-far':
      return [...device, ': too far from the source, ', q(fromSourceM ?? 0, 'm'), ' of wire before it'];
    case 'too-small-for-load':
      return [...device, ': smaller than the load, it will open on transmit'];
  }
}

export const isDropOver = (feed: FeedResult): boolean => feed.totalDropPercent > feed.limitPercent;

export function dropText(feed: FeedResult): RichText {
  return [
    q(feed.totalDropV, 'V'),
    ' from battery to set, ',
    q(feed.totalDropPercent, 'percent', 1),
    '; the limit is ',
    q(feed.limitPercent, 'percent', Number.isInteger(feed.limitPercent) ? 0 : 1),
  ];
}

/** The conductor there is, and the smallest that would do. */
export function conductorText(feed: FeedResult): RichText {
  const fitted: RichText = [rated(feed.areaMm2, 'mm2'), ' over ', q(feed.lengthM, 'm'), ' one way; '];
  if (feed.smallestAreaMm2 === null) return [...fitted, 'no listed conductor would do: bring the source nearer'];
  return [...fitted, 'smallest that would do: ', rated(feed.smallestAreaMm2, 'mm2')];
}

/** Drop the meter saw between rest and transmit, V; null without both readings of one day. */
export function measuredDropV(project: Project, feed: FeedResult): number | null {
  const readings = project.measurements.filter(({ subject }) => [feed.loadId, feed.feedId].includes(subject.id));
  const sending = readings.findLast(({ kind }) => kind === 'supply-transmit-v');
  const idle = readings.findLast(({ kind, date }) => kind === 'supply-idle-v' && date === sending?.date);
  return sending && idle ? idle.value - sending.value : null;
}

/** What the feed carries when it matters: on transmit, or the steady current of what never transmits. */
export function currentText(project: Project, feed: FeedResult): RichText {
  const load = indexProject(project).effective.get(feed.loadId);
  const isSending = load?.kind === 'radio' && load.figures.txPowerW.value > 0;
  return [q(feed.currentA, 'A'), isSending ? ' on transmit' : ' all the time'];
}
