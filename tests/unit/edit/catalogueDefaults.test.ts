import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../core/catalogue/catalogue.ts';
import { partProblems } from '../../../core/document/overrides.ts';
import { insertIntoRun } from '../../../core/edit/inline.ts';
import { addItem } from '../../../core/edit/items.ts';
import { addRun } from '../../../core/edit/runs.ts';
import { newProject } from '../../../core/model/defaults.ts';
import { isPlaceable } from '../../../core/model/placeable.ts';
import type { Project } from '../../../core/model/project.ts';
import { expectSound, last } from './support.ts';

const empty = (): Project =>
  newProject({ name: 'T', kind: 'ketch', loaM: 12, beamM: 3.8, draughtM: 1.9, airDraughtM: 17, freeboardM: 1.1 });

function withItems(...partIds: string[]): Project {
  return partIds.reduce((project, partId) => addItem(project, { partId }), empty());
}
const portOn = (project: Project, index: number, portId: string) => ({
  itemId: project.items[index]?.id ?? '',
  portId,
});

/** The cable and plugs a run between the first two items gets. */
function chosen(project: Project, fromPort: string, toPort: string) {
  const after = addRun(project, { from: portOn(project, 0, fromPort), to: portOn(project, 1, toPort) });
  expectSound(after);
  const { cableId, connectorFromId, connectorToId } = last(after.runs);
  return [cableId, connectorFromId, connectorToId];
}

describe('with the parts of the catalogue', () => {
  it('every part is sound in itself and, if placed, loads', () => {
    for (const part of CATALOGUE) expect(partProblems(part)).toEqual([]);
    expectSound(CATALOGUE.filter(isPlaceable).reduce((project, { id }) => addItem(project, { partId: id }), empty()));
  });

  it('a run starts with the cable that is usual for its band', () => {
    expect(chosen(withItems('antenna-vhf-whip-3db', 'radio-vhf-fixed-25w-dsc'), 'feed', 'rf')).toEqual([
      'coax-400-class',
      'connector-uhf',
      'connector-uhf',
    ]);
    expect(chosen(withItems('antenna-gnss-active', 'radio-ais-b-so'), 'feed', 'gnss')).toEqual([
      'coax-240-class',
      'connector-tnc',
      'connector-tnc',
    ]);
    expect(chosen(withItems('tuner-hf', 'antenna-hf-wire'), 'antenna', 'feed')[0]).toBe('lead-in-hv-single');
    expect(chosen(withItems('radio-mf-hf-150w', 'tuner-hf'), 'rf', 'set')[0]).toMatch(/^coax-/);
  });

  it.each([
    ['splitter-active-vhf-ais', 'antenna', 'vhf'],
    ['diplexer-vhf-fm', 'antenna', 'vhf'],
    ['switch-coax-2-way', 'a', 'set'],
    ['preamplifier-vhf-receive', 'antenna', 'set'],
    ['joint-uhf-pair', 'a', 'b'],
  ])('%s goes into a run with its antenna socket to the antenna', (partId, antennaPort, radioPort) => {
    const project = withItems('antenna-vhf-whip-3db', 'radio-vhf-fixed-25w-dsc');
    const run = addRun(project, { from: portOn(project, 0, 'feed'), to: portOn(project, 1, 'rf') });
    const after = insertIntoRun(run, last(run.runs).id, partId);
    expect([after.runs[0]?.to.portId, after.runs[1]?.from.portId]).toEqual([antennaPort, radioPort]);
    expectSound(after);
  });
});
