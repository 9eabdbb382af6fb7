import type { PartOf } from '../model/part.ts';

/** What a signal needs over the noise to be read. */
export interface HfService {
  readonly bandwidthHz: number;
  /** Mean signal over noise in that bandwidth, dB. */
  readonly signalToNoiseDb: number;
  /** By how much the mean lies below the stated peak power, dB. */
  readonly meanBelowPeakDb: number;
  readonly fadingDb: number;
  readonly source: string;
}

/** A station ashore that the ground wave is reckoned to. */
export interface ShoreStation {
  readonly key: string;
  readonly name: string;
  readonly powerW: number;
  /** Share of it that is radiated, and what the figures are worth together, dB. */
  readonly efficiency: number;
  readonly toleranceDb: number;
  readonly source: string;
}

/** A frequency that is looked at. */
export interface HfChannel {
  readonly id: string;
  readonly name: string;
  readonly frequencyMhz: number;
}

/** What a class of set does: its bands, the service, and who is at the other end. */
export interface HfPlan {
  readonly service: HfService;
  readonly shore: ShoreStation;
  readonly channels: readonly HfChannel[];
}

const channel = (id: string, name: string, frequencyMhz: number): HfChannel => ({ id, name, frequencyMhz });

/** Peak power to noise of 20 dB. */
const VOICE: HfService = {
  bandwidthHz: 3000,
  signalToNoiseDb: 9,
  meanBelowPeakDb: 8,
  fadingDb: 3,
  source:
    'IMO A.801(19) for sea area A2 (ITU-R M.1467): 9 dB in 3 kHz, mean power 8 dB below peak, 3 dB for fading; from memory',
};
const NAVTEX: HfService = {
  bandwidthHz: 500,
  signalToNoiseDb: 8,
  meanBelowPeakDb: 0,
  fadingDb: 0,
  source: 'IMO criteria for NAVTEX coverage: 8 dB in 500 Hz, by ground wave',
};
const FAX: HfService = {
  bandwidthHz: 1100,
  signalToNoiseDb: 15,
  meanBelowPeakDb: 0,
  fadingDb: 3,
  source: 'judgement: a line chart is clean at about 15 dB in 1.1 kHz; common practice, no source',
};

const COMMON = 'common practice, no source';

/** Voice channels of the GMDSS, 47 CFR 80; that of 22 MHz is a simplex channel of the Radio Regulations, from memory. */
export const VOICE_CHANNELS: readonly HfChannel[] = [
  channel('2-mhz', '2 MHz', 2.182),
  channel('4-mhz', '4 MHz', 4.125),
  channel('6-mhz', '6 MHz', 6.215),
  channel('8-mhz', '8 MHz', 8.291),
  channel('12-mhz', '12 MHz', 12.29),
  channel('16-mhz', '16 MHz', 16.42),
  channel('22-mhz', '22 MHz', 22.159),
];

const VOICE_PLAN: HfPlan = {
  service: VOICE,
  shore: { key: 'coast', name: 'Coast station', powerW: 1000, efficiency: 0.5, toleranceDb: 3, source: COMMON },
  channels: VOICE_CHANNELS,
};

const NAVTEX_PLAN: HfPlan = {
  service: NAVTEX,
  shore: { key: 'navtex', name: 'NAVTEX station', powerW: 1000, efficiency: 0.25, toleranceDb: 4, source: COMMON },
  channels: [
    channel('490-khz', '490 kHz', 0.49),
    channel('518-khz', '518 kHz', 0.518),
    channel('4209-khz', '4209.5 kHz', 4.2095),
  ],
};

/** Round figures: every weather-fax station has frequencies of its own. */
const FAX_PLAN: HfPlan = {
  service: FAX,
  shore: { key: 'fax', name: 'Weather-fax station', powerW: 5000, efficiency: 0.5, toleranceDb: 4, source: COMMON },
  channels: [channel('4-mhz', '4 MHz', 4), channel('8-mhz', '8 MHz', 8), channel('12-mhz', '12 MHz', 12)],
};

/** Below this a receiver is one for NAVTEX, MHz. */
const NAVTEX_BELOW_MHZ = 1.6;

/** What a set is for, or null where it is no set for MF or HF. A receiver for HF is taken as one for weather fax. */
export function hfPlan(part: PartOf<'radio'>, pathMhz: number): HfPlan | null {
  if (part.radioClass === 'mf-hf') return VOICE_PLAN;
  if (part.radioClass !== 'navtex-receiver') return null;
  return pathMhz < NAVTEX_BELOW_MHZ ? NAVTEX_PLAN : FAX_PLAN;
}
