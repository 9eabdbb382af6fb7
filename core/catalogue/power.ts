import { figure } from '../model/figure.ts';
import type { PartOf, PowerClass } from '../model/part.ts';

const PRACTICE = 'common practice, no source';
const AT_REST = 'charged and at rest; common practice, no source';

function power(
  id: string,
  powerClass: PowerClass,
  name: string,
  description: string,
  { voltageV = 12.6, ratingA, capacityAh }: { voltageV?: number; ratingA?: number; capacityAh?: number } = {},
): PartOf<'power'> {
  const isSource = powerClass === 'battery-bank' || powerClass === 'starter-battery';
  return {
    id,
    kind: 'power',
    powerClass,
    name,
    description,
    ports: [
      { id: 'in', medium: 'dc', label: isSource ? 'charge' : 'supply', role: 'in' },
      { id: 'out', medium: 'dc', label: 'output', role: 'out' },
    ],
    figures: {
      voltageV: figure(voltageV, 0.5, 'assumed', isSource ? AT_REST : PRACTICE),
      ...(ratingA === undefined ? {} : { ratingA: figure(ratingA, 0, 'data-sheet', 'marked rating') }),
      ...(capacityAh === undefined
        ? {}
        : { capacityAh: figure(capacityAh, capacityAh * 0.1, 'data-sheet', 'marked capacity') }),
    },
    traits: {},
  };
}

export const POWER: readonly PartOf<'power'>[] = [
  power(
    'bank-lead-acid-220ah',
    'battery-bank',
    'House bank, lead-acid 220 Ah',
    'Acid, gas and hundreds of amperes: ventilate, secure, cover the terminals.',
    { capacityAh: 220 },
  ),
  power(
    'bank-lithium-300ah',
    'battery-bank',
    'House bank, lithium 300 Ah',
    'With its own management system, which may disconnect without warning.',
    { voltageV: 13.2, capacityAh: 300 },
  ),
  power(
    'bank-small-20ah',
    'battery-bank',
    'Emergency battery 20 Ah',
    'Small sealed battery kept high and dry for the radio alone.',
    { capacityAh: 20 },
  ),
  power(
    'battery-starter-75ah',
    'starter-battery',
    'Starter battery 75 Ah',
    'For the engine; a radio fed from it may reset while cranking.',
    { capacityAh: 75 },
  ),
  power('panel-dc', 'panel', 'DC distribution panel', 'Bus bar behind the breakers.', {}),
  ...[3, 5, 10, 15, 20, 30].map((ratingA) =>
    power(`breaker-${ratingA}a`, 'breaker', `Breaker ${ratingA} A`, 'Protects the conductor behind it.', { ratingA }),
  ),
  ...[10, 30].map((ratingA) =>
    power(
      `fuse-holder-${ratingA}a`,
      'fuse-holder',
      `Fuse holder, ${ratingA} A`,
      'Sealed holder close to the battery; protects the conductor behind it.',
      { ratingA },
    ),
  ),
  power(
    'inverter-230v',
    'inverter',
    'Inverter 230 V',
    'Makes mains voltage from the battery; mains work is for a licensed electrician.',
    { voltageV: 230, ratingA: 100 },
  ),
  power('converter-dc-dc', 'converter', 'DC-DC converter', 'Steady supply from a sagging battery.', { ratingA: 10 }),
  power('charger-mains', 'charger', 'Battery charger', 'Shore or generator supply.', { ratingA: 30 }),
];
