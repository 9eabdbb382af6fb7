import { describe, expect, it } from 'vitest';
import type { Project } from '../../../core/model/project.ts';
import { feed, item, run } from '../redundancy/smallBoat.ts';
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
  power,
  secondVhf,
  settings,
  telephone,
  terminal,
  wire,
  words,
} from './boats.ts';

// What an answer must name: the surveyor's question is always "which one, and by what".

const hfOnBreaker = power(feed('FH', 'BRK', 'HF', { to: { itemId: 'HF', portId: 'dc' } }));

describe('answers name what they rest on', () => {
  it('two means on one breaker: breaker, bank, their feed, and sets to select', () => {
    const result = held('gmdss-two-alerts', boat(area('A1'), drop('EPIRB'), hfDsc(), hfOnBreaker));
    expect(result.verdict).toBe('not-met');
    expect(words(result)).toMatch(
      /VHF \(VHF\) and HF \(MF\/HF\) are the best pair, but both hang on .*(?:BAT.*BRK|BRK.*BAT)/,
    );
    expect(result.subjects.map(({ id }) => id)).toEqual(expect.arrayContaining(['VHF', 'HF', 'BRK', 'BAT', 'F0']));
  });

  it('the shared mast is named as one thing', () => {
    const twice = boat(
      drop('EPIRB'),
      add(item('VHF2', 'vhf', 'hut'), item('A2', 'whip', 'masthead')),
      wire(run('W-2', 'VHF2.ant', 'A2.rf')),
    );
    const result = held('uk-two-alerts', twice);
    expect(result.verdict).toBe('not-met');
    expect(words(result)).toContain('Mast');
    expect(result.subjects).toContainEqual({ kind: 'structure', id: 'main' });
  });

  it('a failure of the user’s own that takes both makes them dependent', () => {
    const own = settings({
      seaArea: 'A1',
      events: [
        {
          id: 'e1',
          label: 'Locker floods',
          hits: [
            { kind: 'item', id: 'VHF' },
            { kind: 'item', id: 'EPIRB' },
          ],
          note: '',
        },
      ],
    });
    const result = held('gmdss-two-alerts', boat(own));
    expect(result.verdict).toBe('not-met');
    expect(words(result)).toContain('are both lost by: Locker floods');
  });

  it('a duplicated VHF says what both hang on', () => {
    const both = boat(area('A1'), secondVhf, power(feed('F9', 'BRK', 'VHF2')));
    const result = held('gmdss-duplicate-a1', both);
    expect(result.verdict).toBe('met');
    expect(words(result)).toMatch(/Mind: all of them hang on .*BAT/);
    expect(words(held('gmdss-duplicate-a1', boat(area('A1'), secondVhf)))).not.toContain('Mind');
  });

  it('an emergency antenna that does not fit says lead, distance and plug', () => {
    const facts = { leadLengthM: 1, leadConnector: 'BNC' };
    const far = boat(add(item('EMA', 'emergency', 'arch', { facts })));
    const result = held('osr-emergency-antenna', far);
    expect(result.verdict).toBe('not-met');
    expect(words(result)).toBe(
      'EMA cannot be joined to VHF: a lead of 1.0 m for 5.8 m and a BNC plug for a UHF socket.',
    );
  });

  it('a set without selective calling is told from one without an antenna', () => {
    expect(
      words(held('gmdss-vhf-dsc', boat(change('VHF', { overrides: { figures: {}, traits: { dsc: false } } })))),
    ).toBe('VHF: no selective calling.');
    expect(words(held('gmdss-vhf-dsc', boat(drop('SP'))))).toBe('VHF: no antenna to send into.');
  });

  it('ordinary traffic by VHF ends with A1, and another set takes it over', () => {
    expect(words(held('gmdss-general', boat()))).toBe('VHF on VHF reaches no farther than A1.');
    expect(words(held('gmdss-general', boat(hfDsc())))).toBe('By HF.');
    expect(held('gmdss-general', boat(drop('VHF', 'HH'))).verdict).toBe('not-met');
  });

  it('a second antenna is for the telephone or HF set, not for a text terminal beside it', () => {
    const spare = (...edits: readonly Edit[]) => {
      const result = held('aus-second-antenna', boat(...edits));
      return [result.verdict, words(result)];
    };
    expect(spare(hfDsc(), terminal)).toEqual(['not-met', 'One antenna only, A-HF.']);
    expect(spare(hfDsc(), messenger)).toEqual(['not-met', 'One antenna only, A-HF.']);
    expect(spare(messenger)).toEqual(['not-met', 'SATH carries text, not speech.']);
    expect(spare(telephone(), telephone('PHONE2'))).toEqual(['met', 'A-PHONE and A-PHONE2 for PHONE and PHONE2.']);
    expect(spare(telephone())).toEqual(['cannot-tell', expect.stringContaining('PHONE can be carried on deck')]);
    const switched = [
      add(item('SW', 'switch', 'hut'), item('A-HF2', 'antenna-hf-whip-7m', null)),
      (project: Project): Project => ({ ...project, runs: project.runs.filter(({ id }) => id !== 'W-HF') }),
      wire(
        run('W-S', 'HF.rf', 'SW.set', { measuredLengthM: 2 }),
        run('W-S1', 'SW.a', 'A-HF.feed', { measuredLengthM: 2 }),
        run('W-S2', 'SW.b', 'A-HF2.feed', { measuredLengthM: 2 }),
      ),
    ];
    expect(spare(hfDsc(), ...switched)).toEqual(['met', 'A-HF and A-HF2 for HF.']);
  });

  it('a weather-fax set is no NAVTEX receiver', () => {
    const fax = boat(
      add(item('FAX', 'radio-weather-fax', 'hut'), item('A-FAX', 'antenna-hf-whip-7m', null)),
      wire(run('W-FAX', 'FAX.rf', 'A-FAX.feed', { measuredLengthM: 2 })),
    );
    expect(held('gmdss-navtex', fax).verdict).toBe('not-met');
  });
});
