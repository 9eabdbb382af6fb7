import { LONGEST_GROUND_WAVE_WAVELENGTHS, LONGEST_WAVELENGTHS } from '../rf/shortAntenna.ts';
import type { HfWire } from './hfWire.ts';

/** Least length tuners ask for, m: below 4 MHz, and above (makers of 1.6 to 30 MHz couplers, from memory). */
const TUNER_SPLIT_MHZ = 4;
const LEAST_LOW_M = 7;
const LEAST_HIGH_M = 2.5;
/** Below this lightning far off is usually the loudest noise, MHz. */
const LIGHTNING_BELOW_MHZ = 1;

const EARTHS: Readonly<Record<string, string>> = {
  'hull-stud': 'a stud on the hull',
  plate: 'an earth plate',
  seacock: 'a seacock',
};

/** What the reader should know about the antenna on every band. */
export function resultNotes(wire: HfWire, canTransmit: boolean, isActive: boolean): readonly string[] {
  const notes: string[] = [];
  if (canTransmit && !wire.tuner)
    notes.push('No tuner on the way to this antenna: the figures hold only for one that is tuned at its foot.');
  if (wire.hiddenLeadM > 0)
    notes.push(
      'Part of the lead-in runs inside metal: it radiates nothing, and what it costs by its capacity is not reckoned.',
    );
  if (wire.tuner) notes.push(earthNote(wire.tuner.facts.earthTo));
  if (isActive) notes.push('Antenna with an amplifier: taken to hear the noise from outside above its own.');
  if (canTransmit)
    notes.push('Touch means burns: keep insulator and lead-in out of reach, and let a licensed installer earth it.');
  return notes;
}

/** What holds on one band. */
export function bandNotes({ tuner, lengthM }: HfWire, frequencyMhz: number, waves: number): readonly string[] {
  const notes: string[] = [];
  if (waves > LONGEST_WAVELENGTHS)
    notes.push(
      `Longer than ${LONGEST_WAVELENGTHS} wavelengths, where the closed forms end: the efficiency is a least value.`,
    );
  if (waves > LONGEST_GROUND_WAVE_WAVELENGTHS)
    notes.push('So long that it radiates more upwards than along the sea: no ground wave is reckoned.');
  if (tuner && lengthM < (frequencyMhz < TUNER_SPLIT_MHZ ? LEAST_LOW_M : LEAST_HIGH_M))
    notes.push('Shorter than tuners ask for on this band: it may not tune.');
  if (frequencyMhz < LIGHTNING_BELOW_MHZ)
    notes.push(
      'Far lightning, not stated, is mostly the loudest noise here and shortens the reach: stations plan for 250 to 400 nautical miles (common practice, no source).',
    );
  return notes;
}

function earthNote(earthTo: string | undefined): string {
  const to = earthTo === undefined ? undefined : EARTHS[earthTo];
  if (to) return `The tuner is earthed to ${to}; the ground loss is the figure of the antenna, whatever the earth.`;
  return earthTo === 'none'
    ? 'The tuner has no earth: the ground loss may be far above the figure of the antenna.'
    : 'No earth is stated for the tuner: the ground loss may be above the figure of the antenna.';
}
