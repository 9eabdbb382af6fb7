import { describe, expect, it } from 'vitest';
import { VERDICTS } from '../../../core/rulePacks/types.ts';
import { held, RULES, words } from './boats.ts';
import { CASES } from './cases.ts';

// Expected verdicts are read off the boats by hand; the boats are invented. Requirements and sources: docs/rule-packs.md.

describe('every rule on boats that meet it, miss it and leave it open', () => {
  const rows = Object.entries(CASES).flatMap(([id, cases]) =>
    VERDICTS.flatMap((verdict) => {
      const project = cases[verdict];
      return project ? [{ id, verdict, project }] : [];
    }),
  );

  it.each(rows)('$id: $verdict', ({ id, verdict, project }) => {
    const result = held(id, project);
    expect(result.verdict, words(result)).toBe(verdict);
    expect(words(result)).toMatch(/^[A-Z0-9].*\.$/);
  });

  it('leaves no rule out', () => {
    expect(Object.keys(CASES).sort()).toEqual(RULES.map(({ id }) => id).sort());
  });

  it('has for each rule a boat that meets it and one that misses it, but for what no drawing can settle', () => {
    const unsettled = RULES.filter(({ id }) => !CASES[id]?.met || !CASES[id]?.['not-met']).map(({ id }) => id);
    expect(unsettled).toEqual([
      'gmdss-channel-70-watch',
      'gmdss-satellite-broadcasts',
      'gmdss-a2-mf-watch',
      'gmdss-availability-near',
      'gmdss-availability-far',
      'gmdss-capacity-check',
      'uk-charging',
      'uk-beacon-test',
      'uk-beacon-service',
      'osr-channel-72',
      'aus-inspection',
    ]);
  });
});
