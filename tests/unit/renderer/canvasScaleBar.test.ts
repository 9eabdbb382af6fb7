import { expect, it } from 'vitest';
import { scaleBarLength } from '../../../renderer/canvas/ScaleBar.tsx';

it('takes the longest round length that fits', () => {
  expect(scaleBarLength(40, 110)).toBe(2);
  expect(scaleBarLength(20, 110)).toBe(5);
  expect(scaleBarLength(110, 110)).toBe(1);
  expect(scaleBarLength(111, 110)).toBeCloseTo(0.5, 12);
  expect(scaleBarLength(4, 110)).toBe(20);
});
