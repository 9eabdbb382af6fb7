import { indexProject } from '../../../core/catalogue/lookup.ts';
import { runLengthM } from '../../../core/links/route.ts';
import type { PathElement } from '../../../core/links/types.ts';
import type { Project, Subject } from '../../../core/model/project.ts';
import type { UnitPreferences } from '../../../core/units/preferences.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';

/** Length of the cable an element stands for, m; null for anything that is not a cable. */
export function elementLengthM(project: Project, element: PathElement): number | null {
  if (element.kind !== 'cable' || element.subject.kind !== 'run') return null;
  const run = indexProject(project).runs.get(element.subject.id);
  return run ? runLengthM(project, run) : null;
}

/** The sum behind an element in the reader's units: a cable by its length and loss per hundred, others as core says it. */
export function elementSum(
  project: Project,
  element: PathElement,
  frequencyMhz: number,
  preferences: UnitPreferences,
): RichText {
  const lengthM = elementLengthM(project, element);
  if (lengthM === null || lengthM <= 0 || element.lossDb <= 0) {
    return [preferences.decimal === ',' ? element.formula.replace(/(\d)\.(\d)/g, '$1,$2') : element.formula];
  }
  const hundredM = preferences.length === 'ft' ? 30.48 : 100;
  const per = preferences.length === 'ft' ? '/100 ft' : '/100 m';
  return [
    q(lengthM, 'm'),
    ' × ',
    q((element.lossDb * hundredM) / lengthM, 'dB', 1),
    `${per} at `,
    q(frequencyMhz, 'MHz', 1),
    ' = ',
    q(element.lossDb, 'dB'),
  ];
}

/** What an element does to the power, in words: for the sentence behind the number. */
export const KIND_WORDS: Readonly<Record<PathElement['kind'], string>> = {
  connector: 'Plug and socket: the step in the line and the contact.',
  cable: 'Attenuation of the cable: so many dB for every metre.',
  joint: 'A joint on the way: two plugs and what joins them.',
  device: 'What the signal goes through, as its maker states it.',
  mismatch: 'Power the antenna throws back because it is not the cable’s impedance.',
};

export const isSameSubject = (a: Subject, b: Subject): boolean => a.kind === b.kind && a.id === b.id;

/** An element with its number on the page and a key that stays the same while things are moved. */
export interface Numbered {
  readonly element: PathElement;
  readonly number: number;
  readonly key: string;
}

/** Elements in order, numbered from 1. */
export function numbered(elements: readonly PathElement[]): readonly Numbered[] {
  const seen = new Map<string, number>();
  return elements.map((element, index) => {
    const times = (seen.get(element.label) ?? 0) + 1;
    seen.set(element.label, times);
    return { element, number: index + 1, key: `${element.label} ${times}` };
  });
}
