import fc from 'fast-check';
import { newProject } from '../../core/model/defaults.ts';
import {
  type DataLink,
  dataLinkSchema,
  type Feed,
  feedSchema,
  type Item,
  itemSchema,
  type Project,
  type Run,
  runSchema,
} from '../../core/model/project.ts';

/** One set of a made-up boat with all that is its own. What it shares with others is the bank, the breaker, the source. */
export interface PlannedSet {
  readonly kind: 'vhf' | 'vhf and ais' | 'ais' | 'hf' | 'l-band' | 'carried' | 'beacon';
  /** Where its antenna stands: picks one of the boat's outdoor places on a structure. */
  readonly place: number;
  /** What is in the feeder: nothing, a joint, or a switch to a second antenna elsewhere. */
  readonly feeder: 'plain' | 'joint' | 'switch';
  /** Of a pair behind one antenna; what each does without supply: through, nothing known, never for transmitting. */
  readonly splitter: 'splitter-active-vhf-ais' | 'splitter-active-unknown' | 'splitter-tv-2-way';
  readonly supply: 'breaker' | 'bank' | 'none';
  readonly bank: number;
  readonly position: 'link' | 'bus' | 'none';
  readonly carried: 'handheld-vhf-5w' | 'handheld-vhf-dsc-5w' | 'handheld-satellite' | 'mob-ais';
}

export interface BoatPlan {
  readonly kind: 'sloop' | 'ketch' | 'motor-yacht';
  /** Height of each bank above the waterline, m; one to three. */
  readonly banksZM: readonly number[];
  readonly sets: readonly PlannedSet[];
}

export const plannedSets: fc.Arbitrary<PlannedSet> = fc.record({
  kind: fc.constantFrom<PlannedSet['kind']>(
    'vhf',
    'vhf and ais',
    'vhf and ais',
    'ais',
    'hf',
    'l-band',
    'carried',
    'beacon',
  ),
  place: fc.nat(9),
  feeder: fc.constantFrom('plain', 'joint', 'switch'),
  splitter: fc.constantFrom('splitter-active-vhf-ais', 'splitter-active-unknown', 'splitter-tv-2-way'),
  supply: fc.constantFrom('breaker', 'breaker', 'bank', 'none'),
  bank: fc.nat(2),
  position: fc.constantFrom('link', 'bus', 'none'),
  carried: fc.constantFrom('handheld-vhf-5w', 'handheld-vhf-dsc-5w', 'handheld-satellite', 'mob-ais'),
});

/** Small boats: one or two masts or none, one to three banks at heights, up to so many sets. */
export const boatPlans = (maxSets: number): fc.Arbitrary<BoatPlan> =>
  fc.record({
    kind: fc.constantFrom('sloop', 'ketch', 'motor-yacht'),
    banksZM: fc.array(fc.constantFrom(-0.4, -0.1, 0.5, 1.6), { minLength: 1, maxLength: 3 }),
    sets: fc.array(plannedSets, { minLength: 1, maxLength: maxSets }),
  });

/** The boat of a plan, from generic catalogue parts. A set's things are named after its number, so that more sets change no others. */
export function boatOf(plan: BoatPlan): Project {
  const boat = new Builder(plan);
  plan.sets.forEach((set, n) => {
    boat.add(set, n);
  });
  return boat.project();
}

type End = readonly [itemId: string, portId: string];

class Builder {
  private readonly base: Project;
  private readonly plan: BoatPlan;
  private readonly items: Item[] = [];
  private readonly runs: Run[] = [];
  private readonly feeds: Feed[] = [];
  private readonly links: DataLink[] = [];

  constructor(plan: BoatPlan) {
    this.plan = plan;
    const numbers = { loaM: 14, beamM: 4.2, draughtM: 2, airDraughtM: 18, freeboardM: 1.4 };
    this.base = newProject({ name: 'Generated', kind: plan.kind, ...numbers });
    plan.banksZM.forEach((zM, n) => {
      this.item(`BANK${n}`, 'bank-lead-acid-220ah', 'battery-space', zM);
      this.item(`BRK${n}`, 'breaker-20a', 'nav-station');
      this.feed(`BANK${n}`, `BRK${n}`);
    });
    this.item('PANEL', 'panel-dc', 'nav-station');
    this.feed('BANK0', 'PANEL');
    this.item('GPS', 'plotter-own-gnss', 'helm');
    this.item('BUS', 'data-bus-nmea-2000', 'nav-station');
    this.feed('PANEL', 'GPS');
    this.feed('PANEL', 'BUS');
    this.link(['GPS', 'data'], ['BUS', 'a']);
  }

  add(set: PlannedSet, n: number): void {
    switch (set.kind) {
      case 'vhf':
        this.set(`VHF${n}`, 'radio-vhf-fixed-25w-dsc', set);
        this.feeder([`VHF${n}`, 'rf'], 'antenna-vhf-whip-3db', set, n);
        break;
      case 'vhf and ais':
        this.pair(set, n);
        break;
      case 'ais':
        this.set(`AIS${n}`, 'radio-ais-b-so', set);
        this.feeder([`AIS${n}`, 'rf'], 'antenna-ais-whip-1m2', set, n);
        this.gnss(`AIS${n}`, n);
        break;
      case 'hf':
        this.set(`HF${n}`, 'radio-mf-hf-150w-dsc', set);
        this.item(`TUNER${n}`, 'tuner-hf', 'lazarette-place');
        this.supply(`TUNER${n}`, set);
        this.run([`HF${n}`, 'rf'], [`TUNER${n}`, 'set']);
        this.antenna(`ANT${n}`, 'antenna-hf-whip-7m', set.place);
        this.run([`TUNER${n}`, 'antenna'], [`ANT${n}`, 'feed'], 'lead-in-hv-single');
        break;
      case 'l-band':
        this.set(`SAT${n}`, 'radio-l-band-messenger', set);
        this.feeder([`SAT${n}`, 'rf'], 'antenna-l-band-passive', { ...set, feeder: 'plain' }, n);
        break;
      case 'carried':
        this.item(`HAND${n}`, set.carried, 'helm');
        break;
      case 'beacon':
        this.item(`BEACON${n}`, set.place % 2 === 0 ? 'beacon-406-float-free' : 'beacon-406-manual', 'helm');
    }
  }

