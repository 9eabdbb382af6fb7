import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import { wattsToDbm } from './decibels.ts';

/** Receivers whose strong-signal limits are known. */
export type StrongSignalReceiver = 'vhf' | 'ais';

/** A level at a receiver's socket that is not to be exceeded, by what then happens. */
export interface StrongSignalLimit {
  readonly key: 'own-channel' | 'adjacent-channel' | 'blocking' | 'care';
  readonly label: string;
  readonly limitDbm: number;
  /** Distance from the receiver's frequency for which it holds, MHz: from, and below. */
  readonly fromMhz: number;
  readonly toMhz: number;
  readonly source: string;
}

const AIS_SOURCE = 'IEC 62287-2, Table 4';
const VHF_SOURCE = 'EN 300 162 class, from memory';
const CARE_SOURCE = 'no standard gives one; from memory';
const [HALF_CHANNEL_MHZ, CHANNEL_EDGE_MHZ] = [0.0125, 0.0375];

const limit = (
  key: StrongSignalLimit['key'],
  label: string,
  limitDbm: number,
  span: readonly [number, number],
  source: string,
): StrongSignalLimit => ({ key, label, limitDbm, fromMhz: span[0], toMhz: span[1], source });

const CARE = limit('care', 'level to keep a receiver from in any case', 10, [0, Number.POSITIVE_INFINITY], CARE_SOURCE);

/**
 * Limits by receiver. Blocking of a VHF set is 90 dBµV of electromotive force, -23 dBm at 50 ohm, stated for 1 to 10 MHz off;
 * it is held from the next channel but one and beyond 10 MHz too. Its adjacent channel is 70 dB above +6 dBµV. For the own
 * channel of a VHF set no limit was found, so the one of AIS is warned at.
 */
export const STRONG_SIGNAL_LIMITS: Readonly<Record<StrongSignalReceiver, readonly StrongSignalLimit[]>> = {
  vhf: [
    limit('own-channel', 'strong signal on the own channel', -7, [0, HALF_CHANNEL_MHZ], CARE_SOURCE),
    limit('adjacent-channel', 'adjacent channel', -37, [HALF_CHANNEL_MHZ, CHANNEL_EDGE_MHZ], VHF_SOURCE),
    limit('blocking', 'blocking', -23, [CHANNEL_EDGE_MHZ, Number.POSITIVE_INFINITY], VHF_SOURCE),
    CARE,
  ],
  ais: [
    limit(
      'own-channel',
      'strong signal on the own channel, 10 per cent of packets lost',
      -7,
      [0, HALF_CHANNEL_MHZ],
      AIS_SOURCE,
    ),
    limit('adjacent-channel', 'adjacent channel', -31, [HALF_CHANNEL_MHZ, CHANNEL_EDGE_MHZ], AIS_SOURCE),
    limit('blocking', 'blocking within 5 MHz', -23, [CHANNEL_EDGE_MHZ, 5], AIS_SOURCE),
    limit('blocking', 'blocking beyond 5 MHz', -15, [5, Number.POSITIVE_INFINITY], AIS_SOURCE),
    CARE,
  ],
};

/** One limit against a level: a negative margin means that it is exceeded. */
export interface LimitMargin {
  readonly limit: StrongSignalLimit;
  readonly marginDb: number;
}

/**
 * The limits that hold for an unwanted carrier, tightest first, with the margin of each.
 * @param levelDbm level at the receiver's socket
 * @param offsetMhz distance of the carrier from the receiver's frequency, MHz; its sign does not matter
 * @throws RangeError when either is not a finite number
 * Validity: one carrier at a time. Two strong ones mix at lower levels already (intermodulation: -36 dBm each, AIS). A limit
 * kept means that a set that meets its standard still receives a wanted signal near its sensitivity; most do better.
 * Checked by: tests/unit/rf/overload.test.ts
 */
export function strongSignalMargins(
  receiver: StrongSignalReceiver,
  levelDbm: number,
  offsetMhz: number,
): readonly LimitMargin[] {
  requireFinite('levelDbm', levelDbm);
  requireFinite('offsetMhz', offsetMhz);
  const offset = Math.abs(offsetMhz);
  return STRONG_SIGNAL_LIMITS[receiver]
    .filter(({ fromMhz, toMhz }) => offset >= fromMhz && offset < toMhz)
    .map((entry) => ({ limit: entry, marginDb: entry.limitDbm - levelDbm }))
    .sort((a, b) => a.marginDb - b.marginDb);
}

/** Both feeders and antennas of a strong signal's way; between own antennas the isolation stands for the path. */
export interface StrongSignalWay {
  /** Transmitter power, W, > 0. */
  readonly powerW: number;
  readonly transmitterLossDb: number;
  /** 0 where `pathLossDb` is an isolation between sockets of antennas. */
  readonly transmitterGainDbi: number;
  readonly receiverGainDbi: number;
  readonly receiverLossDb: number;
  /** Loss between isotropic antennas, or the isolation between the antennas themselves, dB. */
  readonly pathLossDb: number;
}

/**
 * Level at the receiver's socket, dBm.
 * @throws RangeError when the power is not above 0, a loss is negative or a figure is not finite
 */
export function strongSignalDbm(way: StrongSignalWay): number {
  for (const key of ['transmitterLossDb', 'receiverLossDb'] as const)
    if (!(way[key] >= 0 && Number.isFinite(way[key])))
      throw new RangeError(`${key} must be 0 dB or more, not ${way[key]}.`);
  for (const key of ['transmitterGainDbi', 'receiverGainDbi', 'pathLossDb'] as const) requireFinite(key, way[key]);
  const sentDbm = wattsToDbm(way.powerW) - way.transmitterLossDb + way.transmitterGainDbi;
  return sentDbm - way.pathLossDb + way.receiverGainDbi - way.receiverLossDb;
}

/**
 * Distance at which a free-space loss is reached, m: how far off a near station must lie for a limit to be kept.
 * @throws RangeError when the frequency is not above 0 or the loss not finite
 * Source: Rec. ITU-R P.525, solved for the distance.
 */
export function freeSpaceDistanceM(frequencyMhz: number, lossDb: number): number {
  if (!(frequencyMhz > 0 && Number.isFinite(frequencyMhz)))
    throw new RangeError(`frequencyMhz must be above 0, not ${frequencyMhz}.`);
  requireFinite('lossDb', lossDb);
  return (10 ** (lossDb / 20) * SPEED_OF_LIGHT_M_PER_S) / (4 * Math.PI * frequencyMhz * 1e6);
}

function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, not ${value}.`);
}
