import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepAsAlternative, removeAlternative, swapAlternative } from '../../../core/edit/alternatives.ts';
import { addMast, setBoat, setFitting, setMast } from '../../../core/edit/boat.ts';
import { copyItems } from '../../../core/edit/copy.ts';
import { addDataLink, addFeed, setFeed } from '../../../core/edit/feeds.ts';
import { resetItemFigure, setItemFigure, setItemTrait } from '../../../core/edit/figures.ts';
import { overrideFinding } from '../../../core/edit/findings.ts';
import { insertIntoRun, removeFromRun } from '../../../core/edit/inline.ts';
import { addItem, moveItems, setItem, setItemPosition, snapToPlace } from '../../../core/edit/items.ts';
import { addMeasurement } from '../../../core/edit/measurements.ts';
import { addPart, removePart, setPart } from '../../../core/edit/parts.ts';
import { addPlace, setPlace } from '../../../core/edit/places.ts';
import { RefusedEdit } from '../../../core/edit/refused.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import { reorder } from '../../../core/edit/reorder.ts';
import { addBend, moveBend, removeBend } from '../../../core/edit/route.ts';
import { addRun, reconnectRun, setRun } from '../../../core/edit/runs.ts';
import { addStation, setSettings } from '../../../core/edit/stations.ts';
import type { Port } from '../../../core/model/part.ts';
import type { Endpoint, Project } from '../../../core/model/project.ts';
import { PARTS, smallBoat, VHF } from '../document/boat.ts';
import { expectSound, frozen } from './support.ts';

const SEED = 20_261_125;

/** A source of choices for one command: numbers drawn beforehand, so that a failing case can be shrunk and replayed. */
class Choices {
  private at = 0;
  private readonly drawn: readonly number[];

  constructor(drawn: readonly number[]) {
    this.drawn = drawn;
  }

  number(): number {
    this.at += 1;
    return (this.drawn[this.at % this.drawn.length] ?? 0) / 10_000;
  }

  pick<T>(list: readonly T[]): T {
    const entry = list[Math.abs(Math.floor(this.number() * 7919)) % Math.max(1, list.length)];
    if (entry === undefined) throw new RefusedEdit('nothing to pick from');
    return entry;
  }

  /** Mostly a believable metre, now and then far off or no number at all. */
  metres(): number {
    const drawn = this.number();
    if (drawn > 0.98) return Number.NaN;
    if (drawn > 0.96) return -1e6;
    return drawn * 20 - 4;
  }

  position() {
    return { xM: this.metres(), yM: 0, zM: this.metres() };
  }

  end(project: Project, medium: Port['medium']): Endpoint {
    const ends = project.items.flatMap((item) => {
      const ports = project.parts.find((part) => part.id === item.partId)?.ports ?? [];
      return ports.filter((port) => port.medium === medium).map((port) => ({ itemId: item.id, portId: port.id }));
    });
    return this.pick(ends);
  }
}

type Command = (project: Project, choices: Choices) => Project;

