import { bestMountingM, LOW_ANTENNA_SHARE } from '../../redundancy/grades.ts';
import { twoMeans } from '../checks/alertMeans.ts';
import { beaconInterval } from '../checks/carriage.ts';
import { chargingOrSecond } from '../checks/charging.ts';
import { aerialsHigh, emergencyAerial } from '../checks/emergencyAerial.ts';
import { automaticPosition, batteryDry } from '../checks/placement.ts';
import { distressReserve, fishingReserve } from '../checks/reserveRules.ts';
import { RULE_FIGURES } from '../figures.ts';
import type { PackRule } from '../types.ts';
import { type Common, rulesOf } from './define.ts';

const aerials = 'Aerials';
const supply = 'Supply';
const alerts = 'Alerts and beacons';

const CODES: Common = {
  edition: 'MGN 280, published copy, date not noted',
  source: 'UK MCA codes, published copies',
  strength: 'guide',
  basis: 'read',
  appliesTo: 'small UK vessels in commercial use',
};

const MGN_673: Common = { ...CODES, edition: 'MGN 673, as published', appliesTo: 'UK vessels outside SOLAS' };

export const UK_CODES: readonly PackRule[] = [
  ...rulesOf(CODES, [
    {
      id: 'uk-emergency-aerial',
      theme: aerials,
      title: 'An emergency aerial where the main one is on a mast that carries sails',
      clause: 'MGN 280, 16.2.3',
      unseen: 'that it was tried',
      check: (input) => emergencyAerial(input, { sails: true, rigged: false }),
    },
    {
      id: 'uk-aerials-high',
      theme: aerials,
      title: 'Aerials as high as practicable',
      clause: 'MGN 280, 16.2.3',
      unseen: 'what is practicable, between the highest mounting and half its height',
      check: (input) => aerialsHigh(input, bestMountingM(input.project), LOW_ANTENNA_SHARE),
    },
    {
      id: 'uk-charging',
      theme: supply,
      title: 'Radio on batteries: a means of charging, or a second battery for the voyage',
      clause: 'MGN 280, 16.2.5',
      unseen: 'charging by engine and sun; length of the voyage',
      check: chargingOrSecond,
    },
    {
      id: 'uk-battery-dry',
      theme: supply,
      title: 'Radio battery kept from flooding as far as practicable',
      clause: 'MGN 280, 16.2.5',
      unseen: 'watertight boxes and bulkheads; what is practicable',
      check: batteryDry,
    },
    {
      id: 'uk-two-alerts',
      theme: alerts,
      title: 'Two independent means of alerting the shore, one of them a primary means',
      clause: 'Workboat Code, 16.2.1.1.i',
      edition: 'Workboat Code, edition 2',
      strength: 'law',
      appliesTo: 'UK workboats; relaxed in category 6',
      unseen:
        'category of the boat; whether a satellite service passes distress alerts; primary is read here as wired in',
      check: (input) => twoMeans(input, { differs: false, fixed: true, bySeaArea: false }),
    },
  ]),
  ...rulesOf(MGN_673, [
    {
      id: 'uk-automatic-position',
      theme: alerts,
      title: 'Position fed by itself into every set that can alert',
      clause: 'MGN 673, 2.1',
      unseen: 'that the sets show it',
      check: automaticPosition,
    },
    {
      id: 'uk-beacon-test',
      theme: alerts,
      title: 'Beacon tested every 12 months, strongly recommended',
      clause: 'MGN 673, 1.1',
      unseen: 'dates of tests',
      check: (input) => beaconInterval(input, RULE_FIGURES.ukBeaconTestMonths, 'test'),
    },
    {
      id: 'uk-beacon-service',
      theme: alerts,
      title: 'Beacon serviced every 60 months, strongly recommended',
      clause: 'MGN 673, 1.1.2',
      unseen: 'dates of services',
      check: (input) => beaconInterval(input, RULE_FIGURES.ukBeaconServiceMonths, 'service'),
    },
  ]),
  ...rulesOf({ ...CODES, strength: 'law' }, [
    {
      id: 'uk-yacht-reserve',
      theme: supply,
      title: 'Large yachts under 300 GT: a reserve of 3 h',
      clause: 'LY3, reserve of energy',
      edition: 'Large yacht code LY3, as summed up',
      source: 'a yacht surveyor’s summary page',
      basis: 'second-hand',
      appliesTo: 'UK large yachts in commercial use, under 300 GT',
      unseen: 'tonnage; the battery’s age; how that code reckons the load (here as SOLAS IV/13)',
      check: (input) => distressReserve(input, RULE_FIGURES.ukYachtReserveH),
    },
    {
      id: 'uk-fishing-reserve',
      theme: supply,
      title: 'Fishing vessels of 12 to 45 m: 6 h, apart from engine and main supply',
      clause: 'SI 1999/3210, 24(2)(c)',
      edition: 'SI 1999/3210 of 1999',
      source: 'UK legislation site',
      appliesTo: 'UK fishing vessels of 12 to 24 m, and of 12 to 45 m in some waters',
      unseen: 'the battery’s age',
      check: fishingReserve,
    },
  ]),
];
