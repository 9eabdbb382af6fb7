import { newProject } from '../../core/model/defaults.ts';
import { type Item, itemSchema, type Project, runSchema } from '../../core/model/project.ts';

/**
 * A made-up vessel of about `itemCount` items for benchmarks and property tests: clusters of a fixed VHF, an AIS set and
 * a handheld behind a splitter, each cluster on its own mast or rail, with a breaker of its own on a bank shared by ten. Deterministic.
 */
export function generatedVessel(itemCount: number): Project {
  const base = newProject({
    name: 'Generated',
    kind: 'motor-yacht',
    loaM: 60,
    beamM: 11,
    draughtM: 3,
    airDraughtM: 22,
    freeboardM: 4,
  });
  const clusters = Math.max(1, Math.floor(itemCount / CLUSTER.length));
  const made = Array.from({ length: clusters }, (_, index) => cluster(index));
  return {
    ...base,
    title: `Generated vessel, ${clusters * CLUSTER.length} items`,
    items: made.flatMap(({ items }) => items),
    runs: made.flatMap(({ runs }) => runs),
    feeds: made.flatMap(({ feeds }) => feeds),
    dataLinks: made.flatMap(({ dataLinks }) => dataLinks),
  };
}

const CLUSTER = [
  ['a', 'antenna-vhf-whip-3db'],
  ['j', 'joint-uhf-pair'],
  ['sp', 'splitter-active-vhf-ais'],
  ['vhf', 'radio-vhf-fixed-25w-dsc'],
  ['ais', 'radio-ais-b-so'],
  ['gnss', 'antenna-gnss-active'],
  ['plotter', 'plotter-own-gnss'],
  ['breaker', 'breaker-10a'],
  ['bank', 'bank-lead-acid-220ah'],
  ['handheld', 'handheld-vhf-5w'],
] as const;

function cluster(n: number): Pick<Project, 'items' | 'runs' | 'feeds' | 'dataLinks'> {
  const id = (name: string): string => `${name}-${n}`;
  const xM = 2 + ((n * 7) % 56);
  const yM = ((n * 3) % 9) - 4;
  const items: Item[] = CLUSTER.map(([name, partId], k) =>
    itemSchema.parse({
      id: id(name),
      tag: id(name).toUpperCase(),
      partId,
      position: { xM: xM + (k % 3) * 0.4, yM, zM: name === 'a' ? 6 + (n % 14) : 1 + k * 0.3 },
    }),
  );
  const run = (number: string, cableId: string, from: [string, string], to: [string, string]) =>
    runSchema.parse({
      id: id(number),
      number: id(number).toUpperCase(),
      cableId,
      from: { itemId: id(from[0]), portId: from[1] },
      to: { itemId: id(to[0]), portId: to[1] },
    });
  const feed = (number: string, from: string, to: string) => ({
    id: id(number),
    number: id(number).toUpperCase(),
    from: { itemId: id(from), portId: 'out' },
    to: { itemId: id(to), portId: to === 'breaker' ? 'in' : 'dc' },
    conductorId: 'conductor-2-5mm2',
    lengthM: 3,
    fuse: null,
    status: 'keep' as const,
    notes: '',
  });
  return {
    items,
    runs: [
      run('w1', 'coax-400-class', ['a', 'feed'], ['j', 'a']),
      run('w2', 'coax-rg-8x', ['j', 'b'], ['sp', 'antenna']),
      run('w3', 'coax-rg-58c-u', ['sp', 'vhf'], ['vhf', 'rf']),
      run('w4', 'coax-rg-58c-u', ['sp', 'ais'], ['ais', 'rf']),
      run('w5', 'coax-rg-58c-u', ['gnss', 'feed'], ['ais', 'gnss']),
    ],
    feeds: [
      { ...feed('f1', 'bank', 'breaker'), from: { itemId: `bank-${Math.floor(n / 10) * 10}`, portId: 'out' } },
      feed('f2', 'breaker', 'vhf'),
      feed('f3', 'breaker', 'ais'),
      feed('f4', 'breaker', 'sp'),
      feed('f5', 'breaker', 'plotter'),
    ],
    dataLinks: [
      {
        id: id('d1'),
        number: id('d1').toUpperCase(),
        from: { itemId: id('plotter'), portId: 'data' },
        to: { itemId: id('vhf'), portId: 'data' },
        carries: ['position'],
        standard: 'nmea-0183',
        status: 'keep',
        notes: '',
      },
    ],
  };
}
