import { expect, it } from 'vitest';
import { listed, triedWords } from '../../../renderer/panels/redundancy/advice/words.ts';

it('one change is not several', () => {
  expect([0, 1, 2].map(triedWords)).toEqual(['0 changes tried', '1 change tried', '2 changes tried']);
});

it('names what fits and counts the rest', () => {
  expect(listed(['B7', 'F1', 'F2'], 3)).toBe('B7, F1, F2');
  expect(listed(['B7', 'F1', 'F2'], 1)).toBe('B7 and 2 more');
});
