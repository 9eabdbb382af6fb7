import { halfWaveIsolation } from '../siting/coupling.ts';
import { number } from './parameters.ts';
import type { Sum } from './types.ts';

const isolationSum: Sum = {
  id: 'isolation',
  title: 'Isolation between two upright half-wave antennas of one boat',
  parameters: [
    { ...number('mhz', 'frequency', 'MHz', 30, 3000, '156.8'), fallback: 156.8 },
    number('side', 'distance sideways', 'm', 0, 200, '1.2'),
    { ...number('up', 'difference in height of their middles', 'm', 0, 200, '2'), fallback: 0 },
  ],
  source:
    'induced-EMF method with sinusoidal currents, free space, tried from 0.1 to 8 wavelengths; a mast between, other feeders and the sea are not in it',
  reckon: (given) => {
    const { isolationDb, wavelengths, validity } = halfWaveIsolation({
      frequencyMhz: given.number('mhz'),
      sideM: given.number('side'),
      upM: given.number('up'),
    });
    if (validity === 'near-field') {
      throw new RangeError(
        'side and up put the two within 0.1 wavelength, or end to end without a gap: there the method says nothing; move them apart.',
      );
    }
    return [
      { key: 'isolationDb', label: 'isolation', value: isolationDb, unit: 'dB', digits: 1 },
      { key: 'wavelengths', label: 'distance', value: wavelengths, unit: 'wavelengths', digits: 2 },
    ];
  },
};

export const COUPLING_SUMS: readonly Sum[] = [isolationSum];
