import type { HfBand, HfResult } from '../../../core/reach/types.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../../../core/units/constants.ts';
import { type Quantity, q, type RichText } from '../../../core/units/quantity.ts';
import { percent, watts } from '../pathLoss/figures.ts';

/** One step from the wire to the watts it radiates. */
export interface WhyStep {
  readonly name: string;
  readonly sum: RichText;
  readonly source: string;
}

const ohm = (value: number): Quantity => q(value, 'ohm', value < 10 ? 2 : 1);

/** Why the efficiency is what it is, step by step, in the order of the sum. */
export function efficiencySteps(result: HfResult, band: HfBand): readonly WhyStep[] {
  const { radiationOhm, reactanceOhm, coilOhm } = band;
  return radiationOhm === null || reactanceOhm === null || coilOhm === null
    ? [length(result, band), leastShare(result, band), ...radiated(band)]
    : [
        length(result, band),
        {
          name: 'Radiation',
          sum: ['40 tan²(πL/λ), times the square of the share that stands = ', ohm(radiationOhm)],
          source: 'textbook effective height, from memory; held to a wire-grid solver',
        },
        {
          name: 'Coil',
          sum: ['reactance ', q(reactanceOhm, 'ohm', 0), ' over a coil quality of 200 = ', ohm(coilOhm)],
          source: 'quality of a tuner’s coil, from memory',
        },
        {
          name: 'Ground',
          sum: ['earth, joints and hull = ', ohm(result.groundLossOhm)],
          source: 'figure of the antenna, or what its earth strap leads to',
        },
        {
          name: 'Efficiency',
          sum: [
            ohm(radiationOhm),
            ' / (',
            ohm(radiationOhm),
            ' + ',
            ohm(coilOhm),
            ' + ',
            ohm(result.groundLossOhm),
            ') = ',
            percent(100 * band.efficiency),
          ],
          source: 'the same current runs through all three',
        },
        ...radiated(band),
      ];
}

function length(result: HfResult, band: HfBand): WhyStep {
  const waveM = SPEED_OF_LIGHT_M_PER_S / (band.frequencyMhz * 1e6);
  return {
    name: 'Height',
    sum: [
      'wire and lead-in stand ',
      q(result.effectiveLengthM, 'm', 1),
      ' high; one wave is ',
      q(waveM, 'm', waveM < 30 ? 1 : 0),
      ' long',
    ],
    source: 'from the drawing',
  };
}

function leastShare(result: HfResult, band: HfBand): WhyStep {
  return {
    name: 'Efficiency',
    sum: [
      'the wire is longer than the closed forms hold for, over 0.35 of a wave; against ',
      ohm(result.groundLossOhm),
      ' of ground it radiates at least ',
      percent(100 * band.efficiency),
    ],
    source: 'least radiation resistance of a long wire; held to a wire-grid solver',
  };
}

function radiated(band: HfBand): readonly WhyStep[] {
  if (band.radiatedW === null || !(band.efficiency > 0)) return [];
  const footW = band.radiatedW / band.efficiency;
  const voltage: readonly WhyStep[] =
    band.insulatorPeakV === null
      ? []
      : [
          {
            name: 'Insulator',
            sum: ['at full power its foot stands at ', q(band.insulatorPeakV, 'V', 0), ' peak: it burns'],
            source: 'Ohm’s law on the same circuit',
          },
        ];
  return [
    {
      name: 'Radiated',
      sum: [
        watts(footW),
        ' arrive at its foot, ',
        q(band.feederLossDb, 'dB', 1),
        ' of feeder and tuner taken off, times the efficiency = ',
        watts(band.radiatedW),
      ],
      source: 'see Path loss',
    },
    ...voltage,
  ];
}
