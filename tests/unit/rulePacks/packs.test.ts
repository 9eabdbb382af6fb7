import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { setRedundancy } from '../../../core/edit/redundancy.ts';
import type { Project } from '../../../core/model/project.ts';
import { rulePacksSection } from '../../../core/report/sectionRulePacks.ts';
import { holdAgainst } from '../../../core/rulePacks/holdAgainst.ts';
import { PACKS, STANDING } from '../../../core/rulePacks/packs.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { boat, held, RULES, settings, words } from './boats.ts';
import { CASES } from './cases.ts';

const ALL_ON = settings({ rulePacks: PACKS.map(({ id }) => id) });
const results = (project: Project) => holdAgainst(project, assess(project));

/** Nothing here may sound like a verdict on the boat. */
const CLAIMS = /complian|complies|comply|\blegal|\bapprov|seaworth|certified|\bpass(es|ed)? the\b|\bfails? the\b/i;

describe('rule packs', () => {
  it('dates and cites every rule, and says whom it names and what no drawing shows', () => {
    for (const rule of RULES) {
      for (const key of ['title', 'clause', 'edition', 'source', 'appliesTo', 'unseen', 'theme'] as const) {
        expect(rule[key].trim(), `${rule.id}: ${key}`).not.toBe('');
      }
      expect(['law', 'guide', 'race']).toContain(rule.strength);
    }
    for (const { edition, source, binds, rules } of PACKS) {
      expect([edition, source, binds].every((text) => text.length > 10)).toBe(true);
      expect(rules.length).toBeGreaterThan(2);
    }
  });

  it('says of each pack that it binds no private pleasure boat, or only those who enter', () => {
    for (const { binds } of PACKS) expect(binds).toMatch(/no private pleasure boat|and no one else/);
  });

  it('names each rule and pack once', () => {
    expect(new Set(RULES.map(({ id }) => id)).size).toBe(RULES.length);
    expect(new Set(PACKS.map(({ id }) => id)).size).toBe(PACKS.length);
  });

  it('says from memory what is from memory', () => {
    const remembered = RULES.filter(({ basis }) => basis === 'memory');
    expect(remembered.map(({ id }) => id)).toEqual(['gmdss-a3-hf', 'osr-later-beacon']);
    for (const { source } of remembered) expect(source).toMatch(/from memory/);
  });

  it('claims nothing of the boat, in no text of its own and in no answer', () => {
    const own = [
      ...PACKS.flatMap(({ name, edition, binds, source }) => [name, edition, binds, source]),
      ...RULES.flatMap(({ title, clause, edition, source, appliesTo, unseen, theme }) => [
        title,
        clause,
        edition,
        source,
        appliesTo,
        unseen,
        theme,
      ]),
    ];
    const said = Object.entries(CASES).flatMap(([id, cases]) =>
      Object.values(cases).map((project) => words(held(id, project as Project))),
    );
    expect(said.length).toBeGreaterThan(180);
    expect([STANDING, ...own, ...said].filter((text) => CLAIMS.test(text))).toEqual([]);
  });

  it('points only at what is on the drawing', () => {
    for (const [id, cases] of Object.entries(CASES)) {
      for (const project of Object.values(cases) as Project[]) {
        const known = new Set([...project.items, ...project.runs, ...project.feeds].map((each) => each.id));
        expect(
          held(id, project).subjects.filter((subject) => subject.kind !== 'structure' && !known.has(subject.id)),
          id,
        ).toEqual([]);
      }
    }
  });

  it('looks at nothing until a pack is on, and at each that is on, in its own order', () => {
    expect(results(boat())).toEqual([]);
    const two = boat(settings({ rulePacks: ['osr-later', 'unknown-pack', 'gmdss'] }));
    expect(results(two).map(({ pack }) => pack.id)).toEqual(['gmdss', 'osr-later']);
  });

  it('counts what it lists', () => {
    for (const { counts, results: rows, pack } of results(boat(ALL_ON))) {
      expect(rows.map(({ rule }) => rule.id)).toEqual(pack.rules.map(({ id }) => id));
      expect(Object.values(counts).reduce((sum, each) => sum + each, 0)).toBe(rows.length);
    }
  });

  it('gives the same list for the same boat, and another after an edit', () => {
    const project = boat(ALL_ON);
    const first = results(project);
    expect(results(project)).toBe(first);
    expect(results(setRedundancy(project, { seaArea: 'A4' }))).not.toEqual(first);
  });

  it('answers for a boat with nothing on it', () => {
    const empty: Project = { ...boat(ALL_ON), items: [], runs: [], feeds: [], dataLinks: [] };
    const all = results(empty).flatMap(({ results: rows }) => rows);
    expect(all).toHaveLength(RULES.length);
    expect(all.filter(({ verdict }) => verdict === 'met')).toEqual([]);
  });

  it('does not count what is marked for removal', () => {
    const gone = boat(
      (project) => ({ ...project, items: project.items.map((each) => ({ ...each, status: 'remove' as const })) }),
      ALL_ON,
    );
    expect(
      results(gone)
        .flatMap(({ results: rows }) => rows)
        .filter(({ verdict }) => verdict === 'met'),
    ).toEqual([]);
  });
});

