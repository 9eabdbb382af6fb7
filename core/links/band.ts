import type { Band, RadioClass } from '../model/part.ts';
import type { PathService } from './types.ts';

interface BandSpan {
  readonly band: Band;
  readonly fromMhz: number;
  readonly toMhz: number;
  /** What a budget is reckoned at when the set's own frequency is not in this band, MHz. */
  readonly workingMhz: number;
}

/**
 * Spans and working frequencies of the bands. Frequencies of the marine services are those of 47 CFR Part 80 and ITU-R
 * M.1371; GNSS L1, L-band, cellular, Wi-Fi and broadcast spans are from memory.
 */
const SPANS: readonly BandSpan[] = [
  { band: 'navtex', fromMhz: 0.4, toMhz: 0.6, workingMhz: 0.518 },
  { band: 'mf-hf', fromMhz: 1.6, toMhz: 30, workingMhz: 8.291 },
  { band: 'broadcast', fromMhz: 87.5, toMhz: 240, workingMhz: 100 },
  { band: 'vhf-marine', fromMhz: 155, toMhz: 163, workingMhz: 156.8 },
  { band: 'beacon-406', fromMhz: 406, toMhz: 406.1, workingMhz: 406.04 },
  { band: 'cellular', fromMhz: 600, toMhz: 3800, workingMhz: 800 },
  { band: 'gnss', fromMhz: 1559, toMhz: 1610, workingMhz: 1575.42 },
  { band: 'l-band', fromMhz: 1525, toMhz: 1661, workingMhz: 1621 },
  { band: 'wifi', fromMhz: 2400, toMhz: 5900, workingMhz: 2440 },
  { band: 'radar', fromMhz: 2900, toMhz: 9500, workingMhz: 9410 },
  { band: 'satellite-broadband', fromMhz: 10_700, toMhz: 14_500, workingMhz: 12_000 },
];

export interface Working {
  readonly frequencyMhz: number;
  readonly band: Band | null;
  /** Whether this is the set's own frequency, on which it transmits, and not that of another of its sockets. */
  readonly isOwn: boolean;
}

/**
 * The frequency a path from a socket is reckoned at: the set's own where one of the socket's bands holds it, else the
 * working frequency of the socket's first band (the GNSS socket of an AIS set: 1575.42 MHz).
 */
export function workingFrequency(bands: readonly Band[], ownFrequencyMhz: number): Working {
  const spans = bands.flatMap((band) => SPANS.filter((span) => span.band === band));
  const own = spans.find((span) => ownFrequencyMhz >= span.fromMhz && ownFrequencyMhz <= span.toMhz);
  if (own) return { frequencyMhz: ownFrequencyMhz, band: own.band, isOwn: true };
  const [first] = spans;
  return first
    ? { frequencyMhz: first.workingMhz, band: first.band, isOwn: false }
    : { frequencyMhz: ownFrequencyMhz, band: null, isOwn: true };
}

const SERVICE_OF_BAND: Readonly<Record<Band, PathService>> = {
  navtex: 'other',
  'mf-hf': 'mf-hf',
  broadcast: 'broadcast',
  'vhf-marine': 'vhf-voice',
  'beacon-406': 'other',
  cellular: 'cellular',
  'l-band': 'l-band',
  gnss: 'gnss',
  wifi: 'wifi',
  radar: 'other',
  'satellite-broadband': 'other',
};

const SERVICE_OF_CLASS: Readonly<Record<RadioClass, PathService>> = {
  'vhf-fixed': 'vhf-voice',
  'ais-class-a': 'ais',
  'ais-class-b-cs': 'ais',
  'ais-class-b-so': 'ais',
  'ais-receiver': 'ais',
  'mf-hf': 'mf-hf',
  'navtex-receiver': 'other',
  'l-band-messenger': 'l-band',
  'l-band-voice': 'l-band',
  'broadband-terminal': 'other',
  'gnss-receiver': 'gnss',
  'cellular-repeater': 'cellular',
  'cellular-router': 'cellular',
  'wifi-bridge': 'wifi',
  'broadcast-receiver': 'broadcast',
};

/** What a set's own path is for. */
export function serviceOfClass(radioClass: RadioClass): PathService {
  return SERVICE_OF_CLASS[radioClass];
}

/** What a path from any socket is for: the set's own service on its own frequency, else that of the socket's band. */
export function serviceOf(working: Working, radioClass: RadioClass | null): PathService {
  if (working.isOwn && radioClass !== null) return SERVICE_OF_CLASS[radioClass];
  return working.band === null ? 'other' : SERVICE_OF_BAND[working.band];
}
