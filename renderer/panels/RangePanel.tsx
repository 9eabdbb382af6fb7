import { useMemo, useState } from 'react';
import type { Project } from '../../core/model/project.ts';
import { AT_REST, type TrialState } from '../../core/reach/types.ts';
import { Choice } from '../app/Choice.tsx';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { useFormat } from '../ui/text.ts';
import { switchNote } from './pathLoss/paths.ts';
import { FarEndNotes } from './range/FarEndNotes.tsx';
import { useFollowed } from './range/followed.ts';
import { MarginSection } from './range/MarginSection.tsx';
import { mainRadio, type RadioChoice, radioChoices, radioName, radiosTouched, unanswered } from './range/radios.ts';
import { SeaSections } from './range/SeaSections.tsx';
import { StationsSection } from './range/StationsSection.tsx';
import { GnssSections } from './reach/GnssSections.tsx';
import { HfSections } from './reach/HfSections.tsx';
import { SatelliteSections } from './reach/SatelliteSections.tsx';
import './range.css';
import './range/chart.css';
import './range/trial.css';
import './range/why.css';

/** How far each radio reaches: over the sea, by HF, to a satellite; and what a receiver of positions gets. */
export function RangePanel() {
  const project = useApp(shownProject);
  const { ranges, paths, hf, satellites, gnss } = useAssessment();
  const choices = useMemo(
    () => radioChoices({ ranges, paths, hf, satellites, gnss }),
    [ranges, paths, hf, satellites, gnss],
  );
  const [id, choose] = useFollowed(
    choices.map((choice) => choice.id),
    (selection) => radiosTouched(choices, selection).map((choice) => choice.id),
    mainRadio(choices)?.id ?? null,
  );
  const chosen = choices.find((each) => each.id === id);
  const alone = useMemo(() => unanswered(project, paths, ranges), [project, paths, ranges]);
  return (
    <div className="panel range">
      {chosen ? (
        <>
          <RadioChooser project={project} choices={choices} chosen={chosen} onChoose={choose} />
          <FarEndNotes found={alone} />
          <RadioSections project={project} chosen={chosen} />
        </>
      ) : (
        <>
          <p className="empty">{whatNext(project)}</p>
          <FarEndNotes found={alone} />
        </>
      )}
      {chosen === undefined || chosen.kind === 'sea' ? (
        <>
          <MarginSection project={project} />
          <StationsSection project={project} />
        </>
      ) : null}
    </div>
  );
}

function whatNext(project: Project): string {
  return project.stations.length === 0
    ? 'No station to reach yet. Add one below: a like yacht, a ship’s bridge or a coast station.'
    : 'No range yet. Place a radio and an antenna, and draw a cable between their sockets, or place a handheld; this ' +
        'page then shows how far it reaches.';
}

function RadioChooser({
  project,
  choices,
  chosen,
  onChoose,
}: {
  project: Project;
  choices: readonly RadioChoice[];
  chosen: RadioChoice;
  onChoose: (id: string) => void;
}) {
  const { rich } = useFormat();
  const options = choices.map((each) => {
    const note = each.path ? switchNote(project, each.path) : null;
    return { id: each.id, name: rich(radioName(project, each)), ...(note === null ? {} : { note }) };
  });
  return <Choice label="Radio" options={options} value={chosen.id} onChange={onChoose} />;
}

/** What is tried and the far end stay as they are from one radio over the sea to the next. */
function RadioSections({ project, chosen }: { project: Project; chosen: RadioChoice }) {
  const [stationId, setStationId] = useState<string | null>(null);
  const [state, setState] = useState<TrialState>(AT_REST);
  switch (chosen.kind) {
    case 'hf':
      return <HfSections project={project} result={chosen.result} />;
    case 'satellite':
      return <SatelliteSections project={project} result={chosen.result} />;
    case 'gnss':
      return <GnssSections project={project} result={chosen.result} />;
    case 'sea':
      return (
        <SeaSections
          project={project}
          group={chosen.group}
          stationId={stationId}
          onStation={setStationId}
          state={state}
          onTry={setState}
        />
      );
  }
}
