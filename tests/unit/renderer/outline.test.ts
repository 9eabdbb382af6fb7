import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../core/assess.ts';
import type { Finding } from '../../../core/audit/types.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Subject } from '../../../core/model/project.ts';
import type { MatrixRow, ServiceState } from '../../../core/redundancy/types.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { eventSentence } from '../../../renderer/canvas/eventSentence.ts';
import { outlineSections } from '../../../renderer/outline/sections.ts';
import { itemSentence, runSentence, selectionSentence } from '../../../renderer/outline/sentences.ts';
import { partGroups } from '../../../renderer/parts/partGroups.ts';
import { smallProject, testPart } from './canvasFixture.ts';

const finding = (subject: Subject, overruled = false): Finding => ({
  key: `t:${subject.id}`,
  ruleId: 't',
  severity: 'B',
  mark: 'B1',
  title: '',
  subjects: [subject],
  measured: [],
  limit: [],
  authority: { name: '', strength: 'practice' },
  action: [],
  overruled: overruled ? { reason: 'r', by: '' } : null,
});
const lossOf = (
  runId: string,
  txPowerW: number,
  lossDb: number,
): Pick<PathBudget, 'elements' | 'runIds' | 'txPowerW'> => ({
  runIds: [runId],
  txPowerW,
  elements: [
    {
      kind: 'cable',
      label: '',
      subject: { kind: 'run', id: runId },
      lossDb,
      toleranceDb: 0,
      runningLossDb: lossDb,
      wattsIn: 25,
      wattsOut: 10,
      shareLostPercent: 60,
      basis: 'assumed',
      source: '',
      formula: '',
    },
  ],
});

const assessment = {
  // The stronger path counts: it is the one the drawing's label speaks of.
  paths: [lossOf('w', 2, 3.9), lossOf('w', 25, 3.571)],
  findings: [finding({ kind: 'item', id: 'vhf' }), finding({ kind: 'item', id: 'vhf' }, true)],
} as unknown as Assessment;
const told = { project: smallProject(), assessment, preferences: METRIC_PREFERENCES };

describe('the outline', () => {
  it('says each item in one sentence and counts only findings that stand', () => {
    const [vhf] = told.project.items;
    expect(vhf && itemSentence(told, vhf)).toBe('VHF-1, Test VHF at x 8.0, z 1.0, 1 finding');
  });

  it('says each run with its ends, length and loss, in the reader’s units', () => {
    const [run] = told.project.runs;
    expect(run && runSentence(told, run)).toBe('W01 Test coax, A1 to VHF-1, 15.1 m, 3.57 dB');
    const feet = { ...told, preferences: { ...METRIC_PREFERENCES, length: 'ft' as const, decimal: ',' as const } };
    expect(run && runSentence(feet, run)).toBe('W01 Test coax, A1 to VHF-1, 49,6 ft, 3,57 dB');
  });

  it('mirrors everything on the drawing, numbered as its balloons, and says what to do where there is nothing', () => {
    const sections = outlineSections(told);
    expect(sections.map(({ name, entries }) => `${name} ${entries.length}`)).toEqual([
      'Items 3',
      'Cable runs 1',
      'DC feeds 0',
      'Data links 0',
      'Places 2',
    ]);
    expect(sections[0]?.entries[2]?.text).toMatch(/^3 VHF-2,/);
    for (const { empty } of sections) expect(empty.length).toBeGreaterThan(10);
  });

  it('sums a selection up', () => {
    expect(selectionSentence(told, [])).toBe('');
    expect(selectionSentence(told, [{ kind: 'place', id: 'table' }])).toBe('Chart table');
    const two = [
      { kind: 'item', id: 'vhf' },
      { kind: 'run', id: 'w' },
    ] as const;
    expect(selectionSentence(told, two)).toBe('2 selected');
  });
});

describe('the banner of a failure', () => {
  const state = (serviceId: ServiceState['serviceId'], grade: ServiceState['grade']): ServiceState => ({
    serviceId,
    grade,
    reason: '',
    liveWayIds: [],
  });
  const row = (kind: MatrixRow['event']['kind'], states: ServiceState[]): MatrixRow => ({
    event: { id: kind, label: kind, kind, downIds: [], note: '' },
    states,
  });
  const intact = row('none', [state('voice-fixed', 'full'), state('ais-transmit', 'lost'), state('beacon', 'reduced')]);

  it('counts only what the failure itself took', () => {
    const event = row('mast', [
      state('voice-fixed', 'reduced'),
      state('ais-transmit', 'lost'),
      state('beacon', 'lost'),
    ]);
    expect(eventSentence({ matrix: [intact, event] }, event)).toBe('1 service lost, 1 reduced.');
  });

  it('says so when nothing is lost', () => {
    const event = row('device', intact.states as ServiceState[]);
    expect(eventSentence({ matrix: [intact, event] }, event)).toBe('No service is lost or reduced by it.');
  });
});

describe('the Parts list', () => {
  const parts = ['t-vhf', 't-whip', 't-joint', 't-coax'].map(testPart);

  it('groups by kind, own parts first, and leaves cable to the runs', () => {
    const groups = partGroups(parts, [testPart('t-vhf')], '');
    expect(groups.map(({ name, parts: list }) => `${name} ${list.length}`)).toEqual([
      'Your own parts 1',
      'Radios 1',
      'Antennas 1',
      'In the feeder 1',
    ]);
  });

  it('finds by every word, in name, description or kind', () => {
    const found = (search: string) => partGroups(parts, [], search).flatMap((group) => group.parts.map(({ id }) => id));
    expect(found('WHIP masthead')).toEqual(['t-whip']);
    expect(found('radios')).toEqual(['t-vhf']);
    expect(found('whip radio')).toEqual([]);
  });
});
