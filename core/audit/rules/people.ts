import type { PathBudget } from '../../links/types.ts';
import type { Item } from '../../model/project.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, itemsOf, tagOf } from '../rule.ts';

/** Whole-body limit for the public at 30 to 400 MHz, W/m2: 47 CFR 1.1310 (FCC) and EU 1999/519 agree. */
const PUBLIC_LIMIT_W_PER_M2 = 2;

/**
 * Distance at which the power density of an antenna falls to a limit, m: R = sqrt(P G / (4 pi S)), far field, free space,
 * full duty. P in W at the antenna, gain in dBi, S in W/m2. Source: FCC filings and a radio maker's manual use this form.
 */
export function keepClearM(powerW: number, gainDbi: number, limitWPerM2: number): number {
  if (!(powerW >= 0) || !(limitWPerM2 > 0)) throw new RangeError('Power must be >= 0 W and the limit > 0 W/m2');
  return Math.sqrt((powerW * 10 ** (gainDbi / 10)) / (4 * Math.PI * limitWPerM2));
}

export const personNearAntenna: Rule = {
  id: 'person-near-antenna',
  summary: 'A seat or standing place is nearer to a transmitting VHF antenna than its keep-clear distance.',
  severity: 'A',
  authority: AUTHORITIES.exposure,
  check: (input) => {
    const strongest = new Map<string, PathBudget>();
    for (const path of input.paths) {
      if (path.frequencyMhz < 30 || path.frequencyMhz > 400 || path.wattsAtAntenna === null) continue;
      const known = strongest.get(path.antennaId);
      if (!known || (known.wattsAtAntenna ?? 0) < path.wattsAtAntenna) strongest.set(path.antennaId, path);
    }
    return [...strongest.values()].flatMap((path) => exposureOf(input, path));
  },
};

function exposureOf(input: AuditInput, path: PathBudget): readonly Remark[] {
  const antenna = input.index.items.get(path.antennaId);
  const personM = antenna?.facts.nearestPersonM;
  if (!antenna || personM === undefined || path.wattsAtAntenna === null) return [];
  const clearM = keepClearM(path.wattsAtAntenna, path.antennaGainDbi, PUBLIC_LIMIT_W_PER_M2);
  if (personM >= clearM) return [];
  return [
    {
      subjects: [itemSubject(antenna.id), itemSubject(path.radioId)],
      title: `${antenna.tag} is too near to people`,
      measured: [
        'A seat or standing place ',
        q(personM, 'm'),
        ' from it, with ',
        q(path.wattsAtAntenna, 'W'),
        ' at the antenna.',
      ],
      limit: [
        'At least ',
        q(clearM, 'm'),
        ' (free space, steady carrier). Reflections lengthen it and makers declare more, one of them ',
        q(1.8, 'm'),
        ' for 25 W and up to 3 dBi: the set’s own manual governs.',
      ],
      action: [
        `Move the antenna up or away from the seat. Until then nobody sits there while ${tagOf(input, path.radioId)} transmits, or it stays on low power.`,
      ],
    },
  ];
}

/** Vertical beam of a small scanner, whole angle, degrees, where its part does not state one: makers print 20 to 30. */
const RADAR_BEAM_DEG = 25;
/** Trade guidance for a scanner above a deck people stand on, m. */
const RADAR_ABOVE_DECK_M = 2.4;

export const radarAtEyeHeight: Rule = {
  id: 'radar-at-eye-height',
  summary: 'A person standing near the radar has their head in its vertical beam.',
  severity: 'A',
  authority: AUTHORITIES.radarBeam,
  check: (input) =>
    itemsOf(input, 'equipment').flatMap(([item, part]) => {
      const { standingEyeZM: eyeM, nearestPersonM: personM } = item.facts;
      if (part.equipmentClass !== 'radar' || eyeM === undefined || personM === undefined) return [];
      const beamDeg = part.figures.verticalBeamDeg?.value ?? RADAR_BEAM_DEG;
      const halfBeamM = personM * Math.tan((beamDeg * Math.PI) / 360);
      const offM = Math.abs(item.position.zM - eyeM);
      return offM < halfBeamM ? [radarRemark(item, { personM, beamDeg, halfBeamM, offM })] : [];
    }),
};

function radarRemark(item: Item, beam: { personM: number; beamDeg: number; halfBeamM: number; offM: number }): Remark {
  return {
    subjects: [itemSubject(item.id)],
    title: `The beam of ${item.tag} is at head height`,
    measured: [
      'Its centre is ',
      q(beam.offM, 'm', 2),
      ' from the eye of a person standing ',
      q(beam.personM, 'm'),
      ' away.',
    ],
    limit: [
      'More than ',
      q(beam.halfBeamM, 'm', 2),
      ' off: half of a vertical beam of ',
      q(beam.beamDeg, 'degree'),
      ' at that distance.',
    ],
    action: [
      'Do not transmit on radar while anyone stands there. Raise the scanner until its beam clears all heads; the trade keeps it ',
      q(RADAR_ABOVE_DECK_M, 'm'),
      ' above a deck people stand on. Switch it off and post a notice before anyone goes aloft.',
    ],
  };
}