  project(): Project {
    const { items, runs, feeds, links } = this;
    return { ...this.base, items, runs, feeds, dataLinks: links };
  }

  /** A VHF and an AIS set behind one splitter and one antenna. */
  private pair(set: PlannedSet, n: number): void {
    const isPassive = set.splitter === 'splitter-tv-2-way';
    this.set(`VHF${n}`, 'radio-vhf-fixed-25w-dsc', set);
    this.set(`AIS${n}`, 'radio-ais-b-cs', set);
    this.item(`SPLIT${n}`, set.splitter, 'nav-station');
    if (!isPassive) this.supply(`SPLIT${n}`, set);
    this.run([`VHF${n}`, 'rf'], [`SPLIT${n}`, isPassive ? 'a' : 'vhf']);
    this.run([`AIS${n}`, 'rf'], [`SPLIT${n}`, isPassive ? 'b' : 'ais']);
    this.feeder([`SPLIT${n}`, 'antenna'], 'antenna-vhf-whip-3db', set, n);
    this.gnss(`AIS${n}`, n);
  }

  private set(id: string, partId: string, set: PlannedSet): void {
    this.item(id, partId, 'nav-station');
    this.supply(id, set);
    if (set.position === 'link') this.link(['GPS', 'data'], [id, 'data']);
    if (set.position === 'bus') this.link(['BUS', 'b'], [id, 'data']);
  }

  private supply(id: string, { supply, bank }: PlannedSet): void {
    const from = bank % this.plan.banksZM.length;
    if (supply !== 'none') this.feed(supply === 'breaker' ? `BRK${from}` : `BANK${from}`, id);
  }

  private feeder(from: End, antennaPart: string, { feeder, place }: PlannedSet, n: number): void {
    this.antenna(`ANT${n}`, antennaPart, place);
    if (feeder === 'plain') {
      this.run(from, [`ANT${n}`, 'feed']);
      return;
    }
    const [device, near, far]: readonly string[] =
      feeder === 'joint' ? [`JOINT${n}`, 'a', 'b'] : [`SWITCH${n}`, 'set', 'a'];
    this.item(device ?? '', feeder === 'joint' ? 'joint-uhf-pair' : 'switch-coax-2-way', 'nav-station');
    this.run(from, [device ?? '', near ?? '']);
    this.run([device ?? '', far ?? ''], [`ANT${n}`, 'feed']);
    if (feeder === 'joint') return;
    this.antenna(`SPARE${n}`, antennaPart, place + 1);
    this.run([device ?? '', 'b'], [`SPARE${n}`, 'feed']);
  }

  private gnss(setId: string, n: number): void {
    this.antenna(`GNSS${n}`, 'antenna-gnss-active', 0, 'pushpit-top');
    this.run([`GNSS${n}`, 'feed'], [setId, 'gnss']);
  }

  private antenna(id: string, partId: string, pick: number, placeId?: string): void {
    const places = this.base.places.filter(({ structureId, outdoors }) => outdoors && structureId !== null);
    this.item(id, partId, placeId ?? places[pick % places.length]?.id ?? 'helm');
  }

  private item(id: string, partId: string, placeId: string, zM?: number): void {
    const place = this.base.places.find((each) => each.id === placeId) ?? this.base.places[0];
    if (!place) throw new Error('The generated boat has no places.');
    const position = { ...place.position, ...(zM === undefined ? {} : { zM }) };
    this.items.push(itemSchema.parse({ id, tag: id, partId, placeId: place.id, position }));
  }

  private run(from: End, to: End, cableId = 'coax-rg-213-u'): void {
    const id = `W-${from[0]}-${to[0]}`;
    const ends = { from: { itemId: from[0], portId: from[1] }, to: { itemId: to[0], portId: to[1] } };
    this.runs.push(runSchema.parse({ id, number: id, cableId, ...ends, measuredLengthM: 6 }));
  }

  private feed(from: string, to: string): void {
    const id = `F-${from}-${to}`;
    const isPower = /^(BRK|PANEL)/.test(to);
    const ends = { from: { itemId: from, portId: 'out' }, to: { itemId: to, portId: isPower ? 'in' : 'dc' } };
    this.feeds.push(feedSchema.parse({ id, number: id, ...ends, conductorId: 'conductor-2-5mm2', lengthM: 2 }));
  }

  private link(from: End, to: End): void {
    const id = `D-${from[0]}-${to[0]}`;
    const ends = { from: { itemId: from[0], portId: from[1] }, to: { itemId: to[0], portId: to[1] } };
    this.links.push(dataLinkSchema.parse({ id, number: id, ...ends, carries: ['position'], standard: 'nmea-2000' }));
  }
}
