import type { Figure } from '../model/figure.ts';
import {
  type Band,
  bandSchema,
  type ConnectorType,
  type DeviceClass,
  type LossTable,
  type PartOf,
  type Port,
  type Through,
} from '../model/part.ts';

/** A part that does not care for the band. */
export const ALL: readonly Band[] = bandSchema.options;
export const PRACTICE = 'common practice, no source';

/** An RF port; 50 ohm and any band unless said otherwise. */
export const rf = (
  id: string,
  label: string,
  connector: ConnectorType,
  bands: readonly Band[] = ALL,
  impedanceOhm = 50,
): Port => ({
  id,
  medium: 'rf',
  label,
  connector,
  bands: [...bands],
  impedanceOhm,
});
export const SUPPLY: Port = { id: 'dc', medium: 'dc', label: 'supply', role: 'in' };

/** A way through a device, both directions; `transmit` says whether a transmission passes it at all. */
export const way = (
  fromPortId: string,
  toPortId: string,
  lossKey: string,
  transmit = true,
  whenUnpowered: Through['whenUnpowered'] = 'through',
): Through => ({ fromPortId, toPortId, lossKey, transmit, receive: true, whenUnpowered });

/** A way with a receive amplifier in it: keys of its gain and noise figure. */
export const amplified = (through: Through, gainKey: string, noiseFigureKey: string): Through => ({
  ...through,
  gainKey,
  noiseFigureKey,
});

/** One inline device of the catalogue. */
export interface Device {
  readonly id: string;
  readonly deviceClass: DeviceClass;
  readonly name: string;
  readonly description: string;
  readonly ports: readonly Port[];
  readonly throughs: readonly Through[];
  readonly figures?: Readonly<Record<string, Figure>>;
  readonly lossTables?: Readonly<Record<string, LossTable>>;
  readonly transmitRated?: boolean;
  readonly position?: number;
}

/** The part; it needs a supply when it has a supply port. */
export function device(row: Device): PartOf<'inline'> {
  const needsSupply = row.ports.some((port) => port.medium === 'dc');
  return {
    id: row.id,
    kind: 'inline',
    deviceClass: row.deviceClass,
    name: row.name,
    description: row.description,
    ports: [...row.ports],
    throughs: [...row.throughs],
    figures: { ...row.figures },
    lossTables: { ...row.lossTables },
    traits: { needsSupply, transmitRated: row.transmitRated ?? true, position: row.position ?? null },
  };
}
