import { capacityCheck, recharge } from '../checks/charging.ts';
import { availability, duplication } from '../checks/longRange.ts';
import { independentReserve } from '../checks/reserveApart.ts';
import { distressReserve, reserveWithoutSource } from '../checks/reserveRules.ts';
import { RULE_FIGURES } from '../figures.ts';
import type { PackRule } from '../types.ts';
import { rulesOf } from './define.ts';
import { SUBPART_W } from './gmdssSource.ts';

const working = 'Keeping it working';
const energy = 'Reserve of energy';

const AVAILABILITY = rulesOf(SUBPART_W, [
  {
    id: 'gmdss-availability-near',
    theme: working,
    title: 'A1 and A2: one of three: duplicated equipment, upkeep ashore, upkeep at sea',
    clause: '47 CFR 80.1105(c)',
    seaAreas: ['A1', 'A2'],
    unseen: 'contracts for upkeep; tools, spares and training aboard',
    check: (input) => availability(input, RULE_FIGURES.availabilityNear),
  },
  {
    id: 'gmdss-availability-far',
    theme: working,
    title: 'A3 and A4: two of three: duplicated equipment, upkeep ashore, upkeep at sea',
    clause: '47 CFR 80.1105(d)',
    seaAreas: ['A3', 'A4'],
    unseen: 'contracts for upkeep; tools, spares and training aboard',
    check: (input) => availability(input, RULE_FIGURES.availabilityFar),
  },
]);

const DUPLICATION = rulesOf(
  {
    edition: 'Hong Kong GMDSS regulation, schedule 3, date of the text not noted',
    source: 'Hong Kong merchant shipping GMDSS regulation, schedule 3',
    strength: 'law',
    basis: 'read',
    appliesTo: 'Hong Kong ships that choose duplication as a method',
  },
  [
    {
      id: 'gmdss-duplicate-a1',
      theme: working,
      title: 'Duplication in A1: a second VHF that can alert from the conning position',
      clause: 'schedule 3, 1(1)(a)',
      seaAreas: ['A1'],
      unseen: 'that both are worked from the conning position',
      check: (input) => duplication(input, { beyondA1: false }),
    },
    {
      id: 'gmdss-duplicate-a2',
      theme: working,
      title: 'Duplication in A2: a second VHF, and a second MF with watch or a satellite set',
      clause: 'schedule 3, 1(1)(b)',
      seaAreas: ['A2'],
      unseen: 'whether a satellite service passes distress alerts',
      check: (input) => duplication(input, { beyondA1: true }),
    },
  ],
);

const RESERVE = rulesOf(
  {
    edition: 'SOLAS IV/13, as restated; date of the restatement not noted',
    source: 'SOLAS IV/13 restated by a supplier of GMDSS batteries; 47 CFR 80.1099(b)',
    strength: 'law',
    basis: 'second-hand',
    appliesTo: 'ships under SOLAS IV',
  },
  [
    {
      id: 'gmdss-reserve-1h',
      theme: energy,
      title: 'Reserve for the distress sets: 1 h where an emergency source is fitted',
      clause: 'SOLAS IV/13, 2.1 and guidance on the load',
      unseen: 'whether an emergency source is fitted; the battery’s age; loads that are not drawn',
      check: (input) => distressReserve(input, RULE_FIGURES.solasReserveWithSourceH),
    },
    {
      id: 'gmdss-reserve-6h',
      theme: energy,
      title: 'Reserve for the distress sets: 6 h where no emergency source is fitted',
      clause: 'SOLAS IV/13, 2.2 and guidance on the load',
      unseen: 'whether an emergency source is fitted; the battery’s age; loads that are not drawn',
      check: reserveWithoutSource,
    },
    {
      id: 'gmdss-reserve-apart',
      theme: energy,
      title: 'Reserve independent of the engine and of the ship’s own supply',
      clause: 'SOLAS IV/13; 47 CFR 80.1099',
      unseen: 'switches that join batteries, where they are not drawn',
      check: independentReserve,
    },
    {
      id: 'gmdss-recharge',
      theme: energy,
      title: 'A charger that restores the least capacity by itself within 10 h',
      clause: 'SOLAS IV/13, 6.1',
      unseen:
        'charging by engine and sun; an emergency source, with which less is enough; that the charger works by itself',
      check: recharge,
    },
    {
      id: 'gmdss-capacity-check',
      theme: energy,
      title: 'Battery capacity checked every 12 months',
      clause: 'SOLAS IV/13, 6.2',
      unseen: 'the log of capacity tests',
      check: capacityCheck,
    },
  ],
);

export const GMDSS_UPKEEP: readonly PackRule[] = [...AVAILABILITY, ...DUPLICATION, ...RESERVE];
