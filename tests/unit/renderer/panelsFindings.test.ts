import { describe, expect, it } from 'vitest';
import type { Finding, Severity } from '../../../core/audit/types.ts';
import { emptyWords, isAbout, shownFindings, standingCount } from '../../../renderer/panels/findings/shown.ts';

const finding = (mark: string, severity: Severity, itemId: string, isOverruled = false): Finding => ({
  key: mark,
  ruleId: 'test',
  severity,
  mark,
  title: mark,
  subjects: [{ kind: 'item', id: itemId }],
  measured: [],
  limit: [],
  authority: { name: 'test', strength: 'practice' },
  action: [],
  overruled: isOverruled ? { reason: 'seen', by: '' } : null,
});
const FINDINGS = [finding('A1', 'A', 'vhf'), finding('A2', 'A', 'whip'), finding('B1', 'B', 'vhf', true)];
const marks = (list: readonly Finding[]): string[] => list.map(({ mark }) => mark);

describe('which remarks are listed', () => {
  it('lists an overruled one with the others but counts it no more', () => {
    expect(marks(shownFindings(FINDINGS, 'B', null))).toEqual(['B1']);
    expect(standingCount(FINDINGS, 'A')).toBe(2);
    expect(standingCount(FINDINGS, 'B')).toBe(0);
  });

  it('keeps to what is selected where that is wanted; a run of the same id is another thing', () => {
    expect(marks(shownFindings(FINDINGS, 'A', [{ kind: 'item', id: 'whip' }]))).toEqual(['A2']);
    expect(marks(shownFindings(FINDINGS, 'A', []))).toEqual([]);
    expect(isAbout(finding('A1', 'A', 'w'), [{ kind: 'run', id: 'w' }])).toBe(false);
  });

  it('says why nothing is listed', () => {
    expect(emptyWords(FINDINGS, 'C')).toBe('None.');
    expect(emptyWords(FINDINGS, 'A')).toBe('None about what is selected.');
  });
});
