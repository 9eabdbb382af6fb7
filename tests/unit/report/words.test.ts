import { describe, expect, it } from 'vitest';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import { STANDALONE_WORDS } from '../../../core/report/words.ts';
import { boat } from '../rulePacks/boats.ts';

describe('words for sets that are carried', () => {
  it('calls a satellite set a messenger, as the catalogue does, not a telephone that could speak', () => {
    const part = indexProject(boat()).parts.get('handheld-satellite');
    expect(part?.name).toBe('Satellite messenger, handheld');
    expect(STANDALONE_WORDS['handheld-satellite']).toBe('handheld satellite messenger');
  });
});
