import type { HfResult, SatelliteResult } from '../../reach/types.ts';
import { dbmToWatts } from '../../rf/decibels.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../../units/constants.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, tagOf } from '../rule.ts';
import { keepClearM } from './people.ts';

/** Impedance of free space, ohm. */
const FREE_SPACE_OHM = 376.73;
/** Of a short upright wire over metal or sea: three times an isotropic antenna. */
const SHORT_WIRE_DBI = 4.77;
/** An antenna with more gain than this sends a beam, which points at the sky, dBi. */
const BEAM_DBI = 6;

/**
 * Reference level for the public, whole body, mean over 30 minutes, W/m2 (below 30 MHz that of the plane wave with the same
 * electric field, 300 / f^0.7 V/m).
 * @param frequencyMhz 0.1 to 300 000
 * @throws RangeError outside
 * Source: ICNIRP 2020, table 5 (from memory); 47 CFR 1.1310 and EU 1999/519 agree from 30 to 300 MHz.
 */
export function publicLimitWPerM2(frequencyMhz: number): number {
  if (!(frequencyMhz >= 0.1 && frequencyMhz <= 300_000))
    throw new RangeError(`frequencyMhz must be 0.1 to 300000, not ${frequencyMhz}.`);
  if (frequencyMhz < 30) return (300 / frequencyMhz ** 0.7) ** 2 / FREE_SPACE_OHM;
  if (frequencyMhz < 400) return 2;
  return frequencyMhz < 2000 ? frequencyMhz / 200 : 10;
}

/** Nearer than this to a small antenna there is no far field, m: a wavelength over 2 pi. @throws RangeError */
export function nearFieldM(frequencyMhz: number): number {
  if (!(frequencyMhz > 0 && Number.isFinite(frequencyMhz)))
    throw new RangeError(`frequencyMhz must be above 0, not ${frequencyMhz}.`);
  return SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6 * 2 * Math.PI);
}

/** Share of the time a set sends, 0 to 1; all of it where none is stated. */
function dutyOf(input: AuditInput, itemId: string): number {
  const part = input.index.effective.get(itemId);
  const percent = part?.kind === 'radio' ? part.figures.dutyPercent?.value : undefined;
  return percent !== undefined && percent > 0 && percent <= 100 ? percent / 100 : 1;
}

export const personNearTerminal: Rule = {
  id: 'person-near-terminal',
  summary:
    'A seat or standing place is nearer to a satellite antenna than its keep-clear distance; for a beam, which points at the sky, the class is B.',
  severity: 'A',
  authority: AUTHORITIES.exposureAverage,
  check: (input) => input.satellites.flatMap((result) => terminalRemark(input, result)),
};

function terminalRemark(input: AuditInput, result: SatelliteResult): readonly Remark[] {
  const personM = input.index.items.get(result.antennaId)?.facts.nearestPersonM;
  if (personM === undefined || result.eirpDbm === null) return [];
  const averageW = dbmToWatts(result.eirpDbm) * dutyOf(input, result.itemId);
  const clearM = Math.max(
    keepClearM(averageW, 0, publicLimitWPerM2(result.frequencyMhz)),
    nearFieldM(result.frequencyMhz),
  );
  if (personM >= clearM) return [];
  const isBeam = result.antennaGainDbi > BEAM_DBI;
  const ids = [...new Set([result.antennaId, result.itemId])];
  return [
    {
      subjects: ids.map(itemSubject),
      severity: isBeam ? 'B' : 'A',
      title: `${tagOf(input, result.antennaId)} is too near to people`,
      measured: [
        'A seat or standing place ',
        q(personM, 'm'),
        ` from it${isBeam ? ', if it comes into the beam' : ''}; `,
        q(averageW, 'W'),
        ' radiated on average, the gain counted.',
      ],
      limit: [
        'At least ',
        q(clearM, 'm'),
        ', free space, far field. What the set’s own manual declares governs and is often more.',
      ],
      action: ['Move the antenna up or away from where people are. Until then keep clear of it while it may send.'],
    },
  ];
}

export const personNearHf: Rule = {
  id: 'person-near-hf',
  summary:
    'A seat or standing place is inside the near field of a transmitting HF antenna, where only the maker can say; below the far-field distance the class is A.',
  severity: 'C',
  authority: AUTHORITIES.exposureAverage,
  check: (input) => input.hf.flatMap((result) => hfRemark(input, result)),
};

function hfRemark(input: AuditInput, result: HfResult): readonly Remark[] {
  const personM = input.index.items.get(result.antennaId)?.facts.nearestPersonM;
  if (personM === undefined || !result.canTransmit) return [];
  const duty = dutyOf(input, result.itemId);
  const sending = result.bands.flatMap(({ frequencyMhz, radiatedW, name }) =>
    radiatedW === null
      ? []
      : [
          {
            name,
            nearM: nearFieldM(frequencyMhz),
            clearM: keepClearM(radiatedW * duty, SHORT_WIRE_DBI, publicLimitWPerM2(frequencyMhz)),
          },
        ],
  );
  const widest = sending.toSorted((a, b) => b.nearM - a.nearM)[0];
  const clearM = Math.max(0, ...sending.map((band) => band.clearM));
  if (!widest || (personM >= widest.nearM && personM >= clearM)) return [];
  return [
    {
      subjects: [itemSubject(result.antennaId), itemSubject(result.itemId)],
      severity: personM < clearM ? 'A' : 'C',
      title: `People are in the near field of ${tagOf(input, result.antennaId)}`,
      measured: ['A seat or standing place ', q(personM, 'm'), ' from it.'],
      limit: [
        'The far field begins ',
        q(widest.nearM, 'm', 0),
        ` off at ${widest.name}; by its formula `,
        q(clearM, 'm'),
        ' would do, but nearer than that it says nothing.',
      ],
      action: [
        'Keep the distance that the set’s maker declares for the antenna and the power. Nobody near the wire while it sends: touching it burns at any power.',
      ],
    },
  ];
}
