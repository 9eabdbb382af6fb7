/** Units a shown quantity can have in core's own (SI and dB) terms. The screen may show them in the reader's units. */
export type Unit =
  | 'm'
  | 'mm'
  | 'km'
  | 'dB'
  | 'dBm'
  | 'dBi'
  | 'W'
  | 'V'
  | 'A'
  | 'Ah'
  | 'MHz'
  | 'mm2'
  | 'percent'
  | 'degree'
  | 'hour'
  | 'kn'
  | 'ohm'
  | 'ohm/km'
  | 'g/m'
  | 'ratio'
  | 'count';

export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
  /** Decimals to show; a default per unit is used when left out. */
  readonly digits?: number;
}

/** Text with quantities in it, so that units and the decimal mark are chosen where it is shown, not where it is written. */
export type RichText = readonly (string | Quantity)[];

/** Short form for a quantity inside rich text. */
export function q(value: number, unit: Unit, digits?: number): Quantity {
  return digits === undefined ? { value, unit } : { value, unit, digits };
}
