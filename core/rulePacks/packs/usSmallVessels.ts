import { cannotTell, doesNotApply } from '../answers.ts';
import { fixedVhf, floatFreeBeacon, navtex, radarTransponder, twoWayVhf } from '../checks/carriage.ts';
import { farther, mfVoice } from '../checks/longRange.ts';
import { batteryHighSecured, fishingEmergencyPower, highReserve, voltageAtSet } from '../checks/placement.ts';
import { reserveHours } from '../checks/reserveRules.ts';
import { RULE_FIGURES } from '../figures.ts';
import { vhfSets } from '../sets.ts';
import type { Answer, PackInput, PackRule } from '../types.ts';
import { type Common, rulesOf } from './define.ts';

const sets = 'Sets by distance from the shore';
const carried = 'Carried';
const supply = 'Supply';

const PART_80: Common = {
  edition: '47 CFR part 80, mirrored text, year not noted',
  source: 'US FCC rules, 47 CFR part 80, mirrored text',
  strength: 'law',
  basis: 'read',
  appliesTo: 'US vessels under subpart R',
};

/** A distance from the shore is not recorded; sea area A1 is read as near. */
function beyond(input: PackInput, check: (input: PackInput) => Answer): Answer {
  return input.seaArea === 'A1' ? doesNotApply('She is set for A1, read here as near the shore.') : check(input);
}

/** Beyond 100 nm only A3 and A4 surely lie; in A2 it turns on how far she goes. */
function farBeyond(input: PackInput): Answer {
  const found = beyond(input, farther);
  if (input.seaArea !== 'A2' || found.verdict !== 'not-met') return found;
  return cannotTell(
    [...found.because, ' Asked for only beyond 100 nm; how far out she goes in A2 is not recorded.'],
    found.subjects,
  );
}

export const US_SMALL_VESSELS: readonly PackRule[] = [
  ...rulesOf(PART_80, [
    {
      id: 'us-vhf-20nm',
      theme: sets,
      title: 'Within 20 nm of the shore: VHF voice, with a watch on channel 16',
      clause: '47 CFR 80.880(a)',
      unseen: 'that the watch is kept',
      check: (input) => fixedVhf(input, { dsc: false }),
    },
    {
      id: 'us-mf-100nm',
      theme: sets,
      title: 'To 100 nm: MF voice as well, with a watch on 2182 kHz',
      clause: '47 CFR 80.880(b)',
      unseen: 'how far out she goes; that the watch is kept',
      check: (input) => beyond(input, mfVoice),
    },
    {
      id: 'us-beyond-100nm',
      theme: sets,
      title: 'Beyond 100 nm: HF or a satellite set as well',
      clause: '47 CFR 80.880(b)',
      unseen: 'how far out she goes',
      check: farBeyond,
    },
    {
      id: 'us-beacon',
      theme: carried,
      title: 'A category 1 (float-free) 406 MHz beacon',
      clause: '47 CFR 80.881',
      unseen: 'dates of release and battery',
      check: floatFreeBeacon,
    },
    {
      id: 'us-navtex',
      theme: carried,
      title: 'A NAVTEX receiver',
      clause: '47 CFR 80.881',
      unseen: 'which stations it is set to',
      check: navtex,
    },
    {
      id: 'us-transponder',
      theme: carried,
      title: 'A search transponder',
      clause: '47 CFR 80.881',
      unseen: 'where it is stowed; whether an AIS-SART counts',
      check: (input) => radarTransponder(input, 1),
    },
    {
      id: 'us-two-way-vhf',
      theme: carried,
      title: 'A two-way handheld VHF',
      clause: '47 CFR 80.881',
      unseen: 'whether a handheld is of the survival-craft kind',
      check: twoWayVhf,
    },
    {
      id: 'us-voltage',
      theme: supply,
      title: 'Voltage at the VHF set on transmit within 10 % of its rating',
      clause: '47 CFR 80.875(a)',
      unseen: 'the battery’s state; joints that have gone bad, unless it was measured',
      check: voltageAtSet,
    },
    {
      id: 'us-reserve-6h',
      theme: supply,
      title: 'Batteries that carry the VHF for 6 h',
      clause: '47 CFR 80.875(b)',
      unseen: 'the battery’s age; loads that are not drawn; how that rule reckons the load',
      check: (input) => reserveHours(input, RULE_FIGURES.usReserveH, [vhfSets(input)]),
    },
    {
      id: 'us-battery-high',
      theme: supply,
      title: 'Those batteries in the upper part of the vessel, secured, with 0.26 m of head room',
      clause: '47 CFR 80.875(b)',
      unseen: 'how it is secured; head room; what counts as the upper part (here: above the deck edge)',
      check: batteryHighSecured,
    },
    {
      id: 'us-lakes-reserve',
      theme: supply,
      title: 'Great Lakes: an independent reserve for 2 h, high up, ready within a minute',
      clause: '47 CFR 80.965(a)',
      appliesTo: 'Great Lakes vessels over 100 or 300 GT',
      unseen: 'how high, and how fast it is switched in; how that rule reckons the load',
      check: (input) => highReserve(input, RULE_FIGURES.usLakesReserveH),
    },
    {
      id: 'us-passenger-reserve',
      theme: supply,
      title: 'Small passenger vessels: main or reserve battery for 3 h',
      clause: '47 CFR 80.921(b)',
      appliesTo: 'US small passenger vessels',
      unseen: 'the battery’s age; loads that are not drawn',
      check: (input) => reserveHours(input, RULE_FIGURES.usPassengerReserveH, [vhfSets(input)]),
    },
  ]),
  ...rulesOf(
    {
      ...PART_80,
      edition: '46 CFR part 28, mirrored text, year not noted',
      source: 'US Coast Guard rules, 46 CFR part 28, mirrored text',
      appliesTo: 'US commercial fishing vessels',
    },
    [
      {
        id: 'us-fishing-power',
        theme: supply,
        title:
          'Fishing vessels: emergency power apart from the main, outside the machinery space, for 3 h; under 11 m for communications only',
        clause: '46 CFR 28.375(b), (d)',
        unseen: 'pumps and lights that are not drawn; torches; which spaces are machinery spaces, beyond their names',
        check: fishingEmergencyPower,
      },
    ],
  ),
];
