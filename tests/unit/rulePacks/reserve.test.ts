import { describe, expect, it } from 'vitest';
import type { Project } from '../../../core/model/project.ts';
import type { Verdict } from '../../../core/rulePacks/types.ts';
import { feed, item } from '../redundancy/smallBoat.ts';
import { add, boat, change, drop, figures, height, held, hfDsc, power, words } from './boats.ts';
import { apart, lengthM } from './cases.ts';

/**
 * Boats with a house bank BAT of 220 Ah and another bank EM. By hand: the VHF set takes half of 5.5 A + 0.5 A = 3.25 A as SOLAS
 * reckons and a fifth of 5.5 A + 0.5 A = 1.6 A as the fishing rule does.
 */
type Row = readonly [what: string, rule: string, project: Project, verdict: Verdict, said: string];

const full = figures('BAT', { capacityAh: 220 });
const lamps = [add(item('LAMP', 'lamp', null)), power(feed('FL', 'BAT', 'LAMP'))];
const lampOnEm = [add(item('LAMP2', 'lamp', null)), power(feed('FL2', 'EM', 'LAMP2'))];
/** Both banks on the one breaker of the set. */
const parallel = [add(item('EM', 'bank', 'locker')), full, power(feed('F-EM', 'EM', 'BRK')), ...lamps];
/** An MF/HF set on the house bank only. */
const hfOnHouse = [hfDsc(), power(feed('FH', 'BRK', 'HF', { to: { itemId: 'HF', portId: 'dc' } }))];

function check(rows: readonly Row[]): void {
  it.each(rows)('%s: %s', (_, rule, project, verdict, said) => {
    const result = held(rule, project);
    expect(result.verdict, words(result)).toBe(verdict);
    expect(words(result)).toContain(said);
  });
}

describe('hours are those of the bank that is apart', () => {
  check([
    ['2 Ah ÷ 1.6 A', 'uk-fishing-reserve', apart(2), 'not-met', 'EM, full and as marked, 2 Ah'],
    ['2 Ah ÷ 1.6 A', 'uk-fishing-reserve', apart(2), 'not-met', '= 1.3 h'],
    ['20 Ah ÷ 1.6 A', 'uk-fishing-reserve', apart(20), 'met', '= 12.5 h'],
    ['2 Ah ÷ 3.25 A', 'us-fishing-power', apart(2, lengthM(10.9)), 'not-met', '= 0.6 h'],
    ['20 Ah ÷ 3.25 A', 'us-fishing-power', apart(20, lengthM(10.9)), 'met', 'EM: locker, '],
    [
      'MF/HF set not on the reserve',
      'uk-fishing-reserve',
      apart(20, ...hfOnHouse),
      'not-met',
      'HF does not hang on EM, the reserve that is apart.',
    ],
  ]);

  it('looks for the machinery space where that bank stands, not the house bank', () => {
    const engineRoom = (id: string) => [
      (project: Project): Project => ({
        ...project,
        places: project.places.map((each) => (each.id === 'bilge' ? { ...each, name: 'engine space' } : each)),
      }),
      change(id, { placeId: 'bilge' }),
    ];
    const short = lengthM(10.9);
    expect(held('us-fishing-power', apart(20, short, change('BAT', { placeId: 'hut' }))).verdict).toBe('met');
    expect(held('us-fishing-power', apart(20, short, ...engineRoom('BAT'))).verdict).toBe('met');
    const inside = held('us-fishing-power', apart(20, short, ...engineRoom('EM')));
    expect([inside.verdict, words(inside)]).toEqual([
      'not-met',
      expect.stringContaining('EM stands in the engine space'),
    ]);
  });

  it('leaves a bank for radio only open from 11 m, where all loads count', () => {
    expect(held('us-fishing-power', apart(20, lengthM(10.99))).verdict).toBe('met');
    const long = held('us-fishing-power', apart(20, lengthM(11)));
    expect([long.verdict, words(long)]).toEqual(['cannot-tell', expect.stringContaining('EM feeds radio only')]);
    const carriesLamp = apart(220, lengthM(11), ...lampOnEm, drop('LAMP'), ...lamps);
    expect(held('us-fishing-power', carriesLamp).verdict).toBe('met');
  });
});

describe('two banks', () => {
  const said =
    'BAT and EM, but all by one way; what else hangs on both, and whether they can be parted, is for the eye';
  const both = boat(...parallel, ...lampOnEm, figures('EM', { capacityAh: 220 }));
  check([
    ['on one breaker', 'gmdss-reserve-apart', both, 'cannot-tell', said],
    ['on one breaker', 'uk-fishing-reserve', both, 'cannot-tell', said],
    ['on one breaker', 'us-fishing-power', both, 'cannot-tell', said],
    [
      'on one breaker, EM for radio only',
      'gmdss-reserve-apart',
      boat(...parallel),
      'met',
      'EM, which feeds radio only',
    ],
    [
      'EM by a way of its own',
      'gmdss-reserve-apart',
      boat(add(item('EM', 'bank', 'locker')), power(feed('F-EM', 'EM', 'VHF')), ...lamps, ...lampOnEm),
      'met',
      'BAT and EM, each without the other',
    ],
  ]);
});

describe('the reserve of the Great Lakes is long, apart and high', () => {
  const high = height('EM', 1.5);
  check([
    ['all three', 'us-lakes-reserve', apart(20, high), 'met', '= 6.2 h'],
    ['all three', 'us-lakes-reserve', apart(20, high), 'met', 'EM, which feeds radio only. EM stands at 1.50 m'],
    ['2 Ah ÷ 3.25 A', 'us-lakes-reserve', apart(2, high), 'not-met', '= 0.6 h. Asked for: 2 h.'],
    [
      'one bank',
      'us-lakes-reserve',
      boat(full, height('BAT', 1.5), ...lamps),
      'not-met',
      'hangs on BAT alone, with LAMP',
    ],
    ['the only bank', 'us-lakes-reserve', boat(full, height('BAT', 1.5)), 'cannot-tell', 'the only house battery'],
    [
      'under water',
      'us-lakes-reserve',
      apart(20, height('EM', -0.1), height('BAT', 2)),
      'not-met',
      'EM stands at −0.10 m',
    ],
    ['low', 'us-lakes-reserve', apart(20, height('EM', 0.6), height('BAT', 2)), 'cannot-tell', 'EM stands at 0.60 m'],
  ]);
});
