import type { Figure } from '../model/figure.ts';
import type { Station } from '../model/project.ts';
import { combineTolerances, wattsToDbm } from '../rf/decibels.ts';
import { q } from '../units/quantity.ts';
import type { OwnSide } from './ownSide.ts';
import { lossTerm, sumOf, type Term, type TermText } from './terms.ts';
import type { RangeResult, SeaService } from './types.ts';

/** Tolerance of the sea model at VHF against full-wave theory and measured medians, dB (docs/methods.md, "Smooth sea"). */
export const MODEL_TOLERANCE_DB = 4;

/** One direction of a link: its terms from transmitter to receiver, which sum to the loss that may lie between the antennas. */
export interface Way {
  readonly direction: RangeResult['limitedBy'];
  readonly terms: readonly Term[];
  readonly maxLossDb: number;
  /** The same if nothing lay between the own radio and its antenna. */
  readonly withoutFeederDb: number;
  /** Root sum of squares of the tolerances of all terms and of the model, dB. */
  readonly bandDb: number;
}

export interface Ways {
  readonly transmit: Way | null;
  readonly receive: Way | null;
}

/** Both directions between the own side and a station that has the service; null where there is no link at all. */
export function waysTo(own: OwnSide, station: Station): Ways | null {
  if (!serves(station, own.service)) return null;
  const transmit = own.transmit && wayOf('transmit', own.transmit.terms, farReceive(own, station), own.transmit);
  const powerW = stationPowerW(station, own.service);
  const receive =
    own.receive && powerW > 0
      ? wayOf('receive', farTransmit(own, station, powerW), own.receive.terms, own.receive)
      : null;
  return transmit || receive ? { transmit, receive } : null;
}

/** The direction that gives out first: both must work, and a set that only sends or only hears is judged by that. */
export function limitingWay({ transmit, receive }: Ways): Way {
  const way =
    transmit && receive ? (transmit.maxLossDb <= receive.maxLossDb ? transmit : receive) : (transmit ?? receive);
  if (!way) throw new RangeError('A link has at least one direction.');
  return way;
}

/** Loss that would be allowed without the own feeder, by whichever way would then give out first, dB. */
export function withoutFeederDb({ transmit, receive }: Ways): number {
  return Math.min(
    transmit?.withoutFeederDb ?? Number.POSITIVE_INFINITY,
    receive?.withoutFeederDb ?? Number.POSITIVE_INFINITY,
  );
}

function wayOf(
  direction: Way['direction'],
  near: readonly Term[],
  far: readonly Term[],
  own: { readonly terms: readonly Term[]; readonly withoutFeederDb: number },
): Way {
  const terms = [...near, ...far];
  const maxLossDb = sumOf(terms);
  return {
    direction,
    terms,
    maxLossDb,
    withoutFeederDb: maxLossDb - sumOf(own.terms) + own.withoutFeederDb,
    bandDb: combineTolerances([...terms.map(({ toleranceDb }) => toleranceDb), MODEL_TOLERANCE_DB]),
  };
}

/** A homing signal is listened for by those who go and search: by helicopter, ship or coast station with a direction finder. */
function serves(station: Station, service: SeaService): boolean {
  if (service === 'homing') return station.kind === 'helicopter' || station.kind === 'coast' || station.kind === 'ship';
  return stationPowerW(station, service) > 0;
}

function stationPowerW(station: Station, service: SeaService): number {
  switch (service) {
    case 'voice':
      return station.voicePowerW;
    case 'ais':
      return station.aisPowerW;
    case 'cellular':
      return station.cellularPowerW;
    case 'wifi':
      return station.wifiPowerW;
    case 'homing':
      return 0;
  }
}

function farTransmit(own: OwnSide, station: Station, powerW: number): readonly Term[] {
  const power: Term = {
    key: 'station-power',
    value: wattsToDbm(powerW),
    unit: 'dBm',
    toleranceDb: own.powerToleranceDb,
    text: () => textOf(station, 'transmit power', ['10 log ', q(powerW, 'W'), ' + 30']),
  };
  return [power, feederTerm(station), gainTerm(station)];
}

function farReceive(own: OwnSide, station: Station): readonly Term[] {
  const { sensitivityDbm } = station;
  const sensitivity: Term = {
    key: 'station-sensitivity',
    value: 0 - sensitivityDbm,
    unit: 'dBm',
    toleranceDb: own.sensitivityToleranceDb,
    text: () => textOf(station, 'sensitivity', ['subtracted: it hears down to ', q(sensitivityDbm, 'dBm')]),
  };
  return [gainTerm(station), feederTerm(station), sensitivity];
}

function feederTerm(station: Station): Term {
  return lossTerm('station-feeder', station.feederLossDb, 0, () =>
    textOf(station, 'feeder', [q(station.feederLossDb, 'dB'), ' of loss']),
  );
}

function gainTerm(station: Station): Term {
  return {
    key: 'station-gain',
    value: station.gainDbi,
    unit: 'dBi',
    toleranceDb: 0,
    text: () => textOf(station, 'antenna gain', [q(station.antennaHeightM, 'm'), ' above the water, upright']),
  };
}

const STATED: Pick<Figure, 'basis' | 'source'> = {
  basis: 'assumed',
  source: 'as stated for this station; its power and sensitivity are taken to be as uncertain as the own set’s',
};

function textOf(station: Station, what: string, formula: TermText['formula']): TermText {
  return { label: [`${station.name}, ${what}`], subject: null, formula, ...STATED };
}
