import type { FeedResult } from '../../power/types.ts';
import type { RichText } from '../../units/quantity.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, tagOf } from '../rule.ts';
import { floodedBanks } from './redundancyRules.ts';

const BY_ELECTRICIAN = ' Isolate the battery first; DC work is for a qualified marine electrician.';

export const feedUnfused: Rule = {
  id: 'feed-unfused',
  summary: 'A DC feed has no overcurrent protection.',
  severity: 'A',
  authority: AUTHORITIES.overcurrent,
  check: (input) =>
    withVerdict(input, 'missing').map((feed) =>
      feedRemark(input, feed, {
        title: `Supply of ${tagOf(input, feed.loadId)} has no fuse`,
        measured: ['No fuse or breaker anywhere between the battery and ', tagOf(input, feed.loadId), '.'],
        limit: ['A fuse at the source, of at most ', q(feed.protection.largestRatingA, 'A', 0), ' for this conductor.'],
        action: [`Fit a fuse of the set maker’s rating within reach of the source.${BY_ELECTRICIAN}`],
      }),
    ),
};

export const fuseTooLarge: Rule = {
  id: 'fuse-too-large',
  summary: 'A fuse or breaker is larger than its conductor can bear.',
  severity: 'A',
  authority: AUTHORITIES.overcurrent,
  check: (input) =>
    withVerdict(input, 'too-large').map((feed) =>
      feedRemark(input, feed, {
        title: `Protection of ${tagOf(input, feed.loadId)} is too large for its wire`,
        measured: ['Protected at ', q(feed.protection.ratingA ?? 0, 'A', 0), '.'],
        limit: ['At most ', q(feed.protection.largestRatingA, 'A', 0), ' for ', q(feed.areaMm2, 'mm2'), '.'],
        action: [`Fit a smaller fuse in this feed, or a heavier conductor.${BY_ELECTRICIAN}`],
      }),
    ),
};

export const fuseTooFar: Rule = {
  id: 'fuse-too-far',
  summary: 'The fuse sits too far along the wire from the source.',
  severity: 'B',
  authority: AUTHORITIES.overcurrent,
  check: (input) =>
    withVerdict(input, 'too-far').map((feed) =>
      feedRemark(input, feed, {
        title: `Fuse of ${tagOf(input, feed.loadId)} is too far from the source`,
        measured: [q(feed.protection.fromSourceM ?? 0, 'm', 2), ' of unprotected wire.'],
        limit: [
          'Within ',
          q(0.178, 'm', 2),
          ' of the source, or ',
          q(1.02, 'm', 2),
          ' where the wire is sheathed all the way.',
        ],
        action: [`Move the fuse to the source.${BY_ELECTRICIAN}`],
      }),
    ),
};

export const fuseTooSmall: Rule = {
  id: 'fuse-too-small',
  summary: 'A fuse is smaller than what the set draws on transmit.',
  severity: 'B',
  authority: AUTHORITIES.completeness,
  check: (input) =>
    withVerdict(input, 'too-small-for-load').map((feed) =>
      feedRemark(input, feed, {
        title: `Fuse of ${tagOf(input, feed.loadId)} is too small`,
        measured: ['Fused at ', q(feed.protection.ratingA ?? 0, 'A', 0), ', drawing ', q(feed.currentA, 'A'), '.'],
        limit: ['Above the current on transmit, and no more than ', q(feed.protection.largestRatingA, 'A', 0), '.'],
        action: [`Fit the set maker’s rating.${BY_ELECTRICIAN}`],
      }),
    ),
};

function withVerdict(input: AuditInput, verdict: FeedResult['protection']['verdict']): readonly FeedResult[] {
  return input.feeds.filter((feed) => feed.protection.verdict === verdict);
}

function feedRemark(
  input: AuditInput,
  feed: FeedResult,
  text: { title: string; measured: RichText; limit: RichText; action: RichText },
): Remark {
  const subjects = [{ kind: 'feed', id: feed.feedId } as const];
  return { subjects: input.index.items.has(feed.loadId) ? [...subjects, itemSubject(feed.loadId)] : subjects, ...text };
}

