import type { Basis } from '../model/figure.ts';
import type { Subject } from '../model/project.ts';
import type { RichText } from '../units/quantity.ts';

/** A distance with its band: what the tolerances of the budget and of the model make of it, km. */
export interface DistanceBand {
  readonly nominalKm: number;
  readonly lowKm: number;
  readonly highKm: number;
}

/** What is carried over the sea between two antennas. `homing` is the 121.5 MHz carrier of a beacon. */
export type SeaService = 'voice' | 'ais' | 'cellular' | 'wifi' | 'homing';

/** How far one radio reaches one other station. All distances on one scale; see docs for what each word promises. */
export interface RangeResult {
  readonly id: string;
  /** The path it goes by; null for a set with its own antenna. */
  readonly pathId: string | null;
  readonly itemId: string;
  readonly stationId: string;
  readonly service: SeaService;
  readonly frequencyMhz: number;
  readonly ownHeightM: number;
  /** Geometric landmark, not a limit, km. */
  readonly horizonKm: number;
  /** Median level just at the receiver's stated sensitivity. */
  readonly typical: DistanceBand;
  /** The level still holds after the itemised real-life margin. */
  readonly dependable: DistanceBand;
  /** Which direction gives out first: own transmit to them, or theirs to us. */
  readonly limitedBy: 'transmit' | 'receive';
  /** What the feeder alone costs of each, km. */
  readonly feederCostTypicalKm: number;
  readonly feederCostDependableKm: number;
  readonly maxLossTypicalDb: number;
  readonly marginDb: number;
}

export interface LevelPoint {
  readonly distanceKm: number;
  /** Level at the limiting receiver, dBm: the median, or what holds for the stated share of the time. */
  readonly levelDbm: number;
  /** The same less and plus the band of the tolerances, dBm. */
  readonly lowDbm: number;
  readonly highDbm: number;
  /** Median with the lobes of the wave the sea reflects; null where two rays do not hold. */
  readonly twoRayDbm: number | null;
  /** Median with what the air scatters, the upper line of a good day; null where an antenna is too low to count on it. */
  readonly scatterDbm: number | null;
}

/**
 * What the reader tries on the screen; never saved with the boat. The range of `assess` is that of `AT_REST`.
 */
export interface TrialState {
  /** Steady heel, degrees, -60 to 60: above 0 to starboard. */
  readonly heelDeg: number;
  /** How far it rolls either side of that, degrees, 0 to 45. */
  readonly rollDeg: number;
  /** Bearing of the other station from the bow, degrees clockwise, 0 to 360. */
  readonly bearingDeg: number;
  readonly power: 'full' | 'low';
  /** Share of the time the level is to hold, per cent. */
  readonly timePercent: 50 | 90 | 99;
}

/** Upright, full power, the median: what the sheet states. */
export const AT_REST: TrialState = { heelDeg: 0, rollDeg: 0, bearingDeg: 90, power: 'full', timePercent: 50 };

/** One line of the sum behind a number, in order from transmitter to receiver. */
export interface SumLine {
  readonly key: string;
  readonly label: RichText;
  /** What it is about, to be shown on the drawing; null for what is not aboard. */
  readonly subject: Subject | null;
  /** What it adds, signed: power and sensitivity in dBm, gains in dBi, the rest in dB. */
  readonly value: number;
  readonly unit: 'dBm' | 'dBi' | 'dB';
  readonly toleranceDb: number;
  readonly basis: Basis;
  /** The sum in words and where it comes from. */
  readonly formula: RichText;
  readonly source: string;
}

/** One direction of a link. The lines add up to `maxLossDb`, what may lie between the antennas. */
export interface WaySum {
  readonly direction: 'transmit' | 'receive';
  readonly lines: readonly SumLine[];
  readonly maxLossDb: number;
  readonly typical: DistanceBand;
  readonly dependable: DistanceBand;
}

/** How much of the width of the band one element owns. */
export interface UncertaintyShare {
  readonly key: string;
  readonly label: RichText;
  readonly subject: Subject | null;
  readonly toleranceDb: number;
  /** Of the sum of squares, per cent. */
  readonly sharePercent: number;
}

/** Why a range is what it is: both ways line by line, which one limits, and what makes the band wide. */
export interface RangeExplanation {
  readonly range: RangeResult;
  readonly transmit: WaySum | null;
  readonly receive: WaySum | null;
  /** Root sum of squares of all tolerances, model included, dB, and its owners, largest first. */
  readonly bandDb: number;
  readonly uncertainty: readonly UncertaintyShare[];
  /** Noise at the own receiver: what the place and the chain make of the stated sensitivity. */
  readonly noise: NoiseSum | null;
  /** Mobile data only: how far a telephone in the hand on deck would reach instead, km. */
  readonly withoutKm?: { readonly typical: number; readonly dependable: number };
}

/** What noise does to the own receiver. */
export interface NoiseSum {
  readonly statedDbm: number;
  /** Of the receiver alone, dB: stated, or worked back from its sensitivity. */
  readonly receiverNoiseFigureDb: number;
  /** Of antenna to receiver, the receiver included, at the antenna, dB. */
  readonly chainNoiseFigureDb: number;
  /** From outside, median above kT0B, dB; null where no law covers the frequency. */
  readonly externalDb: number | null;
  /** By how much it spoils the receiver, dB. */
  readonly desenseDb: number;
  /** The sensitivity that is left at the antenna, dBm. */
  readonly effectiveDbm: number;
  readonly source: string;
}

