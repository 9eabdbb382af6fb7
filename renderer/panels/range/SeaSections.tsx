import { useMemo } from 'react';
import type { Project, Station } from '../../../core/model/project.ts';
import type { RangeExplanation, RangeResult, TrialState } from '../../../core/reach/types.ts';
import { useAssessment } from '../../store/derived.ts';
import { useFormat } from '../../ui/text.ts';
import { Fold } from '../particulars/fields.tsx';
import { Chips } from './Chips.tsx';
import { hasLowPower, triedState, useExplained } from './explained.ts';
import type { RangeGroup } from './groups.ts';
import { LevelChart } from './LevelChart.tsx';
import { RangeTable } from './RangeTable.tsx';
import { SeaStrip } from './SeaStrip.tsx';
import { StrongSection } from './StrongSection.tsx';
import { signalsInto } from './strong.ts';
import { ThreeNumbers } from './ThreeNumbers.tsx';
import { TrialControls, TrialOutcome } from './TrialControls.tsx';
import { isTried } from './trial.ts';
import { WhySection } from './WhySection.tsx';

interface SeaSectionsProps {
  readonly project: Project;
  readonly group: RangeGroup;
  readonly stationId: string | null;
  readonly onStation: (stationId: string) => void;
  readonly state: TrialState;
  readonly onTry: (state: TrialState) => void;
}

/** How far one radio reaches over the sea: the far end, the three numbers and the curve first, what is behind them below. */
export function SeaSections({ project, group, stationId, onStation, state, onTry }: SeaSectionsProps) {
  const result = group.results.find((each) => each.stationId === stationId) ?? group.results[0];
  const station = project.stations.find(({ id }) => id === result?.stationId);
  if (!result || !station) return null;
  const options = group.results.flatMap(({ stationId: id }) => {
    const known = project.stations.find((each) => each.id === id);
    return known ? [{ id, name: known.name }] : [];
  });
  return (
    <>
      <Chips label="Far end" options={options} value={result.stationId} onChange={onStation} />
      <OneRange project={project} group={group} result={result} station={station} wanted={state} onTry={onTry} />
      <section className="panel-section">
        <h3 className="heading">Every far end, upright and on full power</h3>
        <RangeTable project={project} group={group} chosenId={result.stationId} onChoose={onStation} />
        <Fold title="What the words promise">{() => <Promises marginDb={result.marginDb} />}</Fold>
      </section>
    </>
  );
}

interface OneRangeProps {
  readonly project: Project;
  readonly group: RangeGroup;
  readonly result: RangeResult;
  readonly station: Station;
  readonly wanted: TrialState;
  readonly onTry: (state: TrialState) => void;
}

function OneRange({ project, group, result, station, wanted, onTry }: OneRangeProps) {
  const { paths } = useAssessment();
  const state = useMemo(() => triedState(project, group.itemId, wanted), [project, group.itemId, wanted]);
  const explained = useExplained(project, paths, result, state);
  // The same object while nothing is tried, so that what depends on it stays.
  const tried = isTried(state) ? explained.range : result;
  return (
    <>
      <section className="panel-section">
        <ThreeNumbers upright={result} tried={tried} />
        <TrialOutcome state={state} upright={result} tried={tried} />
        <Basis group={group} heightM={tried.ownHeightM} />
        {explained.withoutKm ? <PhoneAlone km={explained.withoutKm} /> : null}
      </section>
      <LevelChart project={project} paths={paths} upright={result} tried={tried} state={state} station={station} />
      <TrialControls state={state} hasLowPower={hasLowPower(project, group.itemId)} onChange={onTry} />
      <Deeper project={project} group={group} explained={explained} station={station} />
    </>
  );
}

/** What lies behind the number, folded away until somebody asks. */
function Deeper({
  project,
  group,
  explained,
  station,
}: {
  project: Project;
  group: RangeGroup;
  explained: RangeExplanation;
  station: Station;
}) {
  const { paths, strongSignals } = useAssessment();
  const strong = signalsInto(strongSignals, group.itemId, group.path?.id ?? null);
  return (
    <div className="deeper">
      <Fold title="Why this number">
        {() => <WhySection project={project} explained={explained} stationName={station.name} />}
      </Fold>
      <Fold title={`To scale, ${station.name}`}>
        {() => <SeaStrip project={project} result={explained.range} station={station} />}
      </Fold>
      {strong.length > 0 ? (
        <Fold title="Too near">{() => <StrongSection project={project} paths={paths} signals={strong} />}</Fold>
      ) : null}
    </div>
  );
}

/** What a telephone would do without any of the installation. */
function PhoneAlone({ km }: { km: NonNullable<RangeExplanation['withoutKm']> }) {
  const { quantity } = useFormat();
  return (
    <p className="small soft">
      A telephone in the hand on deck would have {quantity(km.dependable, 'km')} dependable,{' '}
      {quantity(km.typical, 'km')} typical.
    </p>
  );
}

function Basis({ group: { path }, heightM }: { group: RangeGroup; heightM: number }) {
  const { quantity } = useFormat();
  const measuredDb = path?.measuredLossDb ?? null;
  return (
    <>
      <p className="small soft">
        Over open sea from {quantity(heightM, 'm')} above the water
        {path === null ? '' : `, with ${quantity(path.lossDb, 'dB')} of predicted path loss`}.
      </p>
      {measuredDb === null ? null : (
        <p className="note">
          Reckoned with the feeder loss as measured, {quantity(measuredDb, 'dB')}, instead of the predicted figure.
        </p>
      )}
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