export const voltDrop: Rule = {
  id: 'volt-drop',
  summary: 'The supply drops more than the limit of the project on transmit (3 per cent by default).',
  severity: 'B',
  authority: AUTHORITIES.voltDrop,
  check: (input) =>
    input.feeds
      .filter((feed) => feed.totalDropPercent > feed.limitPercent && isSet(input, feed.loadId))
      .map((feed) =>
        feedRemark(input, feed, {
          title: `Supply of ${tagOf(input, feed.loadId)} sags on transmit`,
          measured: [
            q(feed.totalDropV, 'V'),
            ' lost on ',
            q(feed.currentA, 'A'),
            ', ',
            q(feed.totalDropPercent, 'percent', 1),
            '.',
          ],
          limit: ['At most ', q(feed.limitPercent, 'percent'), ' from battery to set.'],
          action: dropAction(feed),
        }),
      ),
};

function dropAction(feed: FeedResult): RichText {
  if (feed.smallestAreaMm2 === null)
    return [`No listed conductor meets it over this length: shorten the feed.${BY_ELECTRICIAN}`];
  return [
    'Lay at least ',
    q(feed.smallestAreaMm2, 'mm2'),
    ` over this length, and make its joints anew.${BY_ELECTRICIAN}`,
  ];
}

function isSet(input: AuditInput, itemId: string): boolean {
  const kind = input.index.effective.get(itemId)?.kind;
  return kind === 'radio' || kind === 'inline' || kind === 'position-source';
}

export const measuredSag: Rule = {
  id: 'measured-sag',
  summary: 'The voltage read at a set falls on transmit by more than the limit of the project.',
  severity: 'B',
  authority: AUTHORITIES.voltDrop,
  check: (input) =>
    input.project.items.flatMap((item) => {
      const idle = reading(input, item.id, 'supply-idle-v');
      const onTransmit = reading(input, item.id, 'supply-transmit-v');
      if (idle === undefined || onTransmit === undefined || idle <= 0) return [];
      const percent = (100 * (idle - onTransmit)) / idle;
      const limit = input.project.settings.voltageDropLimitPercent;
      if (percent <= limit) return [];
      return [
        {
          subjects: [itemSubject(item.id)],
          title: `Voltage at ${item.tag} falls on transmit`,
          measured: [
            q(idle, 'V', 1),
            ' idle, ',
            q(onTransmit, 'V', 1),
            ' on transmit: ',
            q(percent, 'percent', 1),
            ' lost.',
          ],
          limit: ['At most ', q(limit, 'percent'), '.'],
          action: [`Look for a bad joint, fuse holder or battery before blaming the set.${BY_ELECTRICIAN}`],
        },
      ];
    }),
};

function reading(input: AuditInput, itemId: string, kind: string): number | undefined {
  return input.project.measurements.findLast((each) => each.kind === kind && each.subject.id === itemId)?.value;
}

export const batteriesLow: Rule = {
  id: 'batteries-low',
  summary: 'All batteries that feed the sets lie so low in one place that one flooded bilge takes them all.',
  severity: 'B',
  authority: AUTHORITIES.batteryFlood,
  check: (input) => {
    const flooded = floodedBanks(input);
    if (!flooded || flooded.defeatsDuplicates) return [];
    const tags = flooded.bankIds.map((id) => tagOf(input, id));
    return [
      {
        subjects: [...flooded.bankIds.map(itemSubject), ...flooded.compartmentSubjects],
        title: 'All batteries low in one bilge',
        measured: [
          `${tags.join(', ')}: terminals at `,
          q(flooded.levelM, 'm', 2),
          ' from the waterline, in one compartment.',
        ],
        limit: ['The radio battery is kept from flooding as far as practicable.'],
        action: [`Give the VHF a small battery of its own, high and dry, charged from the main bank.${BY_ELECTRICIAN}`],
      },
    ];
  },
};
