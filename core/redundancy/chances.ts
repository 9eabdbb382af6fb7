import type { BoatKind } from '../model/boat.ts';
import type { Project } from '../model/project.ts';
import type { ChanceOf, Component, FailureEvent } from './types.ts';

/** Days of the ocean crossing that the counted and assumed figures are for (about 3000 nm; common practice, no source). */
const CROSSING_DAYS = 20;
const DAYS_A_YEAR = 365;

interface Assumption {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly source: string;
}

const GUESS = 'assumption without a source: put in your own';
const RALLY = 'a breakage survey of one ocean rally, 290 yachts, one crossing of about 3000 nm';
const assumed = (low: number, nominal: number, high: number, source = GUESS): Assumption => ({
  low,
  nominal,
  high,
  source,
});

/**
 * Chance of one component being down at some time of a crossing, by kind. No usable failure rate was found for sets, plugs,
 * whips or splitters; the widest counts there are (marine electronics 0.069, batteries 0.059, generators 0.072 a yacht a
 * crossing) stand at the upper end, for they count everything of the kind aboard. All else is a guess and called one.
 */
const BY_COMPONENT: Readonly<Record<Component['kind'], Assumption>> = {
  radio: assumed(0.005, 0.02, 0.069, `upper end: 0.069 breakages of marine electronics a yacht, ${RALLY}`),
  antenna: assumed(0.005, 0.02, 0.05),
  cable: assumed(0.002, 0.01, 0.03),
  joint: assumed(0.005, 0.03, 0.1, 'assumption; joints at the mast foot are where shops find most faults'),
  device: assumed(0.005, 0.02, 0.069, `upper end: 0.069 breakages of marine electronics a yacht, ${RALLY}`),
  structure: assumed(
    0.0005,
    0.003,
    0.02,
    'assumption; spars and furlers broke 0.19 times a yacht, few of them whole masts',
  ),
  feed: assumed(0.001, 0.005, 0.02),
  breaker: assumed(0.001, 0.005, 0.02),
  bank: assumed(0.005, 0.02, 0.059, `upper end: 0.059 battery failures a yacht, ${RALLY}`),
  'power-device': assumed(0.01, 0.03, 0.072, `upper end: 0.072 generator failures a yacht, ${RALLY}`),
  'position-source': assumed(0.005, 0.02, 0.069, `upper end: 0.069 breakages of marine electronics a yacht, ${RALLY}`),
  'data-link': assumed(0.001, 0.005, 0.02),
  equipment: assumed(0.005, 0.02, 0.069, `upper end: 0.069 breakages of marine electronics a yacht, ${RALLY}`),
  standalone: assumed(0.005, 0.02, 0.05),
};

const BY_EVENT: Partial<Record<FailureEvent['kind'], Assumption>> = {
  'all-masts': assumed(0.0001, 0.001, 0.01),
  flood: assumed(0.0003, 0.002, 0.01),
  'compartment-fire': assumed(0.0001, 0.0005, 0.003),
};

/** Any other event, above all the user's own. */
const OTHER_EVENT = assumed(0.001, 0.01, 0.05);

/** Claims for lightning per boat and year: a US insurer's, 2003 to 2013. */
const LIGHTNING_A_YEAR: Readonly<Record<BoatKind, number>> = {
  catamaran: 0.0069,
  sloop: 0.0038,
  cutter: 0.0038,
  ketch: 0.0038,
  schooner: 0.0038,
  'motor-yacht': 0.0015,
  trawler: 0.0015,
  'open-boat': 0.0001,
};
const INSURER =
  'claims per boat and year of a US insurer, 2003 to 2013, by kind of boat; waters differ by a factor of ten';

/**
 * Chance of each component and common cause being down at some time of the passage. The user's own figure, by id or by kind,
 * comes before any assumption. An assumption for a crossing of 20 days is stretched to the passage as a constant rate.
 */
export function chancesOf(
  project: Project,
  components: readonly Component[],
  causes: readonly FailureEvent[],
): readonly ChanceOf[] {
  const { passageDays } = project.settings.redundancy;
  const stretched = new Map<Assumption, Assumption>();
  const overPassage = (assumption: Assumption): Assumption => {
    const known = stretched.get(assumption);
    if (known) return known;
    const made = over(assumption, passageDays);
    stretched.set(assumption, made);
    return made;
  };
  return [
    ...components.map(({ id, label, kind }) => chanceOf(project, id, label, kind, overPassage(BY_COMPONENT[kind]))),
    ...causes.map(({ id, label, kind }) =>
      chanceOf(project, id, label, kind, overPassage(BY_EVENT[kind] ?? OTHER_EVENT)),
    ),
  ];
}

/** An assumption for one crossing, for a passage of so many days. */
function over({ low, nominal, high, source }: Assumption, passageDays: number): Assumption {
  const stretch = (chance: number): number => 1 - (1 - chance) ** (passageDays / CROSSING_DAYS);
  return assumed(stretch(low), stretch(nominal), stretch(high), source);
}

function chanceOf(project: Project, id: string, label: string, kind: string, assumption: Assumption): ChanceOf {
  const { chances } = project.settings.redundancy;
  const stated = chances[id] ?? chances[kind];
  if (stated) {
    const [low = 0, nominal = 0, high = 0] = [stated.lowPercent, stated.percent, stated.highPercent]
      .sort((a, b) => a - b)
      .map((percent) => percent / 100);
    return { id, label, low, nominal, high, basis: 'stated', source: stated.source };
  }
  if (kind === 'lightning') return lightning(project, id, label);
  const { low, nominal, high, source } = assumption;
  return { id, label, low, nominal, high, basis: 'assumed', source };
}

function lightning({ boat, settings }: Project, id: string, label: string): ChanceOf {
  const years = settings.redundancy.passageDays / DAYS_A_YEAR;
  const nominal = 1 - Math.exp(-LIGHTNING_A_YEAR[boat.kind] * years);
  // Between the quietest coast in the study and three times the mean for a tall mast.
  return { id, label, low: nominal / 10, nominal, high: Math.min(1, 3 * nominal), basis: 'published', source: INSURER };
}
