import { copperOhmPerKm, voltageDropV } from '../power/drop.ts';
import { awgAreaMm2 } from '../units/format.ts';
import type { Given, Sum } from './types.ts';

const voltDropSum: Sum = {
  id: 'volt-drop',
  title: 'Voltage lost in a pair of wires, out and back',
  parameters: [
    { key: 'amps', label: 'current', unit: 'A', kind: 'number', min: 0, max: 1000, fallback: 5.5, example: '5.5' },
    { key: 'm', label: 'length one way', unit: 'm', kind: 'number', min: 0, max: 500, example: '7.5' },
    { key: 'mm2', label: 'conductor area', unit: 'mm²', kind: 'number', min: 0.1, max: 500, example: '4' },
    { key: 'awg', label: 'conductor size, 20 to 1 or 1/0 to 4/0', unit: 'AWG', kind: 'text', example: '10' },
    {
      key: 'volts',
      label: 'supply voltage',
      unit: 'V',
      kind: 'number',
      min: 1,
      max: 1000,
      fallback: 12.6,
      example: '12.6',
    },
  ],
  oneOf: ['mm2', 'awg'],
  source: 'Ohm’s law, copper 0.0175 Ω·mm²/m (warm wire, common practice); AWG areas by ASTM B258, from memory',
  reckon: (given) => {
    const areaMm2 = areaOf(given);
    const ohmPerKm = copperOhmPerKm(areaMm2);
    const dropV = voltageDropV(given.number('amps'), given.number('m'), ohmPerKm);
    return [
      { key: 'dropV', label: 'voltage lost', value: dropV, unit: 'V', digits: 2 },
      {
        key: 'dropPercent',
        label: 'of the supply',
        value: (100 * dropV) / given.number('volts'),
        unit: '%',
        digits: 1,
      },
      { key: 'areaMm2', label: 'area', value: areaMm2, unit: 'mm²', digits: 2 },
      { key: 'ohmPerKm', label: 'resistance of one core', value: ohmPerKm, unit: 'Ω/km', digits: 2 },
    ];
  },
};

function areaOf(given: Given): number {
  if (given.has('mm2')) return given.number('mm2');
  const text = given.text('awg').trim();
  const noughts = /^([1-4])\/0$/.exec(text);
  if (noughts) return awgAreaMm2(1 - Number(noughts[1]));
  const size = /^\d{1,2}$/.test(text) ? Number(text) : Number.NaN;
  if (size >= 1 && size <= 20) return awgAreaMm2(size);
  throw new RangeError(`awg=${text} must be a size from 20 to 1 or from 1/0 to 4/0, e.g. awg=10.`);
}

export const WIRE_SUMS: readonly Sum[] = [voltDropSum];
