import * as coupling from '../../../core/siting/coupling.ts';
import { stackIsolation, stackValidity } from '../../../core/siting/stackIsolation.ts';
import { type Sum, sum } from './sum.ts';

const STACKS = { frequencyMhz: 156.8, sideM: 1, upM: 0.5, elements: 2, pitchWavelengths: 0.75, firstHeightM: 15 };

const stacks = ({ elements, pitchWavelengths, firstHeightM, ...pair }: Readonly<typeof STACKS>) => {
  const antenna = { elements, pitchWavelengths };
  return { ...pair, first: antenna, second: antenna, over: { water: 'sea', firstHeightM } } as const;
};

export const SITING_SUMS: readonly Sum[] = [
  sum('halfWaveIsolation', { frequencyMhz: 156.8, sideM: 1, upM: 0.5 }, (v) => coupling.halfWaveIsolation(v)),
  sum('mutualImpedanceOhm', { sideWavelengths: 0.5, upWavelengths: 0.2 }, (v) =>
    coupling.mutualImpedanceOhm(v.sideWavelengths, v.upWavelengths),
  ),
  sum('scattering', { r1Ohm: 50, r2Ohm: 70 }, (v) =>
    coupling.scattering({ re: 73, im: 10 }, { re: 60, im: -5 }, { re: 12, im: -8 }, v.r1Ohm, v.r2Ohm),
  ),
  sum('stackIsolation', STACKS, (v) => stackIsolation(stacks(v))),
  sum('stackValidity', { frequencyMhz: 156.8, sideM: 1, upM: 0.5, elements: 2, pitchWavelengths: 0.75 }, (v) =>
    stackValidity(stacks({ ...STACKS, ...v })),
  ),
  sum('sideBySideIsolationDb', { spacingWavelengths: 1 }, (v) => coupling.sideBySideIsolationDb(v.spacingWavelengths)),
  sum('collinearIsolationDb', { spacingWavelengths: 1 }, (v) => coupling.collinearIsolationDb(v.spacingWavelengths)),
];
