import { shown } from '../model/issues.ts';
import type { Project } from '../model/project.ts';
import { measurementRange } from '../model/ranges.ts';
import { boatProblems } from './boatChecks.ts';
import { checkLayout } from './layoutChecks.ts';
import { partProblems } from './overrides.ts';
import { checkPictures } from './pictureChecks.ts';
import { type IdList, quoted, Report } from './report.ts';
import { isKnownSubject } from './subjects.ts';

/**
 * Everything the schema cannot see: ids used twice, references to what is not there, ports that do not fit, loops, numbers
 * that contradict each other. Problems refuse the document; notes are told and the document is kept as it is.
 */
export function checkReferences(project: Project): Report {
  const report = new Report(project);
  checkIds(project, report);
  const areIdsUnique = report.problems.length === 0;
  report.refuseAll(['boat'], boatProblems(project.boat));
  checkParts(project, report);
  checkPlaces(project, report);
  // Layout checks look things up by id, which has no meaning while ids are used twice.
  if (areIdsUnique) {
    checkLayout(project, [], report);
    project.alternatives.forEach((alternative, index) => {
      const { items, runs, feeds, dataLinks } = alternative;
      checkLayout({ ...project, items, runs, feeds, dataLinks }, ['alternatives', index], report);
    });
  }
  checkMeasurements(project, report);
  checkFindingOverrides(project, report);
  checkPictures(project, report);
  return report;
}

function checkIds(project: Project, report: Report): void {
  const { boat } = project;
  const list = (path: readonly PropertyKey[], entries: IdList['entries']): IdList => ({ path, entries });
  report.uniqueIds([list(['boat', 'masts'], boat.masts), list(['boat', 'fittings'], boat.fittings)]);
  report.uniqueIds([list(['boat', 'compartments'], boat.compartments)]);
  report.uniqueIds([list(['places'], project.places)]);
  report.uniqueIds([list(['parts'], project.parts)]);
  report.uniqueIds([list(['stations'], project.stations)]);
  report.uniqueIds([list(['measurements'], project.measurements)]);
  report.uniqueIds([list(['settings', 'margin'], project.settings.margin)]);
  report.uniqueIds([list(['settings', 'redundancy', 'events'], project.settings.redundancy.events)]);
  report.uniqueIds([list(['alternatives'], project.alternatives)]);
  [project, ...project.alternatives].forEach((layout, index) => {
    const path = index === 0 ? [] : ['alternatives', index - 1];
    const keys = ['items', 'runs', 'feeds', 'dataLinks'] as const;
    report.uniqueIds(keys.map((key) => list([...path, key], layout[key])));
  });
}

function checkParts(project: Project, report: Report): void {
  project.parts.forEach((part, index) => {
    report.refuseAll(['parts', index], partProblems(part));
  });
}

function checkPlaces(project: Project, report: Report): void {
  const { masts, fittings, compartments } = project.boat;
  const structures = new Set([...masts, ...fittings].map(({ id }) => id));
  const spaces = new Set(compartments.map(({ id }) => id));
  project.places.forEach((place, index) => {
    if (place.structureId !== null && !structures.has(place.structureId)) {
      report.refuse(
        ['places', index, 'structureId'],
        `There is no mast or fitting "${place.structureId}".`,
        `Name one of ${quoted(structures)}, or put null for the hull.`,
      );
    }
    if (place.compartmentId !== null && !spaces.has(place.compartmentId)) {
      report.refuse(
        ['places', index, 'compartmentId'],
        `There is no compartment "${place.compartmentId}".`,
        `Name one of ${quoted(spaces)}, or put null for a place on deck or aloft.`,
      );
    }
  });
}

function checkMeasurements(project: Project, report: Report): void {
  project.measurements.forEach((measurement, index) => {
    const { subject, kind, value } = measurement;
    if (!isKnownSubject(project, subject)) {
      const mend =
        subject.kind === 'boat' ? 'The id of the boat is "boat".' : 'Correct the id, or take the measurement out.';
      report.refuse(
        ['measurements', index, 'subject'],
        `It is about the ${subject.kind} "${subject.id}", which is not in this file.`,
        mend,
      );
    }
    const { min, max } = measurementRange(kind);
    if (value < min || value > max) {
      report.refuse(
        ['measurements', index, 'value'],
        `The value is ${shown(value)}, which no meter shows for "${kind}".`,
        `Put in a value from ${min} to ${max}.`,
      );
    }
  });
}

function checkFindingOverrides(project: Project, report: Report): void {
  const seen = new Set<string>();
  project.findingOverrides.forEach(({ findingKey, reason }, index) => {
    if (seen.has(findingKey)) {
      report.refuse(
        ['findingOverrides', index],
        'This finding is overruled twice.',
        'Keep the one with the reason that holds.',
      );
    }
    seen.add(findingKey);
    if (reason.trim() === '') {
      report.refuse(
        ['findingOverrides', index, 'reason'],
        'The reason is blank.',
        'Write why the finding was overruled, or take the override out.',
      );
    }
  });
}
