import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import { parseProject } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import { routedLengthM } from '../../../core/links/route.ts';
import { DEFAULT_MARGIN } from '../../../core/model/margin.ts';
import type { Feed, Item, Project, Run } from '../../../core/model/project.ts';

const BOATS = ['brannoch-tern', 'pelluna', 'vessarine'] as const;
type BoatId = (typeof BOATS)[number];

const textOf = (id: BoatId): string =>
  readFileSync(new URL(`../../../assets/demo/${id}.backstay`, import.meta.url), 'utf8');

function load(id: BoatId): Project {
  const result = parseProject(textOf(id));
  if (!result.ok) throw new Error(result.problems.map(({ where, what }) => `${where}: ${what}`).join('\n'));
  return result.project;
}

/** The layout as found and those kept beside it. */
function layoutsOf(project: Project): readonly Project[] {
  return [project, ...project.alternatives.map((layout) => ({ ...project, ...layout }))];
}

const boats = new Map(BOATS.map((id) => [id, load(id)]));
const boat = (id: BoatId): Project => boats.get(id) ?? load(id);

function item(project: Project, tag: string): Item {
  const found = project.items.find((each) => each.tag === tag);
  if (!found) throw new Error(`no item ${tag}`);
  return found;
}
function run(project: Project, number: string): Run {
  const found = project.runs.find((each) => each.number === number);
  if (!found) throw new Error(`no run ${number}`);
  return found;
}
function feedTo(project: Project, tag: string): Feed {
  const found = project.feeds.find((each) => each.to.itemId === item(project, tag).id);
  if (!found) throw new Error(`no feed to ${tag}`);
  return found;
}

describe.each(BOATS)('%s', (id) => {
  it('loads without a problem and without a remark', () => {
    expect(parseProject(textOf(id))).toMatchObject({ ok: true, notes: [] });
  });

  it('is written as the program would write it', () => {
    expect(textOf(id)).toBe(serialiseProject(boat(id)));
  });

  it('starts from the margin a new project has', () => {
    expect(boat(id).settings.margin).toEqual(DEFAULT_MARGIN);
  });

  it('knows every part, and has a proposal beside what was found', () => {
    expect(boat(id).alternatives.map(({ name }) => name)).toEqual(['Proposed']);
    for (const layout of layoutsOf(boat(id))) {
      const { items, effective, parts } = indexProject(layout);
      expect([...items.keys()].filter((itemId) => !effective.has(itemId))).toEqual([]);
      const used = layout.runs.flatMap((each) => [each.cableId, each.connectorFromId, each.connectorToId]);
      const wires = layout.feeds.map((each) => each.conductorId);
      expect([...used, ...wires].filter((partId) => partId !== null && !parts.has(partId))).toEqual([]);
    }
  });

  it('has every cable measured, and none shorter than the way it is drawn', () => {
    for (const layout of layoutsOf(boat(id))) {
      for (const each of layout.runs) {
        expect(each.measuredLengthM, each.number).not.toBeNull();
        expect(each.measuredLengthM ?? 0, each.number).toBeGreaterThanOrEqual(routedLengthM(layout, each));
      }
    }
  });

  it('has no supply wire shorter than the distance between its ends', () => {
    for (const layout of layoutsOf(boat(id))) {
      const { items } = indexProject(layout);
      for (const { number, from, to, lengthM } of layout.feeds) {
        const [a, b] = [items.get(from.itemId)?.position, items.get(to.itemId)?.position];
        if (!a || !b) throw new Error(`${number} leads nowhere`);
        expect(lengthM, number).toBeGreaterThanOrEqual(Math.hypot(a.xM - b.xM, a.yM - b.yM, a.zM - b.zM));
      }
    }
  });

  it('has every antenna within the boat and under her air draught', () => {
    const { loaM, airDraughtM, beamM } = boat(id).boat;
    for (const { tag, position } of layoutsOf(boat(id)).flatMap((layout) => layout.items)) {
      expect(position.xM, tag).toBeGreaterThanOrEqual(0);
      expect(position.xM, tag).toBeLessThanOrEqual(loaM);
      expect(Math.abs(position.yM), tag).toBeLessThanOrEqual(beamM / 2);
      expect(position.zM, tag).toBeLessThanOrEqual(airDraughtM);
    }
  });
});

