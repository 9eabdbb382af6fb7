import type { PathBudget } from '../../links/types.ts';
import type { StrongSignal } from '../../reach/types.ts';
import { q, type RichText } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, listInWords, tagOf } from '../rule.ts';

/** Beyond the care level by this much, an AIS receiver, which listens while others talk, is class B, dB. */
const FAR_BEYOND_DB = 10;

/** An own transmitter that reaches a receiver beyond the care level. */
interface Breach {
  readonly signal: StrongSignal;
  readonly levelDbm: number;
  readonly careDbm: number;
  readonly from: PathBudget;
  readonly to: PathBudget;
}

export const ownSignalStrong: Rule = {
  id: 'own-signal-strong',
  summary:
    'An own transmitter reaches a VHF or AIS receiver on another antenna beyond +10 dBm; ten more at AIS and the class is B.',
  severity: 'C',
  authority: AUTHORITIES.strongSignal,
  check: (input) => {
    const byReceiver = new Map<string, Breach[]>();
    for (const breach of breachesOf(input)) {
      // Voice sets are told of together: who talks on one can wait with the other.
      const key = breach.to.service === 'ais' ? breach.to.id : 'voice';
      const known = byReceiver.get(key);
      if (known) known.push(breach);
      else byReceiver.set(key, [breach]);
    }
    return [...byReceiver.values()].map((found) => strongRemark(input, found));
  },
};

/** Strongest first. */
function breachesOf(input: AuditInput): readonly Breach[] {
  const paths = new Map(input.paths.map((path) => [path.id, path]));
  return input.strongSignals
    .flatMap((signal): readonly Breach[] => {
      const care = signal.limits.find(({ key }) => key === 'care');
      const [from, to] = [paths.get(signal.fromId), paths.get(signal.toPathId)];
      const isOver = care?.marginDb !== null && care?.marginDb !== undefined && care.marginDb < 0;
      if (!isOver || signal.levelDbm === null || !from || !to) return [];
      return [{ signal, levelDbm: signal.levelDbm, careDbm: care.limitDbm, from, to }];
    })
    .toSorted((a, b) => b.levelDbm - a.levelDbm);
}

function strongRemark(input: AuditInput, breaches: readonly Breach[]): Remark {
  const [worst] = breaches;
  if (!worst) throw new RangeError('No breach to remark on.');
  const { signal, levelDbm, careDbm, from, to } = worst;
  const isAis = to.service === 'ais';
  const itemIds = [
    ...new Set([
      ...breaches.map((each) => each.to.radioId),
      ...breaches.flatMap((each) => [each.to.antennaId, each.from.antennaId]),
    ]),
  ];
  const receivers = [...new Set(breaches.map((each) => tagOf(input, each.to.radioId)))];
  const blocking = signal.limits.find(({ key }) => key === 'blocking');
  return {
    subjects: itemIds.map(itemSubject),
    severity: isAis && levelDbm > careDbm + FAR_BEYOND_DB ? 'B' : 'C',
    title: `Own signals are very strong at ${listInWords(receivers)}`,
    measured: measuredText(input, worst),
    limit: [
      q(careDbm, 'dBm', 0),
      ', a level to keep any receiver from; no standard gives one.',
      ...(blocking ? [' That a receiver is deaf beyond ', q(blocking.limitDbm, 'dBm', 0), ' is to be expected.'] : []),
    ],
    action: [
      `Put more distance between ${tagOf(input, from.antennaId)} and ${tagOf(input, to.antennaId)}, best one above the other. Ask the maker what level the receiver bears; until then send on low power where that is enough.`,
    ],
  };
}

function measuredText(input: AuditInput, { signal, levelDbm, from, to }: Breach): RichText {
  return [
    q(levelDbm, 'dBm', 0),
    ` of the `,
    q(signal.powerW, 'W'),
    ` of ${tagOf(input, from.radioId)} arrive at ${tagOf(input, to.radioId)}: only `,
    q(signal.isolationDb ?? 0, 'dB', 0),
    ` between ${tagOf(input, from.antennaId)} and ${tagOf(input, to.antennaId)}.`,
  ];
}
