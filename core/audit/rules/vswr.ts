import { feederLossDb } from '../../links/countedLoss.ts';
import type { PathBudget } from '../../links/types.ts';
import { openEndVswr, vswrAtInput } from '../../rf/mismatch.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Rule } from '../rule.ts';
import { itemSubject, tagOf } from '../rule.ts';

/** A bad antenna has a VSWR of 3; behind a lossy feeder it should still show as more than 1.5 at the set. */
const BAD_ANTENNA_VSWR = 3;
const GOOD_READING_VSWR = 1.5;
/** VSWR readings above this are bad in themselves. */
const HIGHEST_VSWR = 2;

export const vswrMasked: Rule = {
  id: 'vswr-masked',
  summary: 'A good VSWR was read through so much loss that it proves nothing about the antenna.',
  severity: 'B',
  authority: AUTHORITIES.openEnd,
  check: (input) =>
    readings(input).flatMap(({ path, value, lossDb }) => {
      const hidden = vswrAtInput(lossDb, BAD_ANTENNA_VSWR) <= GOOD_READING_VSWR;
      if (!hidden || value > HIGHEST_VSWR) return [];
      return [
        {
          subjects: [itemSubject(path.radioId), itemSubject(path.antennaId)],
          title: `The VSWR read at ${tagOf(input, path.radioId)} proves nothing`,
          measured: ['VSWR ', q(value, 'ratio', 1), ' at the set, through ', q(lossDb, 'dB'), ' of feeder.'],
          limit: ['Through that loss even a missing antenna would read only ', q(openEndVswr(lossDb), 'ratio'), '.'],
          action: ['Measure at the antenna, or take the antenna off and compare with the predicted open-end reading.'],
        },
      ];
    }),
};

export const vswrHigh: Rule = {
  id: 'vswr-high',
  summary: 'A VSWR reading above 2 at the set.',
  severity: 'B',
  authority: AUTHORITIES.vswr,
  check: (input) =>
    readings(input).flatMap(({ path, value }) =>
      value <= HIGHEST_VSWR
        ? []
        : [
            {
              subjects: [itemSubject(path.radioId), itemSubject(path.antennaId)],
              title: `VSWR at ${tagOf(input, path.radioId)} is high`,
              measured: ['VSWR ', q(value, 'ratio', 1), ' at the set.'],
              limit: ['At most ', q(HIGHEST_VSWR, 'ratio', 1), '.'],
              action: [
                'Check both plugs, then the feeder with a dummy load at its far end, then the antenna. Do not transmit until it is cured.',
              ],
            },
          ],
    ),
};

interface Reading {
  readonly path: PathBudget;
  readonly value: number;
  /** Of the feeder alone, as measured where it was measured; the antenna's own mismatch is what the meter looks for. */
  readonly lossDb: number;
}

/** VSWR readings taken at a set or on its feeder, each with the first path it belongs to. */
function readings(input: AuditInput): readonly Reading[] {
  return input.project.measurements.flatMap(({ kind, subject, value }) => {
    if (kind !== 'vswr') return [];
    const path = input.paths.find((each) =>
      subject.kind === 'run'
        ? each.runIds.includes(subject.id)
        : subject.id === each.radioId || subject.id === each.antennaId,
    );
    return path ? [{ path, value, lossDb: path.measuredLossDb ?? feederLossDb(path) }] : [];
  });
}
