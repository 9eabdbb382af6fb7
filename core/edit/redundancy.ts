import { nextId } from '../model/ids.ts';
import {
  type Chance,
  chanceSchema,
  type OwnEvent,
  ownEventSchema,
  type Project,
  type RedundancySettings,
  redundancySettingsSchema,
} from '../model/project.ts';
import { type Change, changed } from './change.ts';
import { RefusedEdit, requireValid } from './refused.ts';
import { setSettings } from './stations.ts';

/** Changes what the failure study is made for; lists are replaced as a whole. @throws RefusedEdit for a value out of range */
export function setRedundancy(project: Project, change: Change<RedundancySettings>): Project {
  const { redundancy } = project.settings;
  return setSettings(project, {
    redundancy: changed(redundancy, change, redundancySettingsSchema, 'Redundancy'),
  });
}

/** Adds a failure of the user's own. @throws RefusedEdit for one without a name or without anything that goes down */
export function addOwnEvent(project: Project, input: Omit<OwnEvent, 'id'>): Project {
  const { events } = project.settings.redundancy;
  const event: OwnEvent = { ...input, id: nextId(project, 'event') };
  requireOwnEvent(event);
  return setRedundancy(project, { events: [...events, event] });
}

/** Changes a failure of the user's own. @throws RefusedEdit as `addOwnEvent`, or when there is no such event */
export function setOwnEvent(project: Project, eventId: string, change: Omit<Change<OwnEvent>, 'id'>): Project {
  const { events } = project.settings.redundancy;
  const event = events.find(({ id }) => id === eventId);
  if (!event) throw new RefusedEdit(`There is no failure "${eventId}" of your own in this project.`);
  const after = { ...event, ...change } as OwnEvent;
  requireOwnEvent(after);
  return setRedundancy(project, { events: events.map((each) => (each === event ? after : each)) });
}

/** Takes a failure of the user's own away, and what was said of it: the next one may get its id. */
export function removeOwnEvent(project: Project, eventId: string): Project {
  const { events, excludedEventIds, chances } = project.settings.redundancy;
  const inMatrix = `own:${eventId}`;
  const { [inMatrix]: _gone, ...others } = chances;
  return setRedundancy(project, {
    events: events.filter(({ id }) => id !== eventId),
    excludedEventIds: excludedEventIds.filter((id) => id !== inMatrix),
    chances: others,
  });
}

/** Leaves an event out of matrix and trees, or takes it in again. */
export function setEventExcluded(project: Project, eventId: string, isExcluded: boolean): Project {
  const { excludedEventIds } = project.settings.redundancy;
  if (excludedEventIds.includes(eventId) === isExcluded) return project;
  return setRedundancy(project, {
    excludedEventIds: isExcluded
      ? [...excludedEventIds, eventId]
      : excludedEventIds.filter((known) => known !== eventId),
  });
}

/**
 * States the chance of a component, an event or a kind of either, in place of the assumption; null goes back to it.
 * @param key the id or the kind, as in `RedundancySettings.chances`
 * @throws RefusedEdit for a chance outside 0 to 100 per cent, or an interval that does not hold its middle
 */
export function setChance(project: Project, key: string, chance: Chance | null): Project {
  const { [key]: _old, ...others } = project.settings.redundancy.chances;
  if (chance === null) return setRedundancy(project, { chances: others });
  requireValid(chanceSchema, chance, 'Chance of failure');
  const { lowPercent, percent, highPercent } = chance;
  if (!(lowPercent <= percent && percent <= highPercent)) {
    throw new RefusedEdit(
      `Chance of failure: ${percent} % must lie between the least, ${lowPercent} %, and the most, ${highPercent} %.`,
    );
  }
  return setRedundancy(project, { chances: { ...others, [key]: chance } });
}

function requireOwnEvent(event: OwnEvent): void {
  const name = event.label.trim() === '' ? 'A failure of your own' : event.label;
  if (event.label.trim() === '') throw new RefusedEdit(`${name} needs a name: it stands in the matrix.`);
  if (event.hits.length === 0) throw new RefusedEdit(`${name} takes nothing down: choose at least one thing it hits.`);
  requireValid(ownEventSchema, event, name);
}