const COMMANDS: Readonly<Record<string, Command>> = {
  addItem: (p, c) => addItem(p, { partId: c.pick(PARTS).id, position: c.position() }),
  addItemAtPlace: (p, c) => addItem(p, { partId: c.pick(PARTS).id, placeId: c.pick(p.places).id }),
  moveItems: (p, c) => moveItems(p, [c.pick(p.items).id], { dxM: c.metres(), dyM: 0.1, dzM: c.metres() }),
  setItemPosition: (p, c) => setItemPosition(p, c.pick(p.items).id, c.position()),
  snapToPlace: (p, c) => snapToPlace(p, c.pick(p.items).id, c.pick(p.places).id),
  setItem: (p, c) => setItem(p, c.pick(p.items).id, { status: 'remove', tag: `T${Math.floor(c.number() * 9)}` }),
  setItemPart: (p, c) => setItem(p, c.pick(p.items).id, { partId: c.pick(PARTS).id }),
  setFacts: (p, c) => setItem(p, c.pick(p.items).id, { facts: { nearestPersonM: c.metres(), wet: true } }),
  copyItems: (p, c) => copyItems(p, [c.pick(p.items).id, c.pick(p.items).id]),
  removeItem: (p, c) => removeSubjects(p, [{ kind: 'item', id: c.pick(p.items).id }]),
  removeRun: (p, c) => removeSubjects(p, [{ kind: 'run', id: c.pick(p.runs).id }]),
  removePlace: (p, c) => removeSubjects(p, [{ kind: 'place', id: c.pick(p.places).id }]),
  removeStructure: (p, c) => removeSubjects(p, [{ kind: 'structure', id: c.pick(p.boat.fittings).id }]),
  setItemFigure: (p, c) =>
    setItemFigure(p, c.pick(p.items).id, c.pick(['gainDbi', 'txPowerW', 'wayLossDb']), { value: c.metres() }),
  resetItemFigure: (p, c) => {
    const item = c.pick(p.items.filter(({ overrides }) => Object.keys(overrides.figures).length > 0));
    return resetItemFigure(p, item.id, c.pick(Object.keys(item.overrides.figures)));
  },
  setItemTrait: (p, c) => setItemTrait(p, c.pick(p.items).id, c.pick(['dsc', 'position']), c.pick([true, 1, 2, null])),
  addRun: (p, c) => addRun(p, { from: c.end(p, 'rf'), to: c.end(p, 'rf') }),
  setRun: (p, c) => setRun(p, c.pick(p.runs).id, { measuredLengthM: c.metres(), slackM: 0.5, facts: { coiledM: 2 } }),
  reconnectRun: (p, c) => reconnectRun(p, c.pick(p.runs).id, c.pick(['from', 'to'] as const), c.end(p, 'rf')),
  insertIntoRun: (p, c) => insertIntoRun(p, c.pick(p.runs).id, c.pick(PARTS).id, c.position()),
  insertMidway: (p, c) => insertIntoRun(p, c.pick(p.runs).id, c.pick(['t-joint', 't-splitter', 't-switch'])),
  removeFromRun: (p, c) => removeFromRun(p, c.pick(p.items).id),
  addBend: (p, c) => addBend(p, c.pick(p.runs).id, { position: c.position() }),
  bendThrough: (p, c) => addBend(p, c.pick(p.runs).id, { position: c.position(), placeId: c.pick(p.places).id }),
  moveBend: (p, c) => moveBend(p, c.pick(p.runs).id, 0, { position: c.position() }),
  removeBend: (p, c) => removeBend(p, c.pick(p.runs).id, 0),
  addFeed: (p, c) => addFeed(p, { from: c.end(p, 'dc'), to: c.end(p, 'dc') }),
  setFeed: (p, c) => setFeed(p, c.pick(p.feeds).id, { lengthM: c.metres() }),
  addDataLink: (p, c) => addDataLink(p, { from: c.end(p, 'data'), to: c.end(p, 'data') }),
  addPart: (p) => addPart(p, { ...VHF, id: '' }),
  setPart: (p, c) => setPart(p, { ...c.pick(p.parts), description: 'changed' }),
  removePart: (p, c) => removePart(p, c.pick(p.parts).id),
  setBoat: (p, c) => setBoat(p, { loaM: c.metres(), lwlM: c.metres() }),
  setMast: (p, c) => setMast(p, c.pick(p.boat.masts).id, { truckZM: c.metres(), xM: c.metres() }),
  addMast: (p, c) => addMast(p, { ...c.pick(p.boat.masts), xM: c.metres() }),
  setFitting: (p, c) => setFitting(p, c.pick(p.boat.fittings).id, { zTopM: c.metres() }),
  addPlace: (p, c) => addPlace(p, { ...c.pick(p.places), position: c.position() }),
  setPlace: (p, c) => setPlace(p, c.pick(p.places).id, { position: c.position() }),
  addStation: (p, c) => addStation(p, { ...c.pick(p.stations), antennaHeightM: c.metres() }),
  setSettings: (p, c) => setSettings(p, { feederLossLimitDb: c.metres() }),
  addMeasurement: (p, c) =>
    addMeasurement(p, {
      subject: { kind: 'item', id: c.pick(p.items).id },
      kind: 'vswr',
      value: c.metres(),
      frequencyMhz: null,
      date: null,
    }),
  overrideFinding: (p, c) => overrideFinding(p, `rule:${c.pick(p.items).id}`, 'known'),
  keepAsAlternative: (p, c) => (p.alternatives.length < 3 ? keepAsAlternative(p, `L${c.number()}`) : p),
  swapAlternative: (p, c) => swapAlternative(p, c.pick(p.alternatives).id),
  removeAlternative: (p, c) => removeAlternative(p, c.pick(p.alternatives).id),
  reorder: (p, c) => reorder(p, 'items', c.pick(p.items).id, Math.floor(c.number() * 5)),
};
const NAMES = Object.keys(COMMANDS);

const step = fc.record({
  name: fc.constantFrom(...NAMES),
  drawn: fc.array(fc.noBias(fc.nat(9999)), { minLength: 8, maxLength: 8 }),
});

/** A command on a project, or the project itself when it is refused. Anything thrown that is no refusal is a defect. */
function tried(project: Project, name: string, drawn: readonly number[]): Project {
  try {
    return COMMANDS[name]?.(project, new Choices(drawn)) ?? project;
  } catch (error) {
    if (error instanceof RefusedEdit && error.message.trim() !== '') return project;
    throw error;
  }
}

describe(`random edits (seed ${SEED})`, () => {
  it('always leave a project that loads again as it is, and never write into their input', () => {
    const done = new Set<string>();
    fc.assert(
      fc.property(fc.array(step, { minLength: 10, maxLength: 60 }), (steps) => {
        let project = frozen(smallBoat());
        for (const { name, drawn } of steps) {
          const next = frozen(tried(project, name, drawn));
          if (next !== project) done.add(name);
          project = next;
        }
        expectSound(project);
      }),
      { seed: SEED, numRuns: 300 },
    );
    // Every command was done at least once, so that none passes by always being refused.
    expect([...done].sort()).toEqual([...NAMES].sort());
  });

  it('share every entry they do not touch', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 25 }), (steps) => {
        let project = frozen(smallBoat());
        for (const { name, drawn } of steps) {
          const next = frozen(tried(project, name, drawn));
          for (const key of ['items', 'runs', 'feeds', 'dataLinks', 'places', 'parts', 'stations'] as const) {
            const before = new Map(project[key].map((entry) => [entry.id, entry]));
            for (const entry of next[key]) {
              const old = before.get(entry.id);
              // An entry that reads the same must be the same object: results are cached by it.
              if (old && old !== entry && !name.includes('Alternative')) expect(entry).not.toEqual(old);
            }
          }
          project = next;
        }
      }),
      { seed: SEED + 1, numRuns: 250 },
    );
  });
});
