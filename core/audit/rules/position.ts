import { ownFix, positionGate } from '../../redundancy/fix.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { Rule } from '../rule.ts';
import { itemSubject, itemsOf } from '../rule.ts';

export const aisNoFix: Rule = {
  id: 'ais-no-fix',
  summary: 'An AIS that transmits only with an own fix gets none, so nobody sees the boat.',
  severity: 'A',
  authority: AUTHORITIES.aisFix,
  check: (input) =>
    itemsOf(input, 'radio').flatMap(([item, part]) => {
      if (!part.radioClass.startsWith('ais-class') || !part.traits.needsFixToTransmit) return [];
      const ownOnly = part.radioClass !== 'ais-class-a' && part.traits.internalGnss;
      const fix = ownOnly ? ownFix(input.build, item) : positionGate(input.build, item);
      if (fix.gate !== null) return [];
      return [
        {
          subjects: [itemSubject(item.id)],
          title: `${item.tag} does not transmit`,
          measured: [`${sentenceCase(fix.reason)}.`],
          limit: ['Its GNSS antenna sees the sky; metal and carbon shut it out.'],
          action: [
            'Move the GNSS antenna into the open, key in its place aboard, and have another station confirm that the boat is seen.',
          ],
        },
      ];
    }),
};

export const dscNoPosition: Rule = {
  id: 'dsc-no-position',
  summary: 'A set with digital selective calling is fed no position, so its distress alert carries none.',
  severity: 'A',
  authority: AUTHORITIES.position,
  check: (input) =>
    itemsOf(input, 'radio').flatMap(([item, part]) => {
      if (!part.traits.dsc) return [];
      const position = positionGate(input.build, item);
      if (position.gate !== null) return [];
      return [
        {
          subjects: [itemSubject(item.id)],
          title: `${item.tag} alerts without a position`,
          measured: [`${sentenceCase(position.reason)}.`],
          limit: ['Automatic position into every set that can send a distress alert.'],
          action: [
            'Connect a position source, see the position on the set’s own display, and make a DSC test call. Check that the identity in it is this boat’s.',
          ],
        },
      ];
    }),
};

export const sourceNoFix: Rule = {
  id: 'position-source-no-fix',
  summary: 'A position source aboard sees no sky.',
  severity: 'B',
  authority: AUTHORITIES.clearSky,
  check: (input) =>
    itemsOf(input, 'position-source').flatMap(([item]) => {
      const fix = ownFix(input.build, item);
      if (fix.gate !== null) return [];
      return [
        {
          subjects: [itemSubject(item.id)],
          title: `${item.tag} gets no fix`,
          measured: [`${sentenceCase(fix.reason)}.`],
          limit: ['Clear view of the sky.'],
          action: ['Move it, or its antenna, out from under metal and carbon.'],
        },
      ];
    }),
};

function sentenceCase(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
