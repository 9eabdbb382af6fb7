import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

// Runs nec2c, a free general-purpose antenna solver (method of moments, NEC-2; Debian package nec2c), as the independent word
// on patterns, impedances and coupling. Formats of deck and listing: NEC-2 user's guide, from memory.

export const hasNec2c = spawnSync('nec2c', ['-v']).error === undefined;
/** Said in a test's name where it is skipped. */
export const NEC2C_MISSING = hasNec2c ? '' : ' (SKIPPED: nec2c is not installed; Debian package nec2c)';

export interface ComplexNumber {
  readonly re: number;
  readonly im: number;
}

/** One line of the radiation pattern: gains in dBi; -999.99 where there is no field. */
export interface NecGain {
  readonly thetaDeg: number;
  readonly phiDeg: number;
  readonly verticalDbi: number;
  readonly totalDbi: number;
}

export interface NecResult {
  readonly gains: readonly NecGain[];
  /** Impedance at each voltage source in the order of the deck, ohm. */
  readonly impedancesOhm: readonly ComplexNumber[];
  /** Current in the middle of each segment, A, by segment number from 1. */
  readonly currentsA: ReadonlyMap<number, ComplexNumber>;
}

/** Solves a deck, given without its comment and EN cards. */
export function runNec2c(cards: readonly string[]): NecResult {
  const folder = mkdtempSync(join(tmpdir(), 'backstay-nec2c-'));
  try {
    const [deck, listing] = [join(folder, 'deck.nec'), join(folder, 'listing.txt')];
    writeFileSync(deck, `${['CM Backstay', 'CE', ...cards, 'EN'].join('\n')}\n`);
    const { status, stderr } = spawnSync('nec2c', ['-i', deck, '-o', listing], { encoding: 'utf8' });
    if (status !== 0) throw new Error(`nec2c failed: ${stderr}`);
    return readListing(readFileSync(listing, 'utf8'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export function readListing(listing: string): NecResult {
  const inputs = tableAfter(listing, 'ANTENNA INPUT PARAMETERS');
  const currents = tableAfter(listing, 'CURRENTS AND LOCATION');
  return {
    gains: tableAfter(listing, 'RADIATION PATTERNS').map((row) => ({
      thetaDeg: at(row, 0),
      phiDeg: at(row, 1),
      verticalDbi: at(row, 2),
      totalDbi: at(row, 4),
    })),
    impedancesOhm: inputs.map((row) => ({ re: at(row, 6), im: at(row, 7) })),
    currentsA: new Map(currents.map((row) => [at(row, 0), { re: at(row, 6), im: at(row, 7) }])),
  };
}

/** The rows of numbers below a heading, up to the first line that is none. */
function tableAfter(listing: string, heading: string): string[][] {
  const lines = listing.split('\n');
  const start = lines.findIndex((line) => line.includes(heading));
  if (start < 0) return [];
  const rows: string[][] = [];
  for (const line of lines.slice(start + 1)) {
    const cells = line.trim().split(/\s+/);
    if (/^-?\d/.test(cells[0] ?? '')) rows.push(cells);
    else if (rows.length > 0) break;
  }
  return rows;
}

function at(row: readonly string[], column: number): number {
  const value = Number(row[column]);
  if (!Number.isFinite(value)) throw new Error(`nec2c: no number in column ${column} of "${row.join(' ')}".`);
  return value;
}
