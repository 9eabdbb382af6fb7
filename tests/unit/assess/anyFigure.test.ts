import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import { parseProject } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import { figure } from '../../../core/model/figure.ts';
import { itemSchema, type Project, runSchema } from '../../../core/model/project.ts';
import { figureRange } from '../../../core/model/ranges.ts';
import { explainRange } from '../../../core/reach/explain.ts';
import { hfDay } from '../../../core/reach/hfDay.ts';
import { levelCurve } from '../../../core/reach/levelCurve.ts';
import { AT_REST } from '../../../core/reach/types.ts';
import { skyView } from '../../../core/siting/skyView.ts';

// Any figure of any part may be typed anywhere inside the span the document takes. Whatever comes of it must be a number.

function demo(name: string): Project {
  const loaded = parseProject(readFileSync(new URL(`../../../assets/demo/${name}.backstay`, import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load.`);
  return loaded.project;
}

/** One of everything that is placed, each set on an antenna of its band, so that every kind of radio is reckoned. */
function fullBoat(): Project {
  const base = demo('vessarine');
  const pairs = [
    ['radio-mf-hf-150w', 'rf', 'antenna-hf-whip-7m'],
    ['radio-navtex', 'rf', 'antenna-navtex-active'],
    ['radio-weather-fax', 'rf', 'antenna-hf-whip-7m'],
    ['radio-hf-vhf-25w', 'vhf', 'antenna-vhf-collinear-9db'],
    ['radio-l-band-messenger', 'rf', 'antenna-l-band-passive'],
    ['radio-l-band-fixed', 'rf', 'antenna-satellite-dome'],
    ['radio-gnss-receiver', 'gnss', 'antenna-gnss-active'],
    ['radio-cellular-router', 'rf', 'antenna-cellular-omni'],
    ['radio-wifi-bridge', 'rf', 'antenna-wifi-omni'],
  ] as const;
  const items = pairs.flatMap(([setId, , antennaId], i) => [
    itemSchema.parse({ id: `set${i}`, tag: `SET${i}`, partId: setId, position: { xM: 6, yM: 0, zM: 1 } }),
    itemSchema.parse({ id: `ant${i}`, tag: `ANT${i}`, partId: antennaId, position: { xM: 5.8 + i / 2, yM: 1, zM: 4 } }),
  ]);
  const runs = pairs.map(([, port], i) =>
    runSchema.parse({
      id: `x${i}`,
      number: `X${i}`,
      cableId: 'coax-rg-213-u',
      from: { itemId: `set${i}`, portId: port },
      to: { itemId: `ant${i}`, portId: 'feed' },
      measuredLengthM: 8,
    }),
  );
  const others = ['beacon-406-manual', 'mob-ais', 'sart-ais', 'handheld-vhf-5w', 'handheld-satellite'].map(
    (partId, i) => itemSchema.parse({ id: `own${i}`, tag: `OWN${i}`, partId, position: { xM: 8, yM: 0, zM: 1.5 } }),
  );
  return { ...base, items: [...base.items, ...items, ...others], runs: [...base.runs, ...runs] };
}

const BOATS = [
  ['brannoch-tern', demo('brannoch-tern')],
  ['pelluna', demo('pelluna')],
  ['every radio', fullBoat()],
] as const;

/** Places in a result that hold no number. */
function notNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isNaN(value) ? [path] : [];
  if (value instanceof Map || value instanceof Set) return notNumbers([...value], path);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, entry]) => notNumbers(entry, `${path}.${key}`));
}

function everything(project: Project): unknown {
  const result = assess(project);
  const { ranges, paths, hf, satellites } = result;
  const state = { ...AT_REST, heelDeg: 20, rollDeg: 10, power: 'low', timePercent: 90 } as const;
  return {
    ...result,
    explained: ranges.slice(0, 40).map((range) => explainRange(project, paths, range, state)),
    curves: ranges.slice(0, 4).map((range) => levelCurve(project, paths, range, { state, points: 20 })),
    days: hf.map((each) => hfDay(project, each, 1000)),
    skies: satellites.map(({ antennaId }) => skyView(project, antennaId)),
  };
}

describe.each(BOATS)('%s', (_, project) => {
  const { effective } = indexProject(project);
  const spots = project.items.flatMap((item) => {
    const part = effective.get(item.id);
    return part && 'figures' in part ? Object.keys(part.figures).map((key) => ({ itemId: item.id, key })) : [];
  });

  it('is a document the program takes', () => {
    expect(parseProject(serialiseProject(project)).ok).toBe(true);
  });

  it('gives numbers for a device that loses all there is, though a VSWR was read through it', () => {
    const inline = project.items.filter(({ id }) => effective.get(id)?.kind === 'inline');
    for (const { id } of inline) {
      const items = project.items.map((item) =>
        item.id === id
          ? { ...item, overrides: { ...item.overrides, figures: { lossDb: figure(200, 0, 'assumed', 'test') } } }
          : item,
      );
      expect(notNumbers(everything({ ...project, items }))).toEqual([]);
    }
  });

  it('gives numbers for any figure inside its span', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...spots), fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean()), {
          minLength: 1,
          maxLength: 3,
        }),
        (changes) => {
          let changed = project;
          for (const [{ itemId, key }, share, isWide] of changes) {
            const { min, max } = figureRange(key);
            const value = min + share * (max - min);
            const typed = figure(value, isWide ? Math.abs(value) : 0, 'assumed', 'test');
            changed = {
              ...changed,
              items: changed.items.map((item) =>
                item.id === itemId
                  ? { ...item, overrides: { ...item.overrides, figures: { ...item.overrides.figures, [key]: typed } } }
                  : item,
              ),
            };
          }
          expect(notNumbers(everything(changed))).toEqual([]);
        },
      ),
      { seed: 77, numRuns: 150 },
    );
  });
});
