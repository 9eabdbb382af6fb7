import { useMemo, useState } from 'react';
import type { Project } from '../../core/model/project.ts';
import type { RangeResult } from '../../core/reach/types.ts';
import { Choice } from '../app/Choice.tsx';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { useFormat } from '../ui/text.ts';
import { switchNote } from './pathLoss/paths.ts';
import { useFollowed } from './range/followed.ts';
import { groupName, groupsTouched, mainGroup, type RangeGroup, rangeGroups } from './range/groups.ts';
import { LevelChart } from './range/LevelChart.tsx';
import { MarginSection } from './range/MarginSection.tsx';
import { RangeTable } from './range/RangeTable.tsx';
import { SeaStrip } from './range/SeaStrip.tsx';
import { StationsSection } from './range/StationsSection.tsx';
import './range.css';

/** How far one radio reaches each other station: table, level against distance, and the sea between to scale. */
export function RangePanel() {
  const project = useApp(shownProject);
  const { ranges, paths } = useAssessment();
  const groups = useMemo(() => rangeGroups(ranges, paths), [ranges, paths]);
  const [id, choose] = useFollowed(
    groups.map((group) => group.id),
    (selection) => groupsTouched(groups, selection).map((group) => group.id),
    mainGroup(groups)?.id ?? null,
  );
  const group = groups.find((each) => each.id === id);
  return (
    <div className="panel range">
      {group ? (
        <GroupSections project={project} groups={groups} group={group} onChoose={choose} />
      ) : (
        <p className="empty">{whatNext(project)}</p>
      )}
      <MarginSection project={project} />
      <StationsSection project={project} />
    </div>
  );
}

function whatNext(project: Project): string {
  return project.stations.length === 0
    ? 'No station to reach yet. Add one below: a like yacht, a ship’s bridge or a coast station.'
    : 'No range yet. Place a VHF or AIS set and an antenna, and draw a cable between their sockets, or place a handheld; ' +
        'this page then shows how far it reaches.';
}

function GroupSections({
  project,
  groups,
  group,
  onChoose,
}: {
  project: Project;
  groups: readonly RangeGroup[];
  group: RangeGroup;
  onChoose: (id: string) => void;
}) {
  const { rich, quantity } = useFormat();
  const [stationId, setStationId] = useState<string | null>(null);
  const result = group.results.find((each) => each.stationId === stationId) ?? group.results[0];
  const measuredDb = group.path?.measuredLossDb ?? null;
  const options = groups.map((each) => {
    const note = each.path ? switchNote(project, each.path) : null;
    return { id: each.id, name: rich(groupName(project, each)), ...(note === null ? {} : { note }) };
  });
  return (
    <>
      <section className="panel-section">
        <Choice label="Radio" options={options} value={group.id} onChange={onChoose} />
        <p className="small soft">
          Over open sea, both ways, from {quantity(result?.ownHeightM ?? 0, 'm')} above the water
          {group.path === null ? '' : `, with ${quantity(group.path.lossDb, 'dB')} of predicted path loss`}.
        </p>
        {measuredDb === null ? null : (
          <p className="note">
            Reckoned with the feeder loss as measured, {quantity(measuredDb, 'dB')}, instead of the predicted figure.
          </p>
        )}
        <RangeTable project={project} group={group} chosenId={result?.stationId ?? null} onChoose={setStationId} />
        <Promises marginDb={result?.marginDb ?? 0} />
      </section>
      {result ? <StationSections project={project} result={result} /> : null}
    </>
  );
}

function Promises({ marginDb }: { marginDb: number }) {
  const { quantity } = useFormat();
  return (
    <dl className="facts promises">
      <dt>Dependable</dt>
      <dd>the level still holds after the real-life margin of {quantity(marginDb, 'dB', 1)}: plan on this</dd>
      <dt>Typical</dt>
      <dd>the median level is just at the receiver’s stated sensitivity: half the time it is below</dd>
      <dt>Horizon</dt>
      <dd>a landmark from the two heights, not a limit</dd>
      <dt>Feeder costs</dt>
      <dd>what the same radio would reach farther without its feeder’s loss</dd>
    </dl>
  );
}

function StationSections({ project, result }: { project: Project; result: RangeResult }) {
  const station = project.stations.find(({ id }) => id === result.stationId);
  if (!station) return null;
  return (
    <>
      <LevelChart project={project} result={result} station={station} />
      <SeaStrip project={project} result={result} station={station} />
    </>
  );
}
