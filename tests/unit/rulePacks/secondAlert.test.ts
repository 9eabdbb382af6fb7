import { describe, expect, it } from 'vitest';
import { item } from '../redundancy/smallBoat.ts';
import {
  add,
  area,
  boat,
  change,
  drop,
  type Edit,
  held,
  hfDsc,
  messenger,
  secondVhf,
  terminal,
  words,
} from './boats.ts';

const said = (rule: string, ...edits: readonly Edit[]) => {
  const result = held(rule, boat(...edits));
  return [result.verdict, words(result)];
};
const A3 = area('A3');

describe('A3 names the alert beside satellite and MF', () => {
  it.each([
    ['the beacon', [], 'By satellite: SES. MF: HF. Beside them: EPIRB.'],
    ['else HF on the MF set', [drop('EPIRB')], 'By satellite: SES. MF: HF. Beside them: HF on HF, the same set.'],
  ] as const)('%s', (_, edits, because) => {
    expect(said('gmdss-a3-satellite', A3, terminal, hfDsc(), ...edits)).toEqual(['met', because]);
  });

  it('by HF with only a messenger beside is open, and says what about', () => {
    expect(said('gmdss-a3-hf', A3, drop('EPIRB'), hfDsc(), messenger)).toEqual([
      'cannot-tell',
      'HF by HF; beside it only SATH, and whether SATH passes distress alerts by its service is not recorded.',
    ]);
    expect(said('gmdss-a3-hf', A3, drop('EPIRB'), hfDsc())).toEqual([
      'not-met',
      'HF alerts by HF; no beacon and no satellite set beside.',
    ]);
  });
});

describe('a beacon of another owner is told wherever it counts', () => {
  const another = change('EPIRB', { facts: { bracket: 'float-free', registration: 'another-owner' } });
  it.each([
    ['gmdss-beacon', [area('A2')]],
    ['gmdss-a1-second-alert', [area('A1')]],
    ['gmdss-a2-second-alert', [area('A2')]],
    ['gmdss-a3-satellite', [A3, terminal, hfDsc()]],
    ['gmdss-a3-hf', [A3, hfDsc()]],
    ['gmdss-a4', [area('A4'), hfDsc()]],
  ] as const)('%s', (rule, edits) => {
    expect(said(rule, ...edits, another)).toEqual([
      'met',
      expect.stringContaining('Mind: EPIRB is registered to another owner.'),
    ]);
    expect(said(rule, ...edits)).toEqual(['met', expect.not.stringContaining('Mind')]);
  });
});

describe('upkeep', () => {
  it('far off two of three are asked for: both kinds of upkeep, or one beside duplicated equipment', () => {
    expect(said('gmdss-availability-far', A3)).toEqual([
      'cannot-tell',
      expect.stringContaining('that leaves upkeep both ashore and at sea'),
    ]);
    expect(said('gmdss-availability-far', A3, secondVhf, terminal)).toEqual([
      'cannot-tell',
      expect.stringContaining('Duplicated equipment is one; the second would be upkeep ashore or at sea'),
    ]);
    expect(said('gmdss-availability-near', area('A1'))[1]).toContain('that leaves upkeep ashore or at sea');
  });
});

describe('dates of beacons', () => {
  it('are not asked of a personal beacon', () => {
    const personal = [drop('EPIRB'), add(item('PLB', 'beacon-personal', null))];
    for (const rule of ['uk-beacon-test', 'uk-beacon-service'])
      expect(said(rule, ...personal)).toEqual(['does-not-apply', 'No beacon of the boat’s own on the drawing.']);
  });
});
