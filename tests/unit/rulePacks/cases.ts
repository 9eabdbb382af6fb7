import type { Project } from '../../../core/model/project.ts';
import { feed, item, run } from '../redundancy/smallBoat.ts';
import {
  add,
  area,
  bare,
  boat,
  change,
  drop,
  type Edit,
  figures,
  height,
  hfDsc,
  messenger,
  navtexSet,
  power,
  secondBank,
  secondVhf,
  telephone,
  terminal,
  wire,
} from './boats.ts';

/** Boats that meet a rule, miss it, and leave it open; a rule that a drawing can never settle has only the last. */
export interface Cases {
  readonly met?: Project;
  readonly 'not-met'?: Project;
  readonly 'cannot-tell'?: Project;
  readonly 'does-not-apply'?: Project;
}

const base = boat();
const near = boat(area('A1'));
const nothing = boat(bare);
const full = figures('BAT', { capacityAh: 220 });
const empty = figures('BAT', { capacityAh: 2 });
const handhelds = (...tags: readonly string[]) => add(...tags.map((tag) => item(tag, 'handheld', null)));
const transponders = (partId: string, ...tags: readonly string[]) => add(...tags.map((tag) => item(tag, partId, null)));
const emergency = (facts: object) => boat(add(item('EMA', 'emergency', 'hut', { facts })));
const dscHandheldOnly = boat(drop('VHF'), add(item('HH2', 'handheld-dsc', null)));
const manual = boat(change('EPIRB', { facts: { bracket: 'manual' } }));
const noBracket = boat(change('EPIRB', { facts: {} }));
const hours = { met: boat(full), 'not-met': boat(empty), 'cannot-tell': base };
export const lamp = boat(full, add(item('LAMP', 'lamp', null)), power(feed('FL', 'BRK', 'LAMP')));
export const apart = (capacityAh: number, ...edits: readonly Edit[]) =>
  boat(
    secondBank,
    figures('EM', { capacityAh }),
    full,
    add(item('LAMP', 'lamp', null)),
    power(feed('FL', 'BRK', 'LAMP')),
    ...edits,
  );
export const lengthM =
  (loaM: number): Edit =>
  (project) => ({ ...project, boat: { ...project.boat, loaM } });

const GMDSS: Readonly<Record<string, Cases>> = {
  'gmdss-two-alerts': {
    met: near,
    'not-met': boat(area('A1'), drop('EPIRB')),
    'cannot-tell': boat(area('A1'), drop('EPIRB'), messenger),
  },
  'gmdss-receive-alerts': { met: near, 'not-met': base, 'cannot-tell': boat(messenger) },
  'gmdss-ship-alerts': { met: base, 'not-met': boat(drop('VHF')), 'cannot-tell': dscHandheldOnly },
  'gmdss-rescue-traffic': { met: boat(hfDsc()), 'not-met': base, 'cannot-tell': boat(messenger) },
  'gmdss-on-scene': { met: base, 'not-met': nothing },
  'gmdss-locating': {
    met: boat(transponders('sart-radar', 'SART')),
    'not-met': boat(drop('EPIRB')),
    'cannot-tell': base,
  },
  'gmdss-safety-information': { met: boat(navtexSet), 'not-met': nothing, 'cannot-tell': base },
  'gmdss-general': { met: near, 'not-met': base },
  'gmdss-bridge': { met: base, 'not-met': nothing, 'cannot-tell': boat(drop('VHF')) },
  'gmdss-vhf-dsc': {
    met: base,
    'not-met': boat(change('VHF', { overrides: { figures: {}, traits: { dsc: false } } })),
  },
  'gmdss-channel-70-watch': { 'not-met': nothing, 'cannot-tell': base },
  'gmdss-transponder': {
    met: boat(transponders('sart-radar', 'SART')),
    'not-met': base,
    'cannot-tell': boat(transponders('sart-ais', 'SART')),
  },
  'gmdss-navtex': { met: boat(navtexSet), 'not-met': base },
  'gmdss-satellite-broadcasts': { met: boat(terminal), 'cannot-tell': base },
  'gmdss-beacon': { met: base, 'not-met': manual, 'cannot-tell': noBracket },
  'gmdss-a1-second-alert': {
    met: near,
    'not-met': boat(area('A1'), drop('EPIRB')),
    'cannot-tell': boat(area('A1'), drop('EPIRB'), messenger),
    'does-not-apply': base,
  },
  'gmdss-a2-mf': { met: boat(hfDsc()), 'not-met': boat(hfDsc('HF', 'radio-mf-hf-150w')), 'does-not-apply': near },
  'gmdss-a2-mf-watch': { 'not-met': base, 'cannot-tell': boat(hfDsc()), 'does-not-apply': near },
  'gmdss-a2-second-alert': {
    met: base,
    'not-met': boat(drop('EPIRB')),
    'cannot-tell': boat(drop('EPIRB'), messenger),
    'does-not-apply': near,
  },
  'gmdss-a3-satellite': {
    met: boat(area('A3'), terminal, hfDsc()),
    'not-met': boat(area('A3')),
    'cannot-tell': boat(area('A3'), drop('EPIRB'), hfDsc(), messenger),
    'does-not-apply': boat(area('A3'), hfDsc()),
  },
  'gmdss-a3-hf': {
    met: boat(area('A3'), hfDsc()),
    'not-met': boat(area('A3')),
    'cannot-tell': boat(area('A3'), drop('EPIRB'), hfDsc(), messenger),
    'does-not-apply': base,
  },
  'gmdss-a4': {
    met: boat(area('A4'), hfDsc()),
    'not-met': boat(area('A4'), hfDsc(), drop('EPIRB')),
    'does-not-apply': base,
  },
  'gmdss-survival-vhf': { met: boat(handhelds('HH2', 'HH3')), 'not-met': base, 'cannot-tell': boat(handhelds('HH2')) },
  'gmdss-survival-transponders': {
    met: boat(transponders('sart-radar', 'S1', 'S2')),
    'not-met': boat(transponders('sart-radar', 'S1')),
    'cannot-tell': boat(transponders('sart-radar', 'S1'), transponders('sart-ais', 'S2')),
  },
  'gmdss-availability-near': {
    met: boat(area('A1'), secondVhf),
    'cannot-tell': near,
    'does-not-apply': boat(area('A3')),
  },
  'gmdss-availability-far': { 'cannot-tell': boat(area('A3')), 'does-not-apply': base },
  'gmdss-duplicate-a1': { met: boat(area('A1'), secondVhf), 'not-met': near, 'does-not-apply': base },
  'gmdss-duplicate-a2': {
    met: boat(secondVhf, terminal),
    'not-met': boat(secondVhf),
    'cannot-tell': boat(secondVhf, messenger),
    'does-not-apply': near,
  },
  'gmdss-reserve-1h': hours,
  // 10 Ah: half of 5.5 A, receive 0.5 A and the AIS set's 0.5 A are 3.75 A, which is 2 h 40 min.
  'gmdss-reserve-6h': {
    met: boat(full),
    'not-met': boat(empty),
    'cannot-tell': boat(figures('BAT', { capacityAh: 10 })),
  },
  'gmdss-reserve-apart': { met: boat(secondBank), 'not-met': lamp, 'cannot-tell': base },
  // 6 h of 3.75 A are 22.5 Ah, which take 11.3 h at 2 A.
  'gmdss-recharge': {
    met: boat(full, add(item('CH', 'charger-mains', null)), power(feed('FC', 'CH', 'BAT'))),
    'not-met': boat(
      full,
      add(item('CH', 'charger-mains', null)),
      figures('CH', { ratingA: 2 }),
      power(feed('FC', 'CH', 'BAT')),
    ),
    'cannot-tell': base,
    'does-not-apply': nothing,
  },
  'gmdss-capacity-check': { 'cannot-tell': base, 'does-not-apply': nothing },
};

