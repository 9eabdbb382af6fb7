import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseProject } from '../../../core/document/load.ts';
import { sheerZM } from '../../../core/drawing/hullLines.ts';
import { stays } from '../../../core/drawing/rig.ts';
import { type Boat, type Mast, mastSchema } from '../../../core/model/boat.ts';
import { newProject } from '../../../core/model/defaults.ts';
import { type Item, itemSchema, type Project } from '../../../core/model/project.ts';
import { deckZM, forestay } from '../../../core/siting/skyBodies.ts';
import type { Direction } from '../../../core/siting/skyGeometry.ts';
import { uprightLossDb } from '../../../core/siting/skyLoss.ts';
import { sightAt, skyView } from '../../../core/siting/skyView.ts';
import { type RigState, SAILS_DOWN, type SkyView } from '../../../core/siting/types.ts';

function demo(name: string): Project {
  const loaded = parseProject(readFileSync(`assets/demo/${name}.backstay`, 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load`);
  return loaded.project;
}

const azimuths = (ring: readonly Direction[]): readonly number[] => ring.map((point) => point.azimuthDeg);

/** A sloop with nothing on it but what a test puts there. */
function bare(over: Partial<Boat>, ...items: Item[]): Project {
  const made = newProject({
    name: 'Test',
    kind: 'sloop',
    loaM: 12,
    beamM: 4,
    draughtM: 1.8,
    airDraughtM: 17,
    freeboardM: 1.2,
  });
  const boat = { ...made.boat, masts: [], deckhouses: [], fittings: [], ...over };
  return { ...made, boat, places: [], items, runs: [], feeds: [], dataLinks: [] };
}
const mast = (over: Partial<Mast> = {}): Mast =>
  mastSchema.parse({
    id: 'mast',
    name: 'Mast',
    xM: 5,
    footZM: 1.5,
    truckZM: 16,
    sectionMm: 200,
    material: 'aluminium',
    stepped: 'deck',
    boomZM: 3,
    boomLengthM: 5,
    ...over,
  });
const gnss = (xM: number, yM: number, zM: number, more: Partial<Item> = {}): Item =>
  itemSchema.parse({
    id: 'gnss',
    tag: 'A1',
    partId: 'antenna-gnss-active',
    position: { xM, yM, zM: zM - 0.05 },
    ...more,
  });
const keysOf = (view: SkyView): readonly string[] => view.obstacles.map((obstacle) => obstacle.key);
const rig = (over: Partial<RigState>): RigState => ({ ...SAILS_DOWN, ...over });

describe('the view of an antenna', () => {
  it('above everything is open', () => {
    const view = skyView(bare({ masts: [mast()] }, gnss(5, 0, 16.2)), 'gnss');
    expect(view).toEqual({ obstacles: [], blockedPercent: 0, weakenedPercent: 0, isShut: false });
  });

  it('astern of a mast has it ahead, weakened by the published figure and not blocked', () => {
    const view = skyView(bare({ masts: [mast({ boomZM: null })] }, gnss(7, 0, 3)), 'gnss');
    expect(keysOf(view)).toEqual(['mast']);
    const ahead = sightAt(view, 0, 30);
    expect(ahead.obstacle?.subject).toEqual({ kind: 'structure', id: 'mast' });
    expect(Math.abs(ahead.lossDb - uprightLossDb(0.2, 2, 1575.42))).toBeLessThan(1e-9);
    expect(sightAt(view, 360, 30)).toEqual(ahead);
    expect(sightAt(view, -360, 30)).toEqual(ahead);
    expect(sightAt(view, 10, 30)).toEqual({ lossDb: 0, obstacle: null });
    expect(view.blockedPercent).toBe(0);
    expect(view.weakenedPercent).toBeGreaterThan(1);
  });

  it('on the centreline is the same to port and starboard while upright', () => {
    const boat = { masts: [mast()], deckhouses: [], fittings: [] };
    const view = skyView(bare(boat, gnss(11.5, 0, 2)), 'gnss');
    for (const azimuth of [0.3, 1, 5, 40, 90]) {
      for (const elevation of [2, 15, 40, 70]) {
        expect(sightAt(view, azimuth, elevation).lossDb).toBe(sightAt(view, -azimuth, elevation).lossDb);
      }
    }
  });

  it('is mirrored when everything is', () => {
    const one = bare({ masts: [mast()] }, gnss(9, 1.4, 2.5));
    const other = bare({ masts: [mast()] }, gnss(9, -1.4, 2.5));
    const state = { mainsail: 'set', headsail: 'set' } as const;
    const [port, starboard] = [
      skyView(one, 'gnss', { ...state, boomDeg: 25, heelDeg: 15 }),
      skyView(other, 'gnss', { ...state, boomDeg: -25, heelDeg: -15 }),
    ];
    expect(port.weakenedPercent).toBeCloseTo(starboard.weakenedPercent, 6);
    expect(keysOf(port)).toEqual(keysOf(starboard));
  });

  it('with the sail set is weakened to leeward, with it stowed it is not', () => {
    const project = bare({ masts: [mast()] }, gnss(10.5, 0, 2));
    const set = skyView(project, 'gnss', rig({ mainsail: 'set', headsail: 'set', boomDeg: 40 }));
    expect(keysOf(set)).toEqual(['mast', 'mast:boom', 'mast:sail', 'headsail']);
    expect(sightAt(set, 20, 30).obstacle?.key).toBe('mast:sail');
    expect(sightAt(set, -20, 30).obstacle).toBeNull();
    expect(sightAt(skyView(project, 'gnss', rig({ boomDeg: 40 })), 20, 30).obstacle).toBeNull();
    expect(set.weakenedPercent).toBeGreaterThan(skyView(project, 'gnss').weakenedPercent + 5);
  });

  it('swings the boom to starboard for angles above 0', () => {
    const project = bare({ masts: [mast()] }, gnss(9, 0, 2.2));
    expect(sightAt(skyView(project, 'gnss', rig({ boomDeg: 60 })), 60, 15).obstacle?.key).toBeUndefined();
    const boomAt = (boomDeg: number): number => {
      const boom = skyView(project, 'gnss', rig({ boomDeg })).obstacles.find(({ key }) => key === 'mast:boom');
      return Math.max(...azimuths(boom?.outline ?? [])) + Math.min(...azimuths(boom?.outline ?? []));
    };
    expect(boomAt(30)).toBeGreaterThan(10);
    expect(boomAt(-30)).toBeCloseTo(-boomAt(30), 6);
  });

  it('a motor boat sets no sails; its derrick is there', () => {
    const project = bare({ kind: 'trawler', masts: [mast()] }, gnss(9, 1, 2));
    const view = skyView(project, 'gnss', rig({ mainsail: 'set', headsail: 'set', boomDeg: 30 }));
    expect(keysOf(view)).toEqual(['mast', 'mast:boom']);
  });

  it('under GRP is weakened all over, under metal or carbon shut', () => {
    for (const overhead of ['grp', 'wood', 'fabric'] as const) {
      const view = skyView(bare({}, gnss(6, 0, 1, { facts: { overhead } })), 'gnss');
      expect([view.isShut, view.blockedPercent]).toEqual([false, 0]);
      expect(view.weakenedPercent).toBeCloseTo(100, 9);
      expect(sightAt(view, 123, 90).lossDb).toBeGreaterThan(0);
    }
    for (const overhead of ['metal', 'carbon'] as const) {
      const view = skyView(bare({}, gnss(6, 0, 1, { facts: { overhead } })), 'gnss');
      expect([view.isShut, Math.round(view.blockedPercent)]).toEqual([true, 100]);
    }
  });

  it('under a carbon roof that its place does not tell of is blocked through the zenith', () => {
    const roof = {
      id: 'roof',
      name: 'Hardtop',
      kind: 'hardtop',
      xForeM: 4,
      xAftM: 8,
      zBaseM: 1,
      zTopM: 4,
      material: 'carbon',
    } as const;
    const view = skyView(bare({ fittings: [roof] }, gnss(6, 0, 3)), 'gnss');
    expect(sightAt(view, 0, 90).obstacle?.key).toBe('roof');
    expect(sightAt(view, 200, 80).obstacle?.key).toBe('roof');
    expect(sightAt(view, 90, 5).obstacle).toBeNull();
    expect(view.blockedPercent).toBeGreaterThan(30);
    // At the very edge of it one half of the sky is open.
    const edge = skyView(bare({ fittings: [roof] }, gnss(8, 0, 3)), 'gnss');
    expect(sightAt(edge, 0, 60).obstacle?.key).toBe('roof');
    expect(sightAt(edge, 180, 60).obstacle).toBeNull();
  });

  it('shows what stands near it in the open, and not what is below or to be removed', () => {
    const radar = (more: Partial<Item>): Item =>
      itemSchema.parse({
        id: 'rad',
        tag: 'RAD-1',
        partId: 'radar-dome-4kw',
        position: { xM: 8, yM: 0, zM: 3 },
        ...more,
      });
    expect(keysOf(skyView(bare({}, gnss(6, 0, 3), radar({})), 'gnss'))).toEqual(['rad']);
    expect(keysOf(skyView(bare({}, gnss(6, 0, 3), radar({ status: 'remove' })), 'gnss'))).toEqual([]);
    expect(keysOf(skyView(bare({}, gnss(6, 0, 3), radar({ facts: { overhead: 'grp' } })), 'gnss'))).toEqual([]);
  });

  it('puts a noted pole towards the wind generator, else astern, and says so', () => {
    const noted = gnss(6, 0, 3, { facts: { shadowPoleDiameterM: 0.3, shadowPoleDistanceM: 0.9 } });
    const generator = itemSchema.parse({
      id: 'wg',
      tag: 'WG-1',
      partId: 'wind-generator',
      position: { xM: 6, yM: -1, zM: 3 },
    });
    const beside = skyView(bare({}, noted, generator), 'gnss');
    expect(keysOf(beside)).toEqual(['wg']);
    expect(sightAt(beside, 90, 20).obstacle?.label).toBe('WG-1: pole');
    const alone = skyView(bare({}, noted), 'gnss');
    expect(sightAt(alone, 180, 20).obstacle?.label).toContain('bearing not noted');
    expect(sightAt(alone, 180, 20).lossDb).toBeCloseTo(uprightLossDb(0.3, 0.9, 1575.42), 9);
  });

  it('refuses what is not there and what cannot be', () => {
    const project = bare({}, gnss(6, 0, 3, { partId: 'no-such-part' }));
    expect(() => skyView(project, 'nobody')).toThrow(RangeError);
    expect(() => skyView(project, 'gnss')).toThrow('no-such-part');
    const sound = bare({}, gnss(6, 0, 3));
    for (const bad of [rig({ heelDeg: 61 }), rig({ heelDeg: Number.NaN }), rig({ boomDeg: -91 })]) {
      expect(() => skyView(sound, 'gnss', bad)).toThrow(RangeError);
    }
    const view = skyView(sound, 'gnss');
    expect(() => sightAt(view, Number.NaN, 5)).toThrow(RangeError);
    expect(() => sightAt(view, 0, -1)).toThrow(RangeError);
    expect(() => sightAt(view, 0, 91)).toThrow(RangeError);
  });
});

describe('on the demo boats', () => {
  it('the antennas below steel and carbon are shut, the masthead whips see all', () => {
    expect(skyView(demo('brannoch-tern'), 'a4').isShut).toBe(true);
    expect(skyView(demo('vessarine'), 'a4').isShut).toBe(true);
    expect(skyView(demo('brannoch-tern'), 'a1').obstacles).toEqual([]);
    expect(skyView(demo('vessarine'), 'a1').obstacles).toEqual([]);
  });

  it('the terminal on the arch has the generator’s pole abaft its beam', () => {
    const view = skyView(demo('vessarine'), 'sat-1');
    const pole = view.obstacles.find(({ key }) => key === 'wg-1');
    expect(pole?.lossDb).toBeGreaterThan(2);
    expect(sightAt(view, 209.7, 30).obstacle?.key).toBe('wg-1');
  });

  it.each(['brannoch-tern', 'pelluna', 'vessarine'])('%s: every outline is sound, whatever the rig does', (name) => {
    const project = demo(name);
    for (const item of project.items) {
      for (const heelDeg of [-60, -20, 0, 35]) {
        const view = skyView(project, item.id, { mainsail: 'set', headsail: 'set', boomDeg: heelDeg / 2, heelDeg });
        expect(view.blockedPercent).toBeLessThanOrEqual(view.weakenedPercent + 1e-9);
        expect(view.weakenedPercent).toBeLessThanOrEqual(100 + 1e-9);
        for (const { outline: ring, lossDb } of view.obstacles) {
          expect(ring.length).toBeGreaterThan(2);
          expect(lossDb > 0 && lossDb <= 20).toBe(true);
          for (const { azimuthDeg, elevationDeg } of ring) {
            expect(Number.isFinite(azimuthDeg) && elevationDeg >= 0 && elevationDeg <= 90).toBe(true);
          }
        }
      }
    }
  });

  it.each(['brannoch-tern', 'vessarine'])('%s: forestay and deck edge are those of the drawing', (name) => {
    const { boat } = demo(name);
    const stay = forestay(boat);
    const drawn = stays(boat, []).find(({ furled }) => furled)?.points;
    expect(drawn).toEqual([
      [stay?.head.xM, stay?.head.zM],
      [stay?.tack.xM, stay?.tack.zM],
    ]);
    for (const xM of [-1, 0, 3, boat.loaM / 2, boat.loaM, boat.loaM + 9]) {
      expect(deckZM(boat, xM)).toBeCloseTo(sheerZM(boat, xM), 12);
    }
  });
});