/** The planted flaws that live in a fact of one thing, as the boats' own reports list them. */
const PLANTED: readonly (readonly [BoatId, string, (project: Project) => unknown, unknown])[] = [
  [
    'brannoch-tern',
    'GNSS antenna under steel',
    (p) => indexProject(p).places.get(item(p, 'A4').placeId ?? '')?.overhead,
    'metal',
  ],
  ['brannoch-tern', 'wet joint', (p) => item(p, 'J1').facts, { outdoors: true, wet: true, seal: 'tape' }],
  ['brannoch-tern', 'coil and loose mast run', (p) => run(p, 'W01').facts, { coiledM: 2.3, supported: false }],
  [
    'brannoch-tern',
    'cable too long',
    (p) => [run(p, 'W06').measuredLengthM, run(p, 'W06').facts.neededLengthM],
    [12, 8.5],
  ],
  ['brannoch-tern', 'lead-in inside steel', (p) => run(p, 'W08').facts.insideMetalM, 3.4],
  ['brannoch-tern', 'insulator within reach', (p) => item(p, 'A2').facts.lowerInsulatorAboveDeckM, 0.85],
  ['brannoch-tern', 'earth to a seacock', (p) => item(p, 'ATU-1').facts.earthTo, 'seacock'],
  ['brannoch-tern', 'metal bracket', (p) => item(p, 'A1').facts.mount, 'metal'],
  ['brannoch-tern', 'terminal left plugged in', (p) => item(p, 'SAT-1').facts.unpluggedInStorms, false],
  ['brannoch-tern', 'batteries low', (p) => [item(p, 'B1').position.zM, item(p, 'B2').position.zM], [-0.3, -0.3]],
  ['brannoch-tern', 'no position into VHF-1', (p) => p.dataLinks, []],
  ['pelluna', 'VHF-B unfused', (p) => feedTo(p, 'VHF-B').fuse, null],
  ['pelluna', 'radar at eye height', (p) => item(p, 'RAD-1').facts, { nearestPersonM: 1.9, standingEyeZM: 4.95 }],
  ['pelluna', 'seat by A2', (p) => item(p, 'A2').facts.nearestPersonM, 0.6],
  ['pelluna', 'television splitter', (p) => item(p, 'TS-1').partId, 'splitter-tv-2-way'],
  [
    'pelluna',
    'thin supply',
    (p) => [feedTo(p, 'VHF-A').conductorId, feedTo(p, 'VHF-A').lengthM],
    ['conductor-1-5mm2', 7.5],
  ],
  ['pelluna', '75 ohm cable', (p) => run(p, 'W12').cableId, 'coax-rg-59b-u'],
  ['pelluna', 'tight bend', (p) => run(p, 'W11').facts.bendRadiusMm, 20],
  ['pelluna', 'coil', (p) => run(p, 'W11E').facts.coiledM, 3.8],
  ['pelluna', 'AIS antenna near metal', (p) => item(p, 'A3').facts.nearestMetalM, 0.5],
  ['pelluna', 'beside the inverter pair', (p) => run(p, 'W14').facts, { powerCableGapMm: 20, powerCableAlongM: 2 }],
  ['pelluna', 'four dead cables', (p) => p.items.filter((each) => each.partId === 'dead-cable').length, 4],
  ['pelluna', 'whips laid down', (p) => [item(p, 'A1').facts.foldsDown, item(p, 'A2').facts.foldsDown], [true, true]],
  [
    'vessarine',
    'receiver under carbon',
    (p) => indexProject(p).places.get(item(p, 'AIS-1').placeId ?? '')?.overhead,
    'carbon',
  ],
  ['vessarine', 'beacon of another owner', (p) => item(p, 'BC-1').facts.registration, 'another-owner'],
  [
    'vessarine',
    'emergency lead',
    (p) => [item(p, 'EM-1').facts.leadLengthM, item(p, 'EM-1').facts.leadConnector],
    [4, 'BNC'],
  ],
  [
    'vessarine',
    'L-band antenna under carbon',
    (p) => indexProject(p).places.get(item(p, 'A4').placeId ?? '')?.overhead,
    'carbon',
  ],
  [
    'vessarine',
    'pole before SAT-1',
    (p) => item(p, 'SAT-1').facts,
    { shadowPoleDiameterM: 0.1, shadowPoleDistanceM: 0.9 },
  ],
  ['vessarine', 'bundled with the solar cables', (p) => run(p, 'W32').facts.powerCableAlongM, 3],
  ['vessarine', 'one label on two cables', (p) => run(p, 'W33').labelText, 'W32'],
  [
    'vessarine',
    'undated record',
    (p) => p.measurements.filter(({ date }) => date === null).map(({ value }) => value),
    [1.2],
  ],
  ['vessarine', 'open-end reading', (p) => p.measurements.find(({ kind }) => kind === 'open-end-vswr')?.value, 2.2],
  [
    'vessarine',
    'sets unplugged in storms',
    (p) => ['SAT-2', 'VHF-3'].map((tag) => item(p, tag).facts.unpluggedInStorms),
    [true, true],
  ],
];

describe('what was planted', () => {
  it.each(PLANTED)('%s: %s', (id, _, found, expected) => {
    expect(found(boat(id))).toEqual(expected);
  });
});
