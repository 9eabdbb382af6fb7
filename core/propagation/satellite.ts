import { cascade, lossStage } from '../rf/cascade.ts';
import { addPowersDb, excessNoiseDb } from '../rf/decibels.ts';
import { freeSpaceLossDb } from './freeSpace.ts';

/** Mean radius of the earth, km. */
const EARTH_RADIUS_KM = 6371;
/** Radius of the geostationary orbit, km. */
const GEOSTATIONARY_RADIUS_KM = 42_164;
/** Height of a geostationary satellite above the mean earth, km. */
export const GEOSTATIONARY_HEIGHT_KM = GEOSTATIONARY_RADIUS_KM - EARTH_RADIUS_KM;
const REFERENCE_K = 290;

/** How a satellite is seen from the sea. */
export interface SatelliteSight {
  readonly slantRangeKm: number;
  readonly elevationDeg: number;
  /** Arc over the earth between the boat and the point beneath the satellite. */
  readonly earthArcDeg: number;
}

/**
 * Slant range to a satellite: sqrt((R sin e)^2 + 2 R h + h^2) - R sin e, round earth of 6371 km, no refraction.
 * @param heightKm above the sea, 100 to 100 000 km
 * @param elevationDeg above the horizon, 0 to 90
 * @throws RangeError outside those spans
 * Source: law of cosines, as in any satellite handbook. Checked by: tests/published/satelliteAndGnss.test.ts
 */
export function satelliteSight(heightKm: number, elevationDeg: number): SatelliteSight {
  requireSpan('A satellite height, km,', heightKm, 100, 100_000);
  requireSpan('An elevation', elevationDeg, 0, 90);
  const rise = EARTH_RADIUS_KM * Math.sin(radians(elevationDeg));
  const slantRangeKm = Math.sqrt(rise ** 2 + 2 * EARTH_RADIUS_KM * heightKm + heightKm ** 2) - rise;
  const across = slantRangeKm * Math.cos(radians(elevationDeg));
  const earthArcDeg = degrees(Math.asin(Math.min(1, across / (EARTH_RADIUS_KM + heightKm))));
  return { slantRangeKm, elevationDeg, earthArcDeg };
}

/**
 * A geostationary satellite from a place; null where it is below the horizon. Bearing is true, 0 to below 360.
 * @param latitudeDeg of the boat, north positive, -90 to 90
 * @param eastOfBoatDeg longitude of the satellite less that of the boat, -180 to 180
 * @throws RangeError outside those spans
 * Source: spherical trigonometry, as in any satellite handbook. Checked by: tests/published/satelliteAndGnss.test.ts
 */
export function geostationarySight(
  latitudeDeg: number,
  eastOfBoatDeg: number,
): (SatelliteSight & { readonly bearingDeg: number }) | null {
  requireSpan('A latitude', latitudeDeg, -90, 90);
  requireSpan('A difference of longitude', eastOfBoatDeg, -180, 180);
  const [latitude, east] = [radians(latitudeDeg), radians(eastOfBoatDeg)];
  const cosineArc = Math.cos(latitude) * Math.cos(east);
  const up = GEOSTATIONARY_RADIUS_KM * cosineArc - EARTH_RADIUS_KM;
  if (up < 0) return null;
  const sineArc = Math.sqrt(Math.max(0, 1 - cosineArc ** 2));
  const elevationDeg = degrees(Math.atan2(up, GEOSTATIONARY_RADIUS_KM * sineArc));
  const bearing = degrees(Math.atan2(Math.sin(east), -Math.sin(latitude) * Math.cos(east)));
  return { ...satelliteSight(GEOSTATIONARY_HEIGHT_KM, elevationDeg), bearingDeg: (bearing + 360) % 360 };
}

/** Free-space loss to a satellite, dB; rain, scintillation and sea multipath are not in it. @throws RangeError */
export function satellitePathLossDb(frequencyMhz: number, heightKm: number, elevationDeg: number): number {
  return freeSpaceLossDb(frequencyMhz, satelliteSight(heightKm, elevationDeg).slantRangeKm);
}

