import type { LossTable } from '../model/part.ts';

/**
 * Loss of a connector or device at a frequency, dB: linear in frequency between the rows on either side. Beyond the first
 * and last row that row's loss is held, so that a table of one row is a loss that does not depend on frequency; where a
 * part must not be used at all is said by its own band or `maxFrequencyMhz`, not by its table.
 * @throws RangeError when the frequency is not above 0 or the table has no rows
 */
export function tableLossDb(table: LossTable, frequencyMhz: number): number {
  if (!(frequencyMhz > 0 && Number.isFinite(frequencyMhz))) {
    throw new RangeError(`A frequency must be above 0 MHz, not ${frequencyMhz}.`);
  }
  let below: LossTable['rows'][number] | undefined;
  let above: LossTable['rows'][number] | undefined;
  for (const row of table.rows) {
    if (row.frequencyMhz <= frequencyMhz && (!below || row.frequencyMhz > below.frequencyMhz)) below = row;
    if (row.frequencyMhz >= frequencyMhz && (!above || row.frequencyMhz < above.frequencyMhz)) above = row;
  }
  if (below && above && below.frequencyMhz < above.frequencyMhz) {
    const share = (frequencyMhz - below.frequencyMhz) / (above.frequencyMhz - below.frequencyMhz);
    return below.lossDb + share * (above.lossDb - below.lossDb);
  }
  const end = below ?? above;
  if (!end) throw new RangeError('A loss table needs at least one row.');
  return end.lossDb;
}