const US: Readonly<Record<string, Cases>> = {
  'us-vhf-20nm': { met: base, 'not-met': nothing },
  'us-mf-100nm': { met: boat(hfDsc('HF', 'radio-mf-hf-150w')), 'not-met': base, 'does-not-apply': near },
  'us-beyond-100nm': {
    met: boat(area('A3'), hfDsc()),
    'not-met': boat(area('A3')),
    'cannot-tell': base,
    'does-not-apply': near,
  },
  'us-beacon': { met: base, 'not-met': manual, 'cannot-tell': noBracket },
  'us-navtex': { met: boat(navtexSet), 'not-met': base },
  'us-transponder': {
    met: boat(transponders('sart-radar', 'SART')),
    'not-met': base,
    'cannot-tell': boat(transponders('sart-ais', 'SART')),
  },
  'us-two-way-vhf': { met: base, 'not-met': boat(drop('HH')) },
  'us-voltage': {
    met: base,
    // 7 ohm/km, 30 m out and back, 5.5 A and more: 2.3 V of 12 V.
    'not-met': boat(drop('BRK'), power(feed('FX', 'BAT', 'VHF', { lengthM: 30 }))),
    'cannot-tell': boat(drop('BRK')),
    'does-not-apply': nothing,
  },
  'us-reserve-6h': hours,
  'us-battery-high': { met: boat(height('BAT', 1.5)), 'not-met': base, 'cannot-tell': boat(height('BAT', 0.6)) },
  // 20 Ah by 3.25 A is 6.2 h; the deck edge is at 1.1 m.
  'us-lakes-reserve': {
    met: apart(20, height('EM', 1.5)),
    'not-met': lamp,
    'cannot-tell': apart(20, height('EM', 0.6)),
  },
  'us-passenger-reserve': hours,
  'us-fishing-power': {
    met: apart(20, lengthM(10.9)),
    'not-met': lamp,
    'cannot-tell': boat(secondBank, figures('EM', { capacityAh: 20 }), change('BAT', { placeId: null }), full),
  },
};

