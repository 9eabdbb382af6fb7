import type { Basis } from '../model/figure.ts';
import type { Subject } from '../model/project.ts';
import type { CascadeResult, Stage } from '../rf/cascade.ts';

export type PathService =
  | 'vhf-voice'
  | 'ais'
  | 'mf-hf'
  | 'l-band'
  | 'gnss'
  | 'cellular'
  | 'wifi'
  | 'broadcast'
  | 'other';

/** The amplifier in one way through a device, in reception. */
export interface ReceiveAmplifier extends Stage {
  /** Of the noise figure, dB. */
  readonly noiseToleranceDb: number;
}

/** One thing the signal goes through between a radio's socket and an antenna's feed point. */
export interface PathElement {
  readonly kind: 'connector' | 'cable' | 'joint' | 'device' | 'mismatch';
  readonly label: string;
  readonly subject: Subject;
  /** Loss at the working frequency, dB >= 0. */
  readonly lossDb: number;
  readonly toleranceDb: number;
  /** Loss from the radio's socket up to and including this element, dB. */
  readonly runningLossDb: number;
  /** Power going in and coming out in transmit, W; null for a receive-only path. */
  readonly wattsIn: number | null;
  readonly wattsOut: number | null;
  /** Share of the radio's power that goes in this element, per cent. */
  readonly shareLostPercent: number;
  readonly basis: Basis;
  readonly source: string;
  /** The sum in words, e.g. `17.0 m x 21.0 dB/100 m`. */
  readonly formula: string;
  /** Absent for what only takes. */
  readonly amplifier?: ReceiveAmplifier;
}

/** One way for a signal between a radio's RF port and an antenna. */
export interface PathBudget {
  /** `${radioId}.${portId}>${antennaId}` */
  readonly id: string;
  readonly radioId: string;
  readonly portId: string;
  readonly antennaId: string;
  readonly service: PathService;
  readonly frequencyMhz: number;
  /** Whether the path can carry transmit power (a receive-only device on the way forbids it). */
  readonly canTransmit: boolean;
  readonly elements: readonly PathElement[];
  readonly runIds: readonly string[];
  readonly deviceIds: readonly string[];
  readonly lossDb: number;
  /** Combined tolerance (root sum of squares of the elements), dB. */
  readonly toleranceDb: number;
  readonly lostPercent: number;
  readonly txPowerW: number | null;
  readonly wattsAtAntenna: number | null;
  /** Effective isotropic radiated power, dBm; null for a receiver. */
  readonly eirpDbm: number | null;
  readonly antennaGainDbi: number;
  /** VSWR of the antenna itself, and what a meter at the radio reads of it through the feeder. */
  readonly antennaVswr: number;
  readonly radioVswr: number;
  /** Antenna to socket in reception: gain and noise figure of everything between, amplifiers included, by Friis. */
  readonly reception: CascadeResult;
  /** Effective height of the antenna's feed above the waterline, m. */
  readonly antennaHeightM: number;
  /** What a VSWR meter at the radio should read with the antenna taken off: the commissioning check of this feeder. */
  readonly openEndVswr: number;
  /** Loss from measurement (open-end VSWR, insertion loss), where the project has one, dB. */
  readonly measuredLossDb: number | null;
  /** Switches on the way that stand otherwise now: somebody has to set them before this path works. Empty when it is ready. */
  readonly switchIds: readonly string[];
}
