import { type Figure, figure } from '../model/figure.ts';
import type { Band, ConnectorType, PartOf, Port, RadioClass } from '../model/part.ts';

/** One radio of the catalogue before its ports are made. */
export interface RadioRow {
  readonly id: string;
  readonly radioClass: RadioClass;
  readonly text: readonly [name: string, description: string];
  /** RF sockets: id, bands, connector. Empty for a set whose antenna is inside. */
  readonly sockets: readonly (readonly [string, readonly Band[], ConnectorType])[];
  readonly mhz: number;
  readonly power: Figure;
  readonly sensitivity: Figure;
  readonly supplyV?: number;
  /** Current on transmit and on receive. */
  readonly amps: readonly [transmit: Figure, receive: Figure];
  readonly traits?: Partial<PartOf<'radio'>['traits']>;
  /** Figures that only some classes have. */
  readonly more?: Partial<PartOf<'radio'>['figures']>;
}

const BASE_TRAITS: PartOf<'radio'>['traits'] = {
  dsc: false,
  internalGnss: false,
  needsFixToTransmit: false,
  ownBattery: false,
  portable: false,
  integralAntenna: false,
};

/** A figure a rule or standard sets. */
export const rule = (value: number, tolerance: number, source: string): Figure =>
  figure(value, tolerance, 'standard', source);
/** A figure read in a handbook or manual. */
export const read = (value: number, tolerance: number, source: string): Figure =>
  figure(value, tolerance, 'data-sheet', source);
/** A figure from memory or common practice. */
export const assumed = (value: number, tolerance: number, source = 'common practice, no source'): Figure =>
  figure(value, tolerance, 'assumed', source);
export const NO_TRANSMITTER = figure(0, 0, 'standard', 'receiver');

/** The net gain a GNSS receiver wants before its socket, least to most, dB. */
export const gainWindow = (minDb: number, maxDb: number, source: string) => ({
  gainMinDb: read(minDb, 3, source),
  gainMaxDb: read(maxDb, 3, source),
});

/** The part with its sockets, supply and data port. */
export function radioPart(row: RadioRow): PartOf<'radio'> {
  const sockets = row.sockets.map(([id, bands, connector]): Port => {
    const label = id === 'rf' ? 'antenna' : `${id} antenna`;
    return { id, medium: 'rf', label, connector, bands: [...bands], impedanceOhm: 50 };
  });
  const [name, description] = row.text;
  return {
    id: row.id,
    kind: 'radio',
    radioClass: row.radioClass,
    name,
    description,
    ports: [
      ...sockets,
      { id: 'dc', medium: 'dc', label: 'supply', role: 'in' },
      { id: 'data', medium: 'data', label: 'data' },
    ],
    figures: {
      txPowerW: row.power,
      frequencyMhz: figure(row.mhz, 0, 'standard', 'working frequency of the service'),
      rxSensitivityDbm: row.sensitivity,
      supplyVoltageV: assumed(row.supplyV ?? 12.6, 1, 'nominal supply; a charged 12 V battery at rest'),
      txCurrentA: row.amps[0],
      rxCurrentA: row.amps[1],
      ...row.more,
    },
    traits: { ...BASE_TRAITS, ...row.traits },
  };
}
