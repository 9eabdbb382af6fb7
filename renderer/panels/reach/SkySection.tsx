import { useId, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Project } from '../../../core/model/project.ts';
import type { SatelliteResult } from '../../../core/reach/types.ts';
import { itemTag } from '../../../core/report/words.ts';
import { sightAt, skyView } from '../../../core/siting/skyView.ts';
import { type RigState, SAILS_DOWN, type SkyView } from '../../../core/siting/types.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { percent } from '../pathLoss/figures.ts';
import { Slider } from '../range/Slider.tsx';
import { RigControls } from './RigControls.tsx';
import { SkyDome } from './SkyDome.tsx';
import type { Direction } from './skyLayout.ts';
import { headingShares, ORBIT_NOTES, sightReading, skySummary, standingDeg } from './skyWords.ts';

/** Size of the dome where there is room for it, px. */
const DOME_PX = 372;
const BEGIN: Direction = { azimuthDeg: 45, elevationDeg: 45 };

/** The sky over one antenna, with sails, boom and heel to try; nothing of it is saved. */
export function SkySection({
  project,
  itemId,
  orbit,
}: {
  project: Project;
  itemId: string;
  orbit: SatelliteResult['orbit'];
}) {
  const { rich } = useFormat();
  const [rig, setRig] = useState<RigState>(SAILS_DOWN);
  const [at, look] = useState<Direction>(BEGIN);
  const [eastDeg, setEastDeg] = useState(0);
  const view = useMemo(() => shownView(skyView(project, itemId, rig)), [project, itemId, rig]);
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? DOME_PX;
  const size = Math.min(DOME_PX, width);
  const summaryId = useId();
  const satelliteDeg =
    orbit === 'geostationary' && !view.isShut ? standingDeg(project.settings.conditions.latitudeDeg, eastDeg) : null;
  const reading = rich(sightReading(at, sightAt(view, at.azimuthDeg, at.elevationDeg)));
  return (
    <section className="panel-section" ref={box}>
      <h3 className="heading">The sky over {itemTag(project, itemId)}</h3>
      <p id={summaryId}>{rich(skySummary(view))}</p>
      <div className="sky">
        <div className="sky-view" style={{ width: size }}>
          <SkyDome
            view={view}
            size={size}
            at={at}
            reading={reading}
            describedBy={summaryId}
            satelliteDeg={satelliteDeg}
            onLook={look}
          />
          <p className="reading">{reading}</p>
        </div>
        <div className="sky-side">
          <ObstacleList view={view} />
          {view.isShut ? null : <RigControls project={project} rig={rig} onChange={setRig} />}
        </div>
      </div>
      {orbit === 'geostationary' && !view.isShut ? (
        <Standing
          latitudeDeg={project.settings.conditions.latitudeDeg}
          eastDeg={eastDeg}
          satelliteDeg={satelliteDeg}
          view={view}
          onChange={setEastDeg}
        />
      ) : null}
      <p className="small soft">{ORBIT_NOTES[orbit]}</p>
    </section>
  );
}

/** Under metal or carbon nothing else matters. */
function shownView(view: SkyView): SkyView {
  return view.isShut
    ? { ...view, obstacles: view.obstacles.filter(({ kind, subject }) => kind === 'blocks' && subject === null) }
    : view;
}

/** The numbers of the balloons, with names. */
function ObstacleList({ view }: { view: SkyView }) {
  const store = useAppStore();
  const { quantity } = useFormat();
  if (view.obstacles.length === 0) return null;
  return (
    <ol className="sky-list small">
      {view.obstacles.map(({ key, label, subject, kind, lossDb }) => (
        <li key={key}>
          {subject ? (
            <Button className="button link small" onPress={() => store.getState().select([subject])}>
              {label}
            </Button>
          ) : (
            label
          )}{' '}
          <span className="soft">{kind === 'blocks' ? 'blocks' : `takes ${quantity(lossDb, 'dB', 1)}`}</span>
        </li>
      ))}
    </ol>
  );
}

/** Where the geostationary satellite stands, and on how much of the circle of headings it is hidden. */
function Standing({
  latitudeDeg,
  eastDeg,
  satelliteDeg,
  view,
  onChange,
}: {
  latitudeDeg: number;
  eastDeg: number;
  satelliteDeg: number | null;
  view: SkyView;
  onChange: (eastDeg: number) => void;
}) {
  const { quantity, rich } = useFormat();
  const shares =
    satelliteDeg === null
      ? null
      : headingShares(satelliteDeg, (at) => sightAt(view, at.azimuthDeg, at.elevationDeg).lossDb);
  return (
    <div className="stack">
      <Slider
        label="Satellite away from your meridian"
        value={eastDeg}
        words={eastDeg === 0 ? 'on it, as high as it gets' : quantity(eastDeg, 'degree')}
        min={0}
        max={80}
        onChange={onChange}
      />
      <p>
        {satelliteDeg === null || shares === null
          ? `At ${quantity(Math.abs(latitudeDeg), 'degree')} of latitude it stands below the horizon.`
          : `At ${quantity(Math.abs(latitudeDeg), 'degree')} of latitude it stands ${quantity(satelliteDeg, 'degree')} up, the dashed ring: ` +
            `blocked on ${rich([percent(shares.blockedPercent)])} of the headings, weakened on ${rich([percent(shares.weakenedPercent)])}.`}
      </p>
    </div>
  );
}