/** An antenna towards the satellite and what lies between it and the receiver. */
export interface SatelliteReceiver {
  /** Towards the satellite. */
  readonly antennaGainDbi: number;
  /** Cable and connectors before the receiver, at 290 K. */
  readonly lineLossDb: number;
  readonly receiverNoiseFigureDb: number;
  /** What the antenna hears of sky, sea and boat, K. */
  readonly antennaTemperatureK: number;
}

/**
 * Noise temperature at the antenna's terminals, K: Ta + 290 (F - 1), F of line and receiver together.
 * @throws RangeError for a negative loss, noise figure or temperature
 */
export function systemTemperatureK(receiver: SatelliteReceiver): number {
  return 10 ** (systemTemperatureDbK(receiver) / 10);
}

/** The same as 10 log, dB; minus infinity where nothing makes noise. */
function systemTemperatureDbK({ lineLossDb, receiverNoiseFigureDb, antennaTemperatureK }: SatelliteReceiver): number {
  requireSpan('An antenna temperature', antennaTemperatureK, 0, 10_000);
  const chain = cascade([lossStage(lineLossDb), { gainDb: 0, noiseFigureDb: receiverNoiseFigureDb }]);
  const receiverDbK = 10 * Math.log10(REFERENCE_K) + excessNoiseDb(chain.noiseFigureDb);
  return addPowersDb(10 * Math.log10(antennaTemperatureK), receiverDbK);
}

/**
 * Quality of a receiving station, dB/K: gain less 10 log of the noise temperature, both at the antenna's terminals.
 * @throws RangeError as `systemTemperatureK`, or where nothing makes noise
 * Checked by: tests/published/satelliteAndGnss.test.ts
 */
export function gOverTDbPerK(receiver: SatelliteReceiver): number {
  requireSpan('An antenna gain', receiver.antennaGainDbi, -60, 60);
  const temperatureDbK = systemTemperatureDbK(receiver);
  if (temperatureDbK === Number.NEGATIVE_INFINITY) throw new RangeError('A receiver without any noise has no G/T.');
  return receiver.antennaGainDbi - temperatureDbK;
}

/** An outside antenna in place of the terminal's own. */
export interface AntennaSwap {
  readonly outsideGainDbi: number;
  /** Cable, connectors and arrestor between outside antenna and terminal. */
  readonly lineLossDb: number;
  readonly ownGainDbi: number;
  /** What deck, coachroof or rigging takes from the terminal's own antenna where it stands. */
  readonly ownObstructionDb: number;
  readonly receiverNoiseFigureDb: number;
  readonly antennaTemperatureK: number;
}

/** Change of link margin by the swap, dB; above 0 the outside antenna is better. */
export interface MarginChange {
  readonly transmitDb: number;
  readonly receiveDb: number;
  /** Line loss at which sending comes out even: gain difference plus obstruction; below 0 no cable is short enough. */
  readonly breakEvenLossDb: number;
}

/**
 * What an outside antenna does to both directions of the link. Sending: gains, line loss and obstruction. Receiving: the
 * change of G/T, so the noise the line adds counts too. An obstruction is taken as loss of signal at an unchanged antenna
 * temperature, which flatters the terminal's own antenna.
 * @throws RangeError for negative losses or figures outside their spans
 * Checked by: tests/published/satelliteAndGnss.test.ts
 */
export function marginChange(swap: AntennaSwap): MarginChange {
  const { outsideGainDbi, lineLossDb, ownGainDbi, ownObstructionDb } = swap;
  requireSpan('An obstruction', ownObstructionDb, 0, 100);
  const own = gOverTDbPerK({ ...swap, antennaGainDbi: ownGainDbi, lineLossDb: 0 }) - ownObstructionDb;
  const receiveDb = gOverTDbPerK({ ...swap, antennaGainDbi: outsideGainDbi }) - own;
  const breakEvenLossDb = outsideGainDbi - ownGainDbi + ownObstructionDb;
  return { transmitDb: breakEvenLossDb - lineLossDb, receiveDb, breakEvenLossDb };
}

const radians = (degreesOfArc: number): number => (degreesOfArc * Math.PI) / 180;
const degrees = (radiansOfArc: number): number => (radiansOfArc * 180) / Math.PI;

function requireSpan(what: string, value: number, min: number, max: number): void {
  if (!(value >= min && value <= max)) throw new RangeError(`${what} must be ${min} to ${max}, not ${value}.`);
}
