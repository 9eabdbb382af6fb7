import { isKnownSubject } from '../document/subjects.ts';
import { nextId } from '../model/ids.ts';
import { shown } from '../model/issues.ts';
import { type Measurement, measurementSchema, type Project } from '../model/project.ts';
import { measurementRange } from '../model/ranges.ts';
import { type Change, changed, entryOf, withEntry, withNewEntry, withoutEntries } from './change.ts';
import { RefusedEdit, requireValid } from './refused.ts';

export type NewMeasurement = Omit<Measurement, 'id' | 'instrument' | 'note'> &
  Partial<Pick<Measurement, 'instrument' | 'note'>>;

/** Writes down an as-built value. @throws RefusedEdit for a value out of range or a subject that is not there */
export function addMeasurement(project: Project, input: NewMeasurement): Project {
  const measurement: Measurement = { instrument: '', note: '', ...input, id: nextId(project, 'measurement') };
  requireValid(measurementSchema, measurement, 'Measurement');
  requireSense(project, measurement);
  return withNewEntry(project, 'measurements', measurement);
}

/** Changes a measurement. @throws RefusedEdit as `addMeasurement` */
export function setMeasurement(
  project: Project,
  measurementId: string,
  change: Omit<Change<Measurement>, 'id'>,
): Project {
  const known = entryOf(project, 'measurements', measurementId);
  const measurement = changed(known, change, measurementSchema, 'Measurement');
  requireSense(project, measurement);
  return withEntry(project, 'measurements', measurement);
}

/** Takes a measurement out. */
export function removeMeasurement(project: Project, measurementId: string): Project {
  entryOf(project, 'measurements', measurementId);
  return withoutEntries(project, 'measurements', new Set([measurementId]));
}

function requireSense(project: Project, measurement: Measurement): void {
  const { min, max } = measurementRange(measurement.kind);
  if (measurement.value < min || measurement.value > max) {
    throw new RefusedEdit(
      `A measured value of ${shown(measurement.value)} cannot be right for "${measurement.kind}": put in a value from ${min} to ${max}.`,
    );
  }
  if (!isKnownSubject(project, measurement.subject)) {
    throw new RefusedEdit(`There is no ${measurement.subject.kind} "${measurement.subject.id}" to have been measured.`);
  }
}
