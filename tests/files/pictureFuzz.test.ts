import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseProject, problemSentence } from '../../core/document/load.ts';
import { base64Of } from '../../core/document/pictureHeader.ts';
import { serialiseProject } from '../../core/document/save.ts';
import { setUnderlayPicture } from '../../core/edit/pictures.ts';
import { RefusedEdit } from '../../core/edit/refused.ts';
import type { Project } from '../../core/model/project.ts';
import { Random } from './random.ts';

// Pictures gone bad: cut off, with bytes changed, put in or left out. Each is refused with a sentence, or taken in whole and then
// loads again as it was; none crashes, and none hangs. One case again: BACKSTAY_FUZZ_SEED=<the seed it names> BACKSTAY_FUZZ_ROUNDS=1.

const SEED = Number(process.env.BACKSTAY_FUZZ_SEED ?? 6_000_000);
const ROUNDS = Number(process.env.BACKSTAY_FUZZ_ROUNDS ?? 3000);
const MOST_MS = 1000;

/** Real pictures to begin with: those of the guide, and a JPEG frame as cameras begin theirs (ITU-T T.81, B.2). */
const PNG = new Uint8Array(readFileSync(new URL('../../docs/pictures/range.png', import.meta.url))).slice(0, 60_000);
const JPEG = new Uint8Array([
  ...[0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0],
  ...[0xff, 0xdb, 0, 67, 0, ...new Array(64).fill(1)],
  ...[0xff, 0xc0, 0, 17, 8, 0, 120, 0, 160, 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1],
  ...[0xff, 0xda, 0, 12, 3, 1, 0, 2, 0x11, 3, 0x11, 0, 63, 0, ...new Array(400).fill(0x55), 0xff, 0xd9],
]);

/** One to eight changes to a picture. */
function mutated(random: Random): Uint8Array {
  let bytes = Array.from(random.pick([PNG.slice(0, 200 + random.below(2000)), JPEG]));
  for (let n = 1 + random.below(8); n > 0; n -= 1) {
    const at = random.below(Math.min(bytes.length, 120) + 1);
    const change = random.below(4);
    if (change === 0) bytes[at] = random.below(256);
    else if (change === 1) bytes.splice(at, random.below(20));
    else if (change === 2) bytes.splice(at, 0, ...Array.from({ length: random.below(20) }, () => random.below(256)));
    else bytes = bytes.slice(0, random.below(bytes.length + 1));
  }
  return Uint8Array.from(bytes);
}

function demo(): Project {
  const loaded = parseProject(readFileSync(new URL('../../assets/demo/pelluna.backstay', import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error('The demo boat does not load.');
  return loaded.project;
}

/** What became of a picture: `refused`, `taken`, or a fault in words. */
function outcomeOf(boat: Project, bytes: Uint8Array): string {
  try {
    const after = setUnderlayPicture(boat, { name: 'side.png', bytes });
    const again = parseProject(serialiseProject(after));
    if (!again.ok) return `fault: taken in, but ${again.problems.map(problemSentence).join(' ')}`;
    return again.project.pictures?.[0]?.base64 === base64Of(bytes) ? 'taken' : 'fault: not the same picture any more';
  } catch (error) {
    if (!(error instanceof RefusedEdit)) return `fault: ${String(error)}`;
    return /[.]$/.test(error.message) ? 'refused' : `fault: no sentence: ${error.message}`;
  }
}

describe(`pictures gone bad (seed ${SEED}, ${ROUNDS} of them)`, () => {
  it('are refused with a sentence, or taken in whole', () => {
    const boat = demo();
    const outcomes = new Map<string, number>();
    const faults: string[] = [];
    for (let seed = SEED; seed < SEED + ROUNDS && faults.length < 5; seed += 1) {
      const start = process.cpuUsage();
      const outcome = outcomeOf(boat, mutated(new Random(seed)));
      const { user, system } = process.cpuUsage(start);
      if ((user + system) / 1000 > MOST_MS) faults.push(`seed ${seed}: took over 1 s`);
      if (outcome.startsWith('fault')) faults.push(`seed ${seed}: ${outcome}`);
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    }
    expect(faults).toEqual([]);
    if (ROUNDS < 1000) return;
    expect(outcomes.get('taken') ?? 0).toBeGreaterThan(ROUNDS / 20);
    expect(outcomes.get('refused') ?? 0).toBeGreaterThan(ROUNDS / 20);
  }, 120_000);
});
