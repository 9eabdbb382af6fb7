import type { Run } from '../../model/project.ts';
import { stands } from '../../redundancy/build.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, itemsOf, listInWords, runSubject } from '../rule.ts';

export const duplicateLabel: Rule = {
  id: 'duplicate-label',
  summary: 'Two cables carry the same label.',
  severity: 'C',
  authority: AUTHORITIES.labels,
  check: (input) => {
    const byLabel = new Map<string, Run[]>();
    for (const run of input.project.runs) {
      if (!stands(run)) continue;
      const label = run.labelText ?? run.number;
      const known = byLabel.get(label);
      if (known) known.push(run);
      else byLabel.set(label, [run]);
    }
    return [...byLabel].flatMap(([label, runs]) => (runs.length > 1 ? [labelRemark(label, runs)] : []));
  },
};

function labelRemark(label: string, runs: readonly Run[]): Remark {
  return {
    subjects: runs.map((run) => runSubject(run.id)),
    title: `Label ${label} is on ${runs.length} cables`,
    measured: [`${label} is found on ${listInWords(runs.map((run) => run.number))}.`],
    limit: ['One number per cable, the same at both ends.'],
    action: ['Trace both cables and label them anew; correct the drawing.'],
  };
}

export const undatedRecord: Rule = {
  id: 'undated-record',
  summary: 'A reading handed over has no date, or an RF reading no frequency.',
  severity: 'C',
  authority: AUTHORITIES.records,
  check: (input) => {
    const undated = input.project.measurements.filter(
      ({ kind, date, frequencyMhz }) => date === null || (frequencyMhz === null && !kind.startsWith('supply')),
    );
    if (undated.length === 0) return [];
    const subjects = new Map(undated.map(({ subject }) => [`${subject.kind}:${subject.id}`, subject]));
    return [
      {
        subjects: [...subjects.values()],
        title: 'Readings without date or frequency',
        measured: [
          q(undated.length, 'count'),
          undated.length === 1 ? ' reading' : ' readings',
          ' cannot be compared with anything.',
        ],
        limit: ['Date, instrument and frequency with every reading.'],
        action: ['Repeat the readings and record them in full; next year’s are only worth what these are.'],
      },
    ];
  },
};

export const unknownPart: Rule = {
  id: 'unknown-part',
  summary: 'An item, cable or conductor is of a part this program does not know.',
  severity: 'B',
  authority: AUTHORITIES.completeness,
  check: (input) => [...unknownItems(input), ...unknownCables(input)],
};

function unknownItems(input: AuditInput): readonly Remark[] {
  return input.project.items
    .filter((item) => stands(item) && !input.index.effective.has(item.id))
    .map((item) => ({
      subjects: [itemSubject(item.id)],
      title: `${item.tag} is of an unknown part`,
      measured: [`No part ${item.partId} in the catalogue or in this project.`],
      limit: ['Every item has a part with figures and a source.'],
      action: [
        'Choose a part for it, or add one of your own with its maker’s figures. Until then nothing about it is computed.',
      ],
    }));
}

function unknownCables(input: AuditInput): readonly Remark[] {
  const unknown = (id: string): boolean => !input.index.parts.has(id);
  const runs = input.project.runs.filter((run) => stands(run) && unknown(run.cableId));
  const feeds = input.project.feeds.filter((feed) => stands(feed) && unknown(feed.conductorId));
  const all = [
    ...runs.map((run) => ({ subject: runSubject(run.id), number: run.number, id: run.cableId })),
    ...feeds.map((feed) => ({
      subject: { kind: 'feed', id: feed.id } as const,
      number: feed.number,
      id: feed.conductorId,
    })),
  ];
  return all.map(({ subject, number, id }) => ({
    subjects: [subject],
    title: `${number} is of an unknown cable`,
    measured: [`No part ${id} in the catalogue or in this project.`],
    limit: ['Every cable has a part with figures and a source.'],
    action: ['Choose its type, or add one of your own. Until then its loss or drop is not computed.'],
  }));
}

export const setUnconnected: Rule = {
  id: 'set-unconnected',
  summary: 'A transmitter is connected to no antenna.',
  severity: 'C',
  authority: AUTHORITIES.completeness,
  check: (input) => {
    const connected = new Set(input.paths.filter((path) => path.service !== 'gnss').map((path) => path.radioId));
    return itemsOf(input, 'radio')
      .filter(
        ([item, part]) => part.figures.txPowerW.value > 0 && !part.traits.integralAntenna && !connected.has(item.id),
      )
      .map(([item]) => ({
        subjects: [itemSubject(item.id)],
        title: `${item.tag} has no antenna`,
        measured: [`No run leads from ${item.tag} to an antenna it may use.`],
        limit: ['Every transmitter has its antenna.'],
        action: ['Draw its run, or take the set out. Never transmit without an antenna or a dummy load.'],
      }));
  },
};