describe('the section of the sheet', () => {
  const section = (project: Project) =>
    rulePacksSection({
      project,
      assessment: assess(project),
      preferences: METRIC_PREFERENCES,
      paper: 'A4',
      date: '2026-01-01',
    });

  it('is left out while no pack is on', () => {
    expect(section(boat()).blocks).toEqual([]);
  });

  it('prints each rule with clause, basis, verdict and why, under the standing words', () => {
    const project = boat(settings({ rulePacks: ['osr-2012-category-2'] }));
    const made = section(project);
    expect(made.blocks[0]).toEqual({ kind: 'paragraph', text: STANDING, tone: 'strong' });
    const table = made.blocks.find((block) => block.kind === 'table');
    expect(table?.rows).toHaveLength(11);
    expect(table?.rows[2]).toEqual([
      'VHF rated at 25 W',
      '3.29.1(b)(i); read in the text',
      'met',
      'VHF is rated 25 W.',
    ]);
    const count = (verdict: string) => table?.rows.filter((row) => row[2] === verdict).length;
    const counted = `${count('met')} met, ${count('not met')} not met, ${count('cannot tell')} cannot tell, 1 does not apply`;
    expect(table?.caption).toBe(counted);
    expect(count('does not apply')).toBe(1);
  });

  it('prints the edition of a rule that is of another than its pack', () => {
    const made = section(boat(settings({ rulePacks: ['osr-later'] })));
    const table = made.blocks.find((block) => block.kind === 'table');
    expect(table?.rows.map((row) => row[1])).toEqual([
      '3.29. Offshore Special Regulations, about 2017; read second-hand',
      '3.29.6(b). Offshore Special Regulations, about 2022; read second-hand',
      '4.19. Offshore Special Regulations, edition not known; from memory, not seen',
    ]);
  });

  it('names the sea area where a pack turns on it', () => {
    const made = section(boat(settings({ rulePacks: ['gmdss'], seaArea: 'A3' })));
    expect(made.blocks[0]).toMatchObject({ text: expect.stringContaining('Sea area: A3.') });
  });
});

describe('docs/rule-packs.md', () => {
  const text = readFileSync(new URL('../../../docs/rule-packs.md', import.meta.url), 'utf8');

  it('has a row for each rule, with its clause and how it is known, and none for a rule that is not there', () => {
    const rows = [...text.matchAll(/^\| `([a-z0-9-]+)` \| ([^|]+) \| ([^|]+) \| ([^|]+) \|/gm)];
    expect(rows.map(([, id]) => id)).toEqual(RULES.map(({ id }) => id));
    for (const [, id, clause, , basis] of rows) {
      const rule = RULES.find((each) => each.id === id);
      expect([clause, basis]).toEqual([rule?.clause, rule?.basis.replace('-', ' ')]);
    }
  });

  it('claims nothing of the boat either', () => {
    expect(text.replace(/“[^”]*”/g, '').match(CLAIMS)).toBeNull();
  });
});
