import type { Random } from './random.ts';

// Ways a document goes bad: bytes lost, turned or doubled on the way; numbers and texts mistyped; entries edited by hand.

/** A change to the bytes of a document, as disks, cables and half-done copies make them. */
type ByteMutation = (bytes: Buffer, random: Random, other: Buffer) => Buffer;

/** A span of up to `longest` bytes somewhere in the document. */
function span(bytes: Buffer, random: Random, longest: number): [number, number] {
  const start = random.below(bytes.length + 1);
  return [start, Math.min(bytes.length, start + random.below(longest))];
}

const noise = (length: number, random: Random): Buffer => Buffer.from(Array.from({ length }, () => random.below(256)));
const SECTOR = 512;

const BYTE_MUTATIONS: Readonly<Record<string, ByteMutation>> = {
  'cut short': (bytes, random) => bytes.subarray(0, random.below(bytes.length)),
  'beginning lost': (bytes, random) => bytes.subarray(random.below(bytes.length)),
  'bits turned': (bytes, random) => {
    const copy = Buffer.from(bytes);
    for (let hits = 1 + random.below(6); hits > 0; hits -= 1) {
      const at = random.below(copy.length);
      copy[at] = (copy[at] ?? 0) ^ (1 << random.below(8));
    }
    return copy;
  },
  'bytes put in': (bytes, random) => {
    const at = random.below(bytes.length);
    return Buffer.concat([bytes.subarray(0, at), noise(1 + random.below(40), random), bytes.subarray(at)]);
  },
  'piece lost': (bytes, random) => {
    const [start, end] = span(bytes, random, 2000);
    return Buffer.concat([bytes.subarray(0, start), bytes.subarray(end)]);
  },
  'piece doubled': (bytes, random) => {
    const [start, end] = span(bytes, random, 2000);
    return Buffer.concat([bytes.subarray(0, end), bytes.subarray(start)]);
  },
  'sectors of zeros': (bytes, random) => {
    const start = random.below(Math.ceil(bytes.length / SECTOR)) * SECTOR;
    return Buffer.from(bytes).fill(0, start, Math.min(bytes.length, start + SECTOR * (1 + random.below(8))));
  },
  'brackets without end': (bytes, random) => {
    const depth = random.pick([100, 5000, 200_000]);
    const colon = bytes.indexOf(': ', random.below(bytes.length));
    const end = bytes.indexOf('\n', colon);
    if (colon < 0 || end < 0) return bytes;
    const nested = Buffer.from(`${'['.repeat(depth)}${']'.repeat(depth - random.below(2))},`);
    return Buffer.concat([bytes.subarray(0, colon + 2), nested, bytes.subarray(end)]);
  },
  'two documents run together': (bytes, random, other) =>
    Buffer.concat([bytes.subarray(0, random.below(bytes.length)), other.subarray(random.below(other.length))]),
};

/** A change to what the document says, as a hand or another program makes it. */
type TreeMutation = (holder: Record<string, unknown>, key: string, random: Random, other: unknown) => void;

const ODD_VALUES: readonly [unknown, ...unknown[]] = [
  null,
  true,
  -1,
  0,
  1e308,
  -1e308,
  1e-320,
  2 ** 53,
  '',
  ' ',
  'NaN',
  'x'.repeat(20_000),
  '<script>alert(1)</script>',
  '=1+1',
  '../../etc',
  'constructor',
  '\u0000\u202E',
  [],
  {},
  [null],
  { id: 'x' },
  'mast-1',
  'vhf',
  '9'.repeat(400),
];

const ODD_KEYS: readonly [string, ...string[]] = ['__proto__', 'constructor', 'toString', '', 'id', '0', 'überall'];

const TREE_MUTATIONS: Readonly<Record<string, TreeMutation>> = {
  'entry lost': (holder, key) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  },
  'entry doubled': (holder, key) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(holder[Number(key)]));
    else holder[`${key} copy`] = structuredClone(holder[key]);
  },
  'odd value': (holder, key, random) => {
    holder[key] = random.pick(ODD_VALUES);
  },
  'value from elsewhere': (holder, key, _random, other) => {
    holder[key] = structuredClone(other);
  },
  'key renamed': (holder, key, random) => {
    if (Array.isArray(holder)) return;
    Object.defineProperty(holder, random.pick(ODD_KEYS), {
      value: holder[key],
      enumerable: true,
      configurable: true,
      writable: true,
    });
    delete holder[key];
  },
  'nested without end': (holder, key, random) => {
    const depth = random.pick([40, 70, 800]);
    let nested: unknown = 1;
    for (let level = 0; level < depth; level += 1) nested = level % 2 === 0 ? [nested] : { id: nested };
    holder[key] = nested;
  },
  'a crowd of it': (holder, key) => {
    const one = holder[key];
    const length = Math.min(2000, Math.ceil(CROWD_BYTES / JSON.stringify(one).length));
    const crowd = Array.from({ length }, () => structuredClone(one));
    if (Array.isArray(holder)) holder.push(...crowd);
    else holder[key] = crowd;
  },
  'number scaled': (holder, key, random) => {
    const value = holder[key];
    if (typeof value === 'number') holder[key] = value * random.pick([-1, 1000, 0.001, 1e300, 0.5]);
  },
};

/** A document so crowded is a dozen times any real one. */
const CROWD_BYTES = 700_000;

export const KINDS: readonly string[] = [...Object.keys(BYTE_MUTATIONS), ...Object.keys(TREE_MUTATIONS)];

/** A document of the given sound ones gone bad in one to three ways. Answers with what was done to it as well. */
export function mutated(documents: readonly [Buffer, ...Buffer[]], random: Random): { bytes: Buffer; ways: string[] } {
  const bytes = random.pick(documents);
  const ways: string[] = [];
  if (random.below(2) === 0) {
    const other = random.pick(documents);
    let bad: Buffer = bytes;
    for (let count = 1 + random.below(3); count > 0 && bad.length > 0; count -= 1) {
      const [way, mutate] = random.pick(Object.entries(BYTE_MUTATIONS) as [[string, ByteMutation]]);
      bad = mutate(bad, random, other);
      ways.push(way);
    }
    return { bytes: bad, ways };
  }
  const tree: unknown = JSON.parse(bytes.toString());
  for (let count = 1 + random.below(3); count > 0; count -= 1) {
    const [way, mutate] = random.pick(Object.entries(TREE_MUTATIONS) as [[string, TreeMutation]]);
    const [holder, key] = placeIn(tree, random);
    const [otherHolder, otherKey] = placeIn(tree, random);
    if (holder === null || key === undefined) break;
    mutate(holder, key, random, otherHolder?.[otherKey ?? '']);
    ways.push(way);
  }
  return { bytes: Buffer.from(JSON.stringify(tree)), ways };
}

/** A place in a document at any depth, met by walking down at random. */
function placeIn(tree: unknown, random: Random): [Record<string, unknown> | null, string | undefined] {
  let holder = tree as Record<string, unknown>;
  for (;;) {
    const keys = Object.keys(holder);
    const [first, ...others] = keys;
    if (first === undefined) return [null, undefined];
    const key = random.pick([first, ...others]);
    const next = holder[key];
    const mayGoOn = typeof next === 'object' && next !== null && Object.keys(next).length > 0;
    if (!mayGoOn || random.below(4) === 0) return [holder, key];
    holder = next as Record<string, unknown>;
  }
}
