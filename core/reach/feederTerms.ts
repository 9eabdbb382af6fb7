import { countedLossDb } from '../links/countedLoss.ts';
import type { PathBudget, PathElement } from '../links/types.ts';
import { cascade } from '../rf/cascade.ts';
import { combineTolerances } from '../rf/decibels.ts';
import { q } from '../units/quantity.ts';
import { lossTerm, type Term } from './terms.ts';

/** What lies between radio and antenna, in the order of each direction. */
export interface Chain {
  readonly transmit: readonly Term[];
  readonly receive: readonly Term[];
}

/**
 * The feeder in both directions. In transmission each element takes its loss. In reception a passive chain takes the same,
 * for its noise figure is its loss; what a receive amplifier gives back is a line of its own, so that the sum is the
 * noise figure of chain and receiver against that of the receiver alone (Friis).
 */
export function chainOf(path: PathBudget, receiverNoiseFigureDb: number): Chain {
  const transmit =
    path.measuredLossDb === null ? path.elements.map(elementTerm) : measuredTerms(path, path.measuredLossDb);
  const amplified = path.elements.filter(({ amplifier }) => amplifier !== undefined);
  const amplifier = amplified.length > 0 ? [amplifierTerm(path, amplified, receiverNoiseFigureDb)] : [];
  return { transmit, receive: [...[...transmit].reverse(), ...amplifier] };
}

function elementTerm(element: PathElement, i: number): Term {
  const { lossDb, toleranceDb, label, subject, basis, formula, source } = element;
  return lossTerm(`element-${i + 1}`, lossDb, toleranceDb, () => ({
    label: [label],
    subject,
    basis,
    formula: [formula],
    source,
  }));
}

/** One line for the feeder as measured; the mismatch of the antenna, which no feeder test sees, stays. */
function measuredTerms(path: PathBudget, measuredLossDb: number): readonly Term[] {
  const feeder = path.elements.filter(({ kind }) => kind !== 'mismatch');
  const toleranceDb = combineTolerances(feeder.map((element) => element.toleranceDb));
  const computedDb = feeder.reduce((sum, { lossDb }) => sum + lossDb, 0);
  const measured = lossTerm('feeder-measured', measuredLossDb, toleranceDb, () => ({
    label: ['Feeder as measured'],
    subject: { kind: 'item', id: path.radioId },
    basis: 'measured',
    formula: ['counts before the computed ', q(computedDb, 'dB'), ', whose tolerance it keeps'],
    source: 'measurement on this boat',
  }));
  return [measured, ...path.elements.filter(({ kind }) => kind === 'mismatch').map(elementTerm)];
}

function amplifierTerm(path: PathBudget, amplified: readonly PathElement[], receiverNoiseFigureDb: number): Term {
  const { noiseFigureDb } = cascade([path.reception, { gainDb: 0, noiseFigureDb: receiverNoiseFigureDb }]);
  const spoiltDb = noiseFigureDb - receiverNoiseFigureDb;
  // At most what its own noise figure is uncertain by: nothing before it can make that count for more.
  const toleranceDb = combineTolerances(amplified.map(({ amplifier }) => amplifier?.noiseToleranceDb ?? 0));
  return {
    key: 'amplifier',
    value: path.lossDb - spoiltDb,
    unit: 'dB',
    toleranceDb,
    text: () => ({
      label: [`${amplified.map(({ label }) => label).join(', ')}: receive amplifier`],
      subject: amplified[0]?.subject ?? null,
      basis: 'computed',
      formula: [
        'chain and receiver ',
        q(noiseFigureDb, 'dB', 1),
        ' noise figure, receiver alone ',
        q(receiverNoiseFigureDb, 'dB', 1),
        `; the chain's loss of `,
        q(countedLossDb(path), 'dB'),
        ' is given back as far as the noise allows',
      ],
      source: 'noise figures in cascade (Friis)',
    }),
  };
}