/** An HF set with its antenna, band by band. */
export interface HfResult {
  readonly id: string;
  readonly pathId: string;
  readonly itemId: string;
  readonly antennaId: string;
  /** Whether the set sends, or only receives (weather fax, NAVTEX). */
  readonly canTransmit: boolean;
  /** Vertical part of the wire or whip, lead-in counted, m. */
  readonly effectiveLengthM: number;
  readonly groundLossOhm: number;
  readonly bands: readonly HfBand[];
  /** What holds for every band: the earth strap, a lead-in inside metal, a missing tuner. */
  readonly notes: readonly string[];
}

/** The antenna, the power and the ground wave on one marine band. */
export interface HfBand {
  readonly id: string;
  /** `2 MHz`, `518 kHz`. */
  readonly name: string;
  readonly frequencyMhz: number;
  /** These three are null where the wire is too long for the closed forms; then `efficiency` is a least value. */
  readonly radiationOhm: number | null;
  readonly reactanceOhm: number | null;
  readonly coilOhm: number | null;
  /** Share of the power at the antenna that is radiated, 0 to 1. */
  readonly efficiency: number;
  /** Loss of feeder and tuner before it, dB. */
  readonly feederLossDb: number;
  /** Null for a receiver. */
  readonly radiatedW: number | null;
  /** Volts at the insulator at full power, peak; null for a receiver and where the closed forms do not hold. */
  readonly insulatorPeakV: number | null;
  /** External noise, dB above kT0B. */
  readonly noiseDb: number;
  /** How far the ground wave is read by day, by those named; empty where none is reckoned. */
  readonly groundWave: readonly HfReach[];
  /** What the reader should know: outside a formula's span, too short for the tuner. */
  readonly notes: readonly string[];
}

/** Ground-wave reach to one far end. */
export interface HfReach {
  readonly key: string;
  readonly name: string;
  readonly reach: DistanceBand;
  readonly limitedBy: 'transmit' | 'receive';
}

/** One hour of one band for a sky-wave hop. */
export interface HfHour {
  /** Local solar time, 0 to 23. */
  readonly hour: number;
  readonly bandId: string;
  /**
   * `open` at or below the working frequency, `edge` between it and the median maximum, `shut` above that, `screened` where
   * the E layer keeps the ray from the F2, `ground` where the ground wave already covers the distance.
   */
  readonly state: 'open' | 'edge' | 'shut' | 'screened' | 'ground';
  /** The highest open band of the hour: the one to try first. */
  readonly isBest: boolean;
}

/** A hop over the hours of a day. */
export interface HfDay {
  readonly distanceKm: number;
  readonly hops: number;
  readonly hours: readonly {
    readonly hour: number;
    readonly sunZenithDeg: number;
    readonly foF2Mhz: number;
    readonly foEMhz: number;
    readonly mufMhz: number;
    readonly workingMhz: number;
    readonly takeoffDeg: number;
  }[];
  readonly cells: readonly HfHour[];
  readonly notes: readonly string[];
}

/** A satellite terminal, messenger or beacon: what its line and its place do to the link. */
export interface SatelliteResult {
  readonly id: string;
  readonly itemId: string;
  readonly pathId: string | null;
  readonly antennaId: string;
  readonly orbit: 'low' | 'geostationary' | 'medium';
  readonly frequencyMhz: number;
  readonly lineLossDb: number;
  readonly antennaGainDbi: number;
  readonly eirpDbm: number | null;
  readonly gOverTDbPerK: number | null;
  /** Change of margin against the terminal's own antenna, dB; null where it has none. */
  readonly change: { readonly transmitDb: number; readonly receiveDb: number; readonly breakEvenLossDb: number } | null;
  /** Most line loss the maker allows, dB; null where none is known. */
  readonly lineLimitDb: number | null;
  /** In words: `With this cable the outside antenna is no better than none.` */
  readonly verdict: RichText;
  readonly isGood: boolean;
}

/** A GNSS receiver with its lead. */
export interface GnssResult {
  readonly id: string;
  readonly itemId: string;
  readonly pathId: string | null;
  readonly antennaId: string;
  /** Amplifier less cable, connectors and splitters, dB; null for an antenna built into the set. */
  readonly netGainDb: number | null;
  readonly noiseFigureDb: number | null;
  /** Under an open sky, dB-Hz. */
  readonly carrierToNoiseDbHz: number | null;
  readonly window: { readonly minDb: number | null; readonly maxDb: number | null } | null;
  readonly verdict: RichText;
  readonly isGood: boolean;
}

/** One strong signal at one receiver: from another station nearby, or from an antenna aboard. */
export interface StrongSignal {
  readonly id: string;
  readonly kind: 'near-station' | 'own-antenna';
  readonly fromId: string;
  readonly toPathId: string;
  readonly toItemId: string;
  readonly frequencyMhz: number;
  readonly offsetMhz: number;
  readonly powerW: number;
  /** Between own antennas, dB; null for another station. */
  readonly isolationDb: number | null;
  /** `near-field`: nearer than the formula holds, so no level is given. */
  readonly validity: 'holds' | 'near-field' | 'unchecked';
  /** At the receiver's socket, dBm; null where not valid or where it depends on the distance. */
  readonly levelDbm: number | null;
  readonly limits: readonly {
    readonly key: string;
    readonly label: string;
    readonly limitDbm: number;
    /** Above 0: kept. Null where no level is given. */
    readonly marginDb: number | null;
    /** Distance from which another station keeps it, m; null between own antennas. */
    readonly clearM: number | null;
    readonly source: string;
  }[];
}

/** What a service of the sea is called in a line of text. */
export const SEA_SERVICE_WORDS: Readonly<Record<SeaService, string>> = {
  voice: 'voice',
  ais: 'AIS',
  cellular: 'mobile data',
  wifi: 'Wi-Fi',
  homing: 'homing signal',
};
