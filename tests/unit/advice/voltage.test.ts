import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../../core/advice/candidates.ts';
import { surveyOf } from '../../../core/advice/survey.ts';
import { supplyVoltageV } from '../../../core/advice/wires.ts';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { Item, Project } from '../../../core/model/project.ts';
import { feed, item, smallBoat } from '../redundancy/smallBoat.ts';
import { oneSet, plain } from './boats.ts';

// Parts of the list are for 12 V: what is fed from 24 V gets none of them that takes current.

const overrides = (key: string, valueV: number): Item['overrides'] => ({
  figures: { [key]: { value: valueV, tolerance: 0, basis: 'assumed', source: 'test' } },
  traits: {},
});

/** A boat on a bank of this voltage, its voice set made for it; breaker and all else as they were. */
function on(supplyV: number, boat: Project): Project {
  return smallBoat({
    ...boat,
    items: boat.items.map((each) => {
      if (each.id === 'BAT') return { ...each, overrides: overrides('voltageV', supplyV) };
      return each.id === 'VHF' ? { ...each, overrides: overrides('supplyVoltageV', supplyV) } : each;
    }),
  });
}

const tried = (project: Project): readonly string[] => candidatesOf(surveyOf(project)).map(({ id }) => id);
const lost = smallBoat({ ...oneSet, items: oneSet.items.filter(({ id }) => id !== 'GPS'), dataLinks: [] });

describe('a boat on 24 V', () => {
  it('gets no receiver that is made for 12 V, nor a battery of 12 V', () => {
    expect(tried(on(12, lost))).toEqual(expect.arrayContaining(['receiver:VHF', 'high-battery:VHF']));
    const ids = tried(on(24, lost));
    expect(ids).not.toContain('receiver:VHF');
    expect(ids.filter((id) => /battery:VHF$/.test(id))).toEqual([]);
  });

  it('gets no other splitter, for those listed state no voltage', () => {
    expect(tried(on(12, plain))).toContain('splitter-kind:SP');
    expect(tried(on(24, plain))).not.toContain('splitter-kind:SP');
  });

  it('gets no part at all whose feed carries another voltage than it is made for', () => {
    for (const boat of [lost, plain]) {
      const project = on(24, boat);
      for (const candidate of candidatesOf(surveyOf(project))) {
        const after = candidate.apply(project);
        const { effective } = indexProject(after);
        const known = new Set(project.feeds.map(({ id }) => id));
        for (const each of after.feeds.filter(({ id }) => !known.has(id))) {
          const part = effective.get(each.to.itemId);
          if (part?.kind !== 'radio' && part?.kind !== 'position-source') continue;
          const share = (supplyVoltageV(after, each) ?? 0) / part.figures.supplyVoltageV.value;
          // A 12 V system is one of 12 to 14 V; twice that is another.
          expect(share, candidate.id).toBeGreaterThan(0.75);
          expect(share, candidate.id).toBeLessThan(1.25);
        }
      }
    }
  });
});

describe('the voltage of a feed', () => {
  it('is that of the battery or converter in front of breakers, not what a breaker is made for', () => {
    const project = on(24, oneSet);
    const [first, second] = project.feeds;
    expect([first, second].map((each) => each && supplyVoltageV(project, each))).toEqual([24, 24]);
    const converted = smallBoat({
      ...project,
      items: [...project.items, item('CONV', 'converter-dc-dc', 'hut')],
      feeds: [
        feed('F0', 'BAT', 'CONV', { to: { itemId: 'CONV', portId: 'in' } }),
        feed('F1', 'CONV', 'BRK', { from: { itemId: 'CONV', portId: 'out' } }),
        feed('F2', 'BRK', 'VHF'),
      ],
    });
    expect(converted.feeds.map((each) => supplyVoltageV(converted, each))).toEqual([24, 12.6, 12.6]);
  });

  it('is not known where no battery is drawn', () => {
    const project = smallBoat({ ...oneSet, feeds: [feed('F1', 'BRK', 'VHF')] });
    expect(project.feeds.map((each) => supplyVoltageV(project, each))).toEqual([null]);
  });
});
