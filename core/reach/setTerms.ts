import type { Figure } from '../model/figure.ts';
import type { PartOf } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import { powerToleranceDb, wattsToDbm } from '../rf/decibels.ts';
import { q } from '../units/quantity.ts';
import { lossTerm, type Term } from './terms.ts';
import type { TrialState } from './types.ts';

type PowerFigures = PartOf<'radio'>['figures'] | PartOf<'standalone'>['figures'];

/**
 * The power a set sends with, by the setting; null where it does not send.
 * @param fullW what it sends at full power on this path
 */
export function powerOf(figures: PowerFigures, fullW: number | null, { power }: TrialState): Figure | null {
  if (fullW === null || fullW <= 0) return null;
  const { txPowerW, lowTxPowerW } = figures;
  const known = [
    txPowerW,
    ...('homingPowerW' in figures && figures.homingPowerW ? [figures.homingPowerW] : []),
    ...('vhfTxPowerW' in figures && figures.vhfTxPowerW ? [figures.vhfTxPowerW] : []),
  ];
  const full = known.find(({ value }) => value === fullW) ?? { ...txPowerW, value: fullW };
  // The low setting is that of the main service; it never raises the power.
  const isLow = power === 'low' && full === txPowerW && lowTxPowerW && lowTxPowerW.value > 0;
  return isLow && lowTxPowerW.value < fullW ? lowTxPowerW : full;
}

export function powerTerm(item: Item, power: Figure, state: TrialState): Term {
  return {
    key: 'power',
    value: wattsToDbm(power.value),
    unit: 'dBm',
    toleranceDb: powerToleranceDb(power.value, power.tolerance),
    text: () => ({
      label: [`${item.tag}, transmit power`],
      subject: { kind: 'item', id: item.id },
      basis: power.basis,
      formula: ['10 log ', q(power.value, 'W'), ` + 30, ${state.power === 'low' ? 'low' : 'full'} power`],
      source: power.source,
    }),
  };
}

export function sensitivityTerm(item: Item, sensitivity: Figure): Term {
  return {
    key: 'sensitivity',
    value: 0 - sensitivity.value,
    unit: 'dBm',
    toleranceDb: sensitivity.tolerance,
    text: () => ({
      label: [`${item.tag}, sensitivity`],
      subject: { kind: 'item', id: item.id },
      basis: sensitivity.basis,
      formula: ['subtracted: it hears down to ', q(sensitivity.value, 'dBm')],
      source: sensitivity.source,
    }),
  };
}

/**
 * What a Wi-Fi set must be turned down by: its power is stated as what may be radiated, so what the antenna gains beyond the
 * loss of the feeder has to be taken back at the set.
 * @param netGainDb gain of the antenna less loss of the feeder
 */
export function turnedDownTerm(netGainDb: number): Term {
  return lossTerm('turned-down', Math.max(0, netGainDb), 0, () => ({
    label: ['Turned down to the e.i.r.p. allowed'],
    subject: null,
    basis: 'assumed',
    formula: ['antenna gain less feeder loss, ', q(netGainDb, 'dB'), ', taken back at the set'],
    source: 'the stated power is the e.i.r.p. allowed on this band (EN 300 328, from memory); your licence rules',
  }));
}
