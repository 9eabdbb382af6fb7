import { nextId } from '../model/ids.ts';
import { type Project, type Settings, type Station, settingsSchema, stationSchema } from '../model/project.ts';
import { type Change, changed, edited, entryOf, withEntry, withNewEntry, withoutEntries } from './change.ts';
import { requireValid } from './refused.ts';

/** Adds a far end to quote ranges to. @throws RefusedEdit for a value out of range */
export function addStation(project: Project, input: Omit<Station, 'id'>): Project {
  const station: Station = { ...input, id: nextId(project, 'station') };
  requireValid(stationSchema, station, station.name);
  return withNewEntry(project, 'stations', station);
}

/** Changes a station. @throws RefusedEdit for a value out of range */
export function setStation(project: Project, stationId: string, change: Omit<Change<Station>, 'id'>): Project {
  const station = entryOf(project, 'stations', stationId);
  return withEntry(project, 'stations', changed(station, change, stationSchema, station.name));
}

/** Takes a station out of the range table. */
export function removeStation(project: Project, stationId: string): Project {
  entryOf(project, 'stations', stationId);
  return withoutEntries(project, 'stations', new Set([stationId]));
}

/** Changes limits, the horizon rule or the margin list (replaced as a whole). @throws RefusedEdit for a value out of range */
export function setSettings(project: Project, change: Change<Settings>): Project {
  const settings = changed(project.settings, change, settingsSchema, 'Settings');
  if (settings === project.settings) return project;
  return edited(project, (draft) => {
    draft.settings = settings;
  });
}
