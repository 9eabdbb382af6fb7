import {
  fixedVhf,
  floatFreeBeacon,
  navtex,
  radarTransponder,
  satelliteBroadcasts,
  survivalVhf,
  watch,
} from '../checks/carriage.ts';
import { mfDsc } from '../checks/longRange.ts';
import { hfAndBeacon, optionA3, secondAlertA1, secondAlertA2 } from '../checks/secondAlert.ts';
import { RULE_FIGURES } from '../figures.ts';
import type { PackRule } from '../types.ts';
import { rulesOf } from './define.ts';
import { SUBPART_W } from './gmdssSource.ts';

const everywhere = 'Carried in every sea area';
const byArea = 'By sea area';
const craft = 'For the survival craft';

/** 47 CFR 80.1085 to 80.1093, which are SOLAS IV/7 to IV/11. */
const SHIP_SETS = rulesOf(SUBPART_W, [
  {
    id: 'gmdss-vhf-dsc',
    theme: everywhere,
    title: 'VHF with selective calling on channel 70 from the conning position, and voice on 6, 13 and 16',
    clause: '47 CFR 80.1085(a)(1)',
    unseen: 'that it is worked from the conning position; its channels',
    check: (input) => fixedVhf(input, { dsc: true }),
  },
  {
    id: 'gmdss-channel-70-watch',
    theme: everywhere,
    title: 'A watch on channel 70 without a break and without scanning',
    clause: '47 CFR 80.1085(a)(2)',
    unseen: 'whether the set has a watch receiver of its own, and whether the watch is kept',
    check: (input) => watch(input, 'vhf'),
  },
  {
    id: 'gmdss-transponder',
    theme: everywhere,
    title: 'A 9 GHz radar transponder',
    clause: '47 CFR 80.1085(a)(3)',
    unseen: 'where it is stowed and its battery date; an AIS-SART in its place was accepted later (from memory)',
    check: (input) => radarTransponder(input, 1),
  },
  {
    id: 'gmdss-navtex',
    theme: everywhere,
    title: 'A NAVTEX receiver',
    clause: '47 CFR 80.1085(a)(4)',
    unseen: 'which stations it is set to',
    check: navtex,
  },
  {
    id: 'gmdss-satellite-broadcasts',
    theme: everywhere,
    title: 'A receiver of satellite safety broadcasts where NAVTEX does not reach',
    clause: '47 CFR 80.1085(a)(5)',
    appliesTo: 'the same ships, outside NAVTEX cover',
    unseen: 'where NAVTEX reaches; which broadcasts a set takes',
    check: satelliteBroadcasts,
  },
  {
    id: 'gmdss-beacon',
    theme: everywhere,
    title: 'A float-free satellite beacon, easily reached, released by hand too, that one person can carry',
    clause: '47 CFR 80.1085(a)(6)',
    unseen: 'that it is free to float up; dates of release and battery',
    check: floatFreeBeacon,
  },
  {
    id: 'gmdss-a1-second-alert',
    theme: byArea,
    title: 'A1: one more way to alert, by VHF, 406 MHz beacon, MF, HF or satellite',
    clause: '47 CFR 80.1087(a)',
    seaAreas: ['A1'],
    unseen: 'that a beacon is near the conning position or worked from there',
    check: secondAlertA1,
  },
  {
    id: 'gmdss-a2-mf',
    theme: byArea,
    title: 'A2: MF with selective calling on 2187.5 kHz and voice on 2182 kHz',
    clause: '47 CFR 80.1089(a)(1)',
    seaAreas: ['A2'],
    unseen: 'the set’s frequencies',
    check: mfDsc,
  },
  {
    id: 'gmdss-a2-mf-watch',
    theme: byArea,
    title: 'A2: a watch on 2187.5 kHz without a break',
    clause: '47 CFR 80.1089(a)(2)',
    seaAreas: ['A2'],
    unseen: 'whether the set has a watch receiver of its own, and whether the watch is kept',
    check: (input) => watch(input, 'mf'),
  },
  {
    id: 'gmdss-a2-second-alert',
    theme: byArea,
    title: 'A2: an alert by another service than MF: 406 MHz beacon, HF or satellite',
    clause: '47 CFR 80.1089(a)(3)',
    seaAreas: ['A2'],
    unseen: 'whether a satellite service passes distress alerts',
    check: secondAlertA2,
  },
  {
    id: 'gmdss-a3-satellite',
    theme: byArea,
    title: 'A3, one way: satellite with distress priority, MF with selective calling, and an alert by another service',
    clause: '47 CFR 80.1091(a)',
    seaAreas: ['A3'],
    unseen:
      'whether a satellite service has distress priority; whether the MF watch is kept. Widened from 2024 (MSC.496(105), from memory)',
    check: (input) => optionA3(input, 'satellite'),
  },
  {
    id: 'gmdss-a3-hf',
    theme: byArea,
    title: 'A3, the other way: MF/HF with selective calling and watch, and an alert by another service than HF',
    clause: '47 CFR 80.1091(b)',
    basis: 'memory',
    source: 'from memory; the clause was not seen',
    seaAreas: ['A3'],
    unseen: 'whether the HF watch is kept',
    check: (input) => optionA3(input, 'hf'),
  },
  {
    id: 'gmdss-a4',
    theme: byArea,
    title: 'A4: MF/HF with selective calling and watch, and the 406 MHz polar-orbit beacon',
    clause: '47 CFR 80.1093(a)',
    seaAreas: ['A4'],
    unseen: 'whether the HF watch is kept',
    check: hfAndBeacon,
  },
]);

/** SOLAS III/6.2, as a supplier of marine equipment sums it up. */
const SURVIVAL_CRAFT = rulesOf(
  {
    edition: 'SOLAS III/6.2, date of the text not stated',
    source: 'a marine equipment supplier’s summary for sea area A1',
    strength: 'law',
    basis: 'second-hand',
    appliesTo: 'cargo ships of 300 GT and over, and passenger ships',
  },
  [
    {
      id: 'gmdss-survival-vhf',
      theme: craft,
      title: 'Handheld VHF for the survival craft: two from 300 GT, three from 500 GT',
      clause: 'SOLAS III/6.2',
      unseen: 'tonnage; whether a handheld is of the survival-craft kind',
      check: (input) => survivalVhf(input, RULE_FIGURES.survivalVhfSmaller, RULE_FIGURES.survivalVhf),
    },
    {
      id: 'gmdss-survival-transponders',
      theme: craft,
      title: 'Two search transponders from 500 GT',
      clause: 'SOLAS III/6.2',
      appliesTo: 'ships of 500 GT and over, and passenger ships',
      unseen: 'tonnage; whether an AIS-SART counts',
      check: (input) => radarTransponder(input, RULE_FIGURES.survivalSarts),
    },
  ],
);

export const GMDSS_EQUIPMENT: readonly PackRule[] = [...SHIP_SETS, ...SURVIVAL_CRAFT];
