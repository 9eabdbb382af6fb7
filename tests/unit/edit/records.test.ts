import { describe, expect, it } from 'vitest';
import {
  keepAsAlternative,
  removeAlternative,
  setAlternative,
  swapAlternative,
} from '../../../core/edit/alternatives.ts';
import { clearFindingOverride, isAbout, overrideFinding } from '../../../core/edit/findings.ts';
import { addMeasurement, removeMeasurement, setMeasurement } from '../../../core/edit/measurements.ts';
import { setParticulars } from '../../../core/edit/particulars.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import { addStation, removeStation, setSettings, setStation } from '../../../core/edit/stations.ts';
import type { Project } from '../../../core/model/project.ts';
import { smallBoat } from '../document/boat.ts';
import { byId, expectSound, frozen, last, refusal } from './support.ts';

const boat = (): Project => frozen(smallBoat());

describe('stations and settings', () => {
  it('are added, changed and removed', () => {
    const { id: _id, ...like } = byId(boat().stations, 'like-yacht');
    const added = addStation(boat(), { ...like, name: 'Club launch' });
    expect(last(added.stations)).toMatchObject({ id: 'station-1', name: 'Club launch' });
    expect(byId(setStation(added, 'station-1', { antennaHeightM: 4 }).stations, 'station-1').antennaHeightM).toBe(4);
    expect(removeStation(added, 'station-1').stations).toEqual(boat().stations);
    expectSound(added);
    expect(refusal(() => setStation(boat(), 'like-yacht', { antennaHeightM: 0 }))).toBe(
      'A like yacht: Antenna height is 0 m; it must be above 0 m. Put in a value above 0 and up to 5000 m.',
    );
    expect(refusal(() => removeStation(boat(), 'x'))).toBe('There is no station "x" in this project.');
  });

  it('limits keep inside their range', () => {
    expect(setSettings(boat(), { horizonRule: 'trade-2.25' }).settings.horizonRule).toBe('trade-2.25');
    expect(refusal(() => setSettings(boat(), { feederLossLimitDb: 0 }))).toBe(
      'Settings: Feeder loss limit is 0 dB; it must be above 0 dB. Put in a value above 0 and up to 20 dB.',
    );
    const before = boat();
    expect(setSettings(before, { voltageDropLimitPercent: 3 })).toBe(before);
  });
});

describe('measurements', () => {
  const vswr = {
    subject: { kind: 'item', id: 'vhf' },
    kind: 'vswr',
    value: 1.2,
    frequencyMhz: 156.8,
    date: null,
  } as const;

  it('are added, changed and removed', () => {
    const added = addMeasurement(boat(), vswr);
    expect(last(added.measurements)).toMatchObject({ id: 'measurement-1', value: 1.2, instrument: '', note: '' });
    expectSound(added);
    expect(last(setMeasurement(added, 'measurement-1', { value: 1.5 }).measurements).value).toBe(1.5);
    expect(removeMeasurement(added, 'measurement-1').measurements).toEqual([]);
  });

  it('are refused when no meter shows them or their subject is not there', () => {
    expect(refusal(() => addMeasurement(boat(), { ...vswr, value: 0.5 }))).toBe(
      'A measured value of 0.5 cannot be right for "vswr": put in a value from 1 to 1000.',
    );
    expect(refusal(() => addMeasurement(boat(), { ...vswr, subject: { kind: 'run', id: 'x' } }))).toBe(
      'There is no run "x" to have been measured.',
    );
    expect(refusal(() => addMeasurement(boat(), { ...vswr, value: Number.NaN }))).toBe(
      'Measurement: Value is not a number. Put in a number.',
    );
  });
});

describe('overruled findings', () => {
  it('keep their reason until cleared', () => {
    const once = overrideFinding(boat(), 'rule:vhf', ' owner knows ', 'M.');
    expect(once.findingOverrides).toEqual([{ findingKey: 'rule:vhf', reason: 'owner knows', by: 'M.' }]);
    const twice = overrideFinding(once, 'rule:vhf', 'tested');
    expect(twice.findingOverrides).toEqual([{ findingKey: 'rule:vhf', reason: 'tested', by: '' }]);
    expectSound(twice);
    expect(clearFindingOverride(twice, 'rule:vhf').findingOverrides).toEqual([]);
    expect(clearFindingOverride(twice, 'other')).toBe(twice);
  });

  it('need a reason', () => {
    expect(refusal(() => overrideFinding(boat(), 'rule:vhf', '  '))).toBe(
      'Overruling a finding needs a reason: it is printed on the install sheet beside the finding.',
    );
  });

  it('are about the ids in their key, whole', () => {
    expect(isAbout('rule-item-1:item-12,run-3', 'item-1')).toBe(false);
    expect(isAbout('rule:item-12,run-3', 'run-3')).toBe(true);
  });
});

describe('alternatives', () => {
  it('are kept, and swapping twice changes nothing', () => {
    const noted = setParticulars(boat(), { layoutNote: 'spring' });
    const kept = keepAsAlternative(noted, 'Refit');
    expect(last(kept.alternatives)).toMatchObject({ id: 'layout-1', name: 'Refit', note: 'spring' });
    expect(last(kept.alternatives).items).toBe(kept.items);
    const edited = removeSubjects(kept, [{ kind: 'item', id: 'vhf' }]);
    const swapped = swapAlternative(edited, 'layout-1');
    expect(swapped.layoutName).toBe('Refit');
    expect(swapped.items).toBe(kept.items);
    expect(last(swapped.alternatives)).toMatchObject({ id: 'layout-1', name: 'As found', note: 'spring' });
    expect(last(swapped.alternatives).items).toBe(edited.items);
    expect(swapAlternative(swapped, 'layout-1')).toEqual(edited);
    expectSound(swapped);
  });

  it('without a note leave none behind', () => {
    const kept = keepAsAlternative(boat(), 'Refit');
    const swapped = swapAlternative(setParticulars(kept, { layoutNote: 'only here' }), 'layout-1');
    expect(swapped).not.toHaveProperty('layoutNote');
    expect(last(swapped.alternatives).note).toBe('only here');
  });

  it('take the records of what only they had with them when removed', () => {
    const kept = keepAsAlternative(boat(), 'Refit');
    const bare = removeSubjects(kept, [{ kind: 'item', id: 'breaker' }]);
    const subject = { kind: 'item', id: 'breaker' } as const;
    const measured = addMeasurement(bare, {
      subject,
      kind: 'supply-idle-v',
      value: 12.6,
      frequencyMhz: null,
      date: null,
    });
    const overruled = overrideFinding(measured, 'feed:breaker', 'seen');
    const after = removeAlternative(overruled, 'layout-1');
    expect(after.measurements).toEqual([]);
    expect(after.findingOverrides).toEqual([]);
    expectSound(after);
  });

  it('are renamed and removed', () => {
    const kept = keepAsAlternative(keepAsAlternative(boat(), 'A'), 'B');
    expect(last(setAlternative(kept, 'layout-2', { name: 'C', note: 'n' }).alternatives)).toMatchObject({
      name: 'C',
      note: 'n',
    });
    expect(removeAlternative(kept, 'layout-1').alternatives.map(({ name }) => name)).toEqual(['B']);
    expect(refusal(() => setAlternative(kept, 'layout-2', { name: 'A' }))).toBe(
      'There is already an alternative "A": choose another name.',
    );
    expect(refusal(() => keepAsAlternative(boat(), ''))).toBe(
      'The alternative needs a name, so that it can be told from the others.',
    );
  });
});
