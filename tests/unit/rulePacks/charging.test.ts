import { describe, expect, it } from 'vitest';
import { feed, item } from '../redundancy/smallBoat.ts';
import { add, boat, drop, figures, held, power, secondBank, words } from './boats.ts';

const charger = (id = 'CH', battery = 'BAT') => [
  add(item(id, 'charger-mains', null)),
  power(feed(`F-${id}`, id, battery)),
];
const full = figures('BAT', { capacityAh: 220 });

describe('recharge', () => {
  const at = (ratingA: number, capacityAh = 220) =>
    held('gmdss-recharge', boat(figures('BAT', { capacityAh }), ...charger(), figures('CH', { ratingA })));

  it('turns at the least capacity where all of the bank takes longer: 6 h of 3.75 A are 22.5 Ah, 10 h of 2.25 A', () => {
    expect([at(2.25).verdict, at(2.24).verdict]).toEqual(['met', 'not-met']);
    expect(words(at(10))).toBe(
      'CH at 10 A fills BAT, 220 Ah, in 22.0 h at the least; asked for: 10 h. The least capacity, the load for 6 h, is 22.5 Ah: 2.3 h. That it works by itself is for the eye.',
    );
  });

  it('asks no load where all of it is filled in time: 20 Ah at 2 A', () => {
    expect(at(2, 20).verdict).toBe('met');
    expect(words(at(2, 20))).not.toContain('least capacity');
  });

  it('leaves it open where no load can be reckoned', () => {
    const noCurrent = figures('VHF', { txCurrentA: 0, rxCurrentA: 0 });
    const others = drop('AIS', 'GPS', 'BUS', 'SP');
    const result = held('gmdss-recharge', boat(full, others, noCurrent, ...charger(), figures('CH', { ratingA: 2 })));
    expect([result.verdict, words(result)]).toEqual(['cannot-tell', expect.stringContaining('no load is reckoned')]);
  });
});

describe('what charges what', () => {
  it('names each charger once, and only batteries that have one', () => {
    const both = held('uk-charging', boat(secondBank, ...charger('CH'), power(feed('F-2', 'CH', 'EM'))));
    expect(words(both)).toBe('CH charges BAT and EM.');
    expect(words(held('uk-charging', boat(secondBank, ...charger('CH', 'EM'))))).toBe('CH charges EM.');
    const two = held('uk-charging', boat(...charger('CH'), ...charger('CH2')));
    expect(words(two)).toBe('CH and CH2 charge BAT.');
  });
});
