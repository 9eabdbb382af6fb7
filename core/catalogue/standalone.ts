import { figure } from '../model/figure.ts';
import type { PartOf, StandaloneClass } from '../model/part.ts';

const PRACTICE = 'common practice, no source';

function standalone(
  id: string,
  standaloneClass: StandaloneClass,
  name: string,
  description: string,
  [powerW, frequencyMhz, sensitivityDbm, gainDbi]: readonly [number, number, number, number],
  source: string,
  traits: PartOf<'standalone'>['traits'] = { dsc: false, internalGnss: false },
): PartOf<'standalone'> {
  return {
    id,
    kind: 'standalone',
    standaloneClass,
    name,
    description,
    ports: [],
    figures: {
      txPowerW: figure(powerW, powerW * 0.2, 'standard', source),
      frequencyMhz: figure(frequencyMhz, 0, 'standard', 'working frequency of the service'),
      rxSensitivityDbm: figure(
        sensitivityDbm,
        3,
        'standard',
        '1 uV in 50 ohm, reference sensitivity of the VHF service',
      ),
      gainDbi: figure(gainDbi, 2, 'assumed', PRACTICE),
    },
    traits,
  };
}

const BEACON = 'satellite-system page and IMO text: 5 W burst every 50 s; never transmit except in distress';

export const STANDALONE: readonly PartOf<'standalone'>[] = [
  standalone(
    'beacon-406-manual',
    'beacon-406',
    '406 MHz beacon, manual bracket',
    'Distress beacon taken from its bracket by hand. Register it, test it only by its own test.',
    [5, 406.04, -107, -2],
    BEACON,
    { dsc: false, internalGnss: true },
  ),
  standalone(
    'beacon-406-float-free',
    'beacon-406',
    '406 MHz beacon, float-free',
    'Distress beacon that frees itself when the boat sinks. Register it, test it only by its own test.',
    [5, 406.04, -107, -2],
    BEACON,
    { dsc: false, internalGnss: true },
  ),
  standalone(
    'beacon-personal',
    'personal-beacon',
    'Personal locator beacon',
    '406 MHz beacon carried by one person.',
    [5, 406.04, -107, -4],
    BEACON,
    { dsc: false, internalGnss: true },
  ),
  standalone(
    'sart-radar',
    'radar-sart',
    'Radar transponder (SART)',
    'Answers 9 GHz radar with a line of dots.',
    [0.4, 9400, -50, 0],
    'power from memory (0.4 W e.i.r.p.)',
  ),
  standalone(
    'sart-ais',
    'ais-sart',
    'AIS-SART',
    'Sends its position on AIS from the raft.',
    [1, 162, -107, -4],
    'open AIS handbook ch. 32: 1 W e.i.r.p.',
    { dsc: false, internalGnss: true },
  ),
  standalone(
    'mob-ais',
    'ais-mob',
    'AIS person-overboard device',
    'Sends its wearer’s position on AIS.',
    [1, 162, -107, -5],
    'open AIS handbook ch. 32: 1 W e.i.r.p.',
    { dsc: false, internalGnss: true },
  ),
  standalone(
    'handheld-vhf-5w',
    'handheld-vhf',
    'VHF handheld, 5 W',
    'Voice from the cockpit or the raft.',
    [5, 156.8, -107, -3],
    'maker’s manuals: 5 W',
  ),
  standalone(
    'handheld-vhf-dsc-5w',
    'handheld-vhf-dsc',
    'VHF handheld with DSC and GNSS, 5 W',
    'Voice and an alert with position, short reach.',
    [5, 156.8, -107, -3],
    'maker’s manuals: 5 W',
    { dsc: true, internalGnss: true },
  ),
  standalone(
    'handheld-satellite',
    'handheld-satellite',
    'Satellite messenger, handheld',
    'Text and position by low-orbit satellite.',
    [1.6, 1621, -117, 0],
    'L-band data module developer’s guide Table 13',
    { dsc: false, internalGnss: true },
  ),
];
