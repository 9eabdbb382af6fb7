import { describe, expect, it } from 'vitest';
import { columnShares, leastWidthRem } from '../../../renderer/panels/sheet/tableWidths.ts';

const columns = (...weights: number[]) => weights.map((weight, i) => ({ header: `c${i}`, weight }));

describe('widths of the sheet’s tables on the screen', () => {
  it('share the width as on paper', () => {
    expect(columnShares(columns(30, 10, 10)).map(({ percent }) => percent)).toEqual([60, 20, 20]);
  });

  it('lets a narrow table be as narrow as it likes, and keeps a wide one readable', () => {
    expect(leastWidthRem(columns(30, 36, 10, 10, 10))).toBe(0);
    const schedule = leastWidthRem(columns(4, 9, 30, 16, 6, 6, 6, 26, 9, 24));
    // The panel is about 27 rem wide: a schedule must be wider, yet fit the large view of 64 rem.
    expect(schedule).toBeGreaterThan(27);
    expect(schedule).toBeLessThan(64);
    expect(leastWidthRem(columns(4, 9, 30, 16, 6, 6, 6, 26, 9, 24, 20))).toBeGreaterThan(schedule);
  });
});
