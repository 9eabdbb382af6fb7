import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { GroundWavePath } from '../../core/propagation/groundWave.ts';

// Runs groundWaveByContour.py beside this file: mpmath, arbitrary precision mathematics in Python (Debian package
// python3-mpmath), as the independent word on special functions and on the ground wave.

const python = ['python3', '/usr/bin/python3'].find(
  (command) => spawnSync(command, ['-c', 'import mpmath']).status === 0,
);
export const hasMpmath = python !== undefined;
/** Said in a test's name where it is skipped. */
export const MPMATH_MISSING = hasMpmath ? '' : ' (SKIPPED: mpmath is not installed; Debian package python3-mpmath)';

export type Pair = readonly [re: number, im: number];

export interface MpmathQuestion {
  readonly faddeeva?: readonly Pair[];
  readonly roots?: readonly (readonly [qRe: number, qIm: number, tRe: number, tIm: number])[];
  readonly waves?: readonly GroundWavePath[];
}

export interface MpmathAnswer {
  readonly faddeeva: readonly Pair[];
  readonly roots: readonly Pair[];
  /** Attenuation, dB. */
  readonly waves: readonly number[];
}

export function askMpmath(question: MpmathQuestion): MpmathAnswer {
  const script = fileURLToPath(new URL('./groundWaveByContour.py', import.meta.url));
  const waves = question.waves?.map(({ ground, surfaceRefractivity = 315, ...path }) => ({
    ...path,
    ...(ground ?? { permittivity: 70, conductivitySPerM: 5 }),
    surfaceRefractivity,
  }));
  const input = JSON.stringify({ ...question, ...(waves && { waves }) });
  const { status, stdout, stderr } = spawnSync(python ?? 'python3', [script], { encoding: 'utf8', input });
  if (status !== 0) throw new Error(`mpmath failed: ${stderr}`);
  return JSON.parse(stdout) as MpmathAnswer;
}
