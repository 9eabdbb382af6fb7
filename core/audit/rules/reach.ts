import { overheadOf } from '../../catalogue/lookup.ts';
import { frequencyOf, seaServiceOf } from '../../reach/ownSide.ts';
import { isInSeaModel, SEA_MODEL_MHZ } from '../../reach/ranges.ts';
import { SEA_SERVICE_WORDS, type SeaService } from '../../reach/types.ts';
import { seesSky } from '../../redundancy/fix.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, itemsOf, tagOf } from '../rule.ts';

export const gnssGain: Rule = {
  id: 'gnss-gain',
  summary: 'A GNSS receiver gets less or more gain from its antenna and lead than it asks for, tolerances counted.',
  severity: 'B',
  authority: AUTHORITIES.gnssGain,
  check: (input) =>
    input.gnss.flatMap((result) => {
      // Without a sky there is no fix whatever the gain; other rules tell of that.
      if (result.isGood || result.netGainDb === null || result.carrierToNoiseDbHz === null) return [];
      const { minDb = null, maxDb = null } = result.window ?? {};
      return [
        {
          subjects: [itemSubject(result.itemId), itemSubject(result.antennaId)],
          title: `Gain before the receiver of ${tagOf(input, result.itemId)} is not what it asks for`,
          measured: result.verdict,
          limit: [
            ...(minDb === null ? [] : ['At least ', q(minDb, 'dB', 0)]),
            ...(minDb !== null && maxDb !== null ? [', '] : []),
            ...(maxDb === null ? [] : [`${minDb === null ? 'At' : 'at'} most `, q(maxDb, 'dB', 0)]),
            minDb === null && maxDb === null
              ? 'A passive antenna wants a lead of next to no loss.'
              : ' after amplifier, cable and connectors.',
          ],
          action: [
            'Change lead or antenna as said, then look at the number of satellites and their strength in the set.',
          ],
        },
      ];
    }),
};

export const satelliteLine: Rule = {
  id: 'satellite-line',
  summary:
    'With its cable an outside satellite antenna is no better than none, or the line loses more than the class allows.',
  severity: 'B',
  authority: AUTHORITIES.satelliteLine,
  check: (input) =>
    input.satellites.flatMap((result) => {
      const isSkyless = result.pathId === null || isShut(input, result.antennaId);
      if (result.isGood || isSkyless) return [];
      return [
        {
          subjects: [itemSubject(result.itemId), itemSubject(result.antennaId)],
          title: `The line of ${tagOf(input, result.itemId)} eats what ${tagOf(input, result.antennaId)} gives`,
          measured: result.verdict,
          limit: result.change
            ? ['An outside antenna should send and hear better than the one in the set.']
            : ['Line loss within what the maker of the set allows.'],
          action: ['Shorten the cable or take a thicker one; where neither goes, bring the set itself under the sky.'],
        },
      ];
    }),
};

/** Under metal or carbon: another rule tells of that. */
function isShut(input: AuditInput, itemId: string): boolean {
  const item = input.index.items.get(itemId);
  return item !== undefined && !seesSky(overheadOf(input.project, item));
}

export const outsideMethod: Rule = {
  id: 'outside-method',
  summary: 'A radio works on a frequency that the sea model is not for, so that no range is reckoned for it.',
  severity: 'C',
  authority: AUTHORITIES.seaModel,
  check: (input) => [
    ...input.paths.flatMap((path) => {
      const item = input.index.items.get(path.radioId);
      const part = input.index.effective.get(path.radioId);
      if (!item || part?.kind !== 'radio') return [];
      const service = seaServiceOf({ kind: 'path', path, item, part });
      return service === null ? [] : unrangedRemark(input, [path.radioId, path.antennaId], path.frequencyMhz, service);
    }),
    ...itemsOf(input, 'standalone').flatMap(([item, part]) => {
      const source = { kind: 'standalone', item, part } as const;
      const service = seaServiceOf(source);
      return service === null ? [] : unrangedRemark(input, [item.id], frequencyOf(source, service), service);
    }),
  ],
};

function unrangedRemark(
  input: AuditInput,
  itemIds: readonly string[],
  frequencyMhz: number,
  service: SeaService,
): readonly Remark[] {
  if (isInSeaModel(frequencyMhz)) return [];
  const [itemId = ''] = itemIds;
  return [
    {
      subjects: [...new Set(itemIds)].map(itemSubject),
      title: `No range is reckoned for ${tagOf(input, itemId)}`,
      measured: ['It carries ', SEA_SERVICE_WORDS[service], ' on ', q(frequencyMhz, 'MHz'), '.'],
      limit: ['The sea model is for ', q(SEA_MODEL_MHZ[0], 'MHz', 0), ' to ', q(SEA_MODEL_MHZ[1], 'MHz', 0), '.'],
      action: [
        'Look whether the frequency of the part is right. If it is, try the set at the distances that matter and write down what it did.',
      ],
    },
  ];
}