const UK: Readonly<Record<string, Cases>> = {
  'uk-emergency-aerial': {
    met: emergency({ leadLengthM: 20, leadConnector: 'PL-259' }),
    'not-met': base,
    'cannot-tell': emergency({}),
    'does-not-apply': nothing,
  },
  'uk-aerials-high': { met: base, 'not-met': boat(height('A1', 5)), 'cannot-tell': boat(height('A1', 10)) },
  'uk-charging': { met: boat(secondBank), 'cannot-tell': base, 'does-not-apply': nothing },
  'uk-battery-dry': { met: boat(height('BAT', 1.2)), 'not-met': base, 'cannot-tell': boat(height('BAT', 0.1)) },
  'uk-two-alerts': { met: base, 'not-met': boat(drop('EPIRB')), 'cannot-tell': boat(drop('EPIRB'), messenger) },
  'uk-automatic-position': { met: base, 'not-met': boat(drop('GPS')), 'does-not-apply': nothing },
  'uk-beacon-test': { 'cannot-tell': base, 'does-not-apply': nothing },
  'uk-beacon-service': { 'cannot-tell': base, 'does-not-apply': nothing },
  'uk-yacht-reserve': hours,
  'uk-fishing-reserve': {
    met: apart(20),
    'not-met': lamp,
    'cannot-tell': boat(full),
    'does-not-apply': boat(lengthM(11)),
  },
};

const RACING: Readonly<Record<string, Cases>> = {
  'osr-radio': { met: base, 'not-met': nothing, 'cannot-tell': boat(bare, messenger) },
  'osr-emergency-antenna': {
    met: boat(secondVhf),
    'not-met': emergency({ leadLengthM: 20, leadConnector: 'BNC' }),
    'cannot-tell': emergency({ leadLengthM: 20 }),
    'does-not-apply': nothing,
  },
  'osr-25-w': { met: base, 'not-met': boat(figures('VHF', { txPowerW: 24.9 })), 'does-not-apply': nothing },
  'osr-masthead': { met: base, 'not-met': boat(change('A1', { placeId: 'arch' }), height('A1', 4)) },
  // 5.009 dB in 100 m at 156.8 MHz (0.4 root f), 0.5 dB in the splitter; 40 per cent is 2.218 dB.
  'osr-feeder-loss': {
    met: base,
    'not-met': boat((project) => ({
      ...project,
      runs: project.runs.map((each) => ({ ...each, measuredLengthM: 30 })),
    })),
    'cannot-tell': boat((project) => ({
      ...project,
      runs: project.runs.map((each) => ({ ...each, measuredLengthM: 20 })),
    })),
    'does-not-apply': nothing,
  },
  'osr-feeder-table': {
    met: boat((project) => ({
      ...project,
      runs: project.runs.map((each) => ({ ...each, cableId: 'coax-rg-8x', measuredLengthM: 7.5 })),
    })),
    'not-met': boat((project) => ({
      ...project,
      runs: project.runs.map((each) => ({ ...each, cableId: 'coax-rg-8x', measuredLengthM: 7.6 })),
    })),
    'does-not-apply': base,
  },
  'osr-channel-72': { 'cannot-tell': base, 'does-not-apply': nothing },
  'osr-handheld': {
    met: boat(change('HH', { facts: { inGrabBag: true } })),
    'not-met': boat(change('HH', { facts: { inGrabBag: false } })),
    'cannot-tell': base,
  },
  'osr-weather': { met: boat(navtexSet), 'not-met': boat(drop('HH')), 'cannot-tell': base },
  'osr-position': { met: base, 'not-met': boat(drop('GPS', 'AIS')), 'cannot-tell': boat(drop('GPS')) },
  'osr-ais': { met: base, 'not-met': boat(change('AIS', { facts: { overhead: 'metal' } })) },
  'osr-later-emergency-antenna': {
    met: boat(secondVhf),
    'not-met': base,
    'cannot-tell': emergency({}),
    'does-not-apply': nothing,
  },
  'osr-later-ais-antenna': {
    met: boat(drop('SP'), add(item('A2', 'whip', 'arch')), wire(run('W9', 'AIS.ant', 'A2.rf'))),
    'not-met': boat(
      drop('SP'),
      add(item('A2', 'whip', 'arch')),
      height('A2', 2.9),
      wire(run('W9', 'AIS.ant', 'A2.rf')),
    ),
    'cannot-tell': base,
    'does-not-apply': nothing,
  },
  'osr-later-beacon': {
    met: base,
    'not-met': boat(change('EPIRB', { facts: { registration: 'none' } })),
    'cannot-tell': noBracket,
  },
  'aus-telephone-or-hf': {
    met: boat(hfDsc()),
    'not-met': base,
    'cannot-tell': boat(add(item('BB', 'radio-broadband-terminal', 'arch'))),
  },
  'aus-second-antenna': {
    met: boat(hfDsc(), hfDsc('HF2')),
    'not-met': boat(hfDsc()),
    'cannot-tell': boat(hfDsc(), telephone()),
  },
  'aus-rigged-emergency-antenna': {
    met: boat(secondVhf),
    'not-met': emergency({ leadLengthM: 20, leadConnector: 'PL-259' }),
    'does-not-apply': nothing,
  },
  'aus-inspection': { 'not-met': nothing, 'cannot-tell': base },
};

export const CASES: Readonly<Record<string, Cases>> = { ...GMDSS, ...US, ...UK, ...RACING };
