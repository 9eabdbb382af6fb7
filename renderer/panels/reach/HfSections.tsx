import { useMemo, useState } from 'react';
import type { Project } from '../../../core/model/project.ts';
import { hfDay, MAX_SKY_KM, MIN_SKY_KM } from '../../../core/reach/hfDay.ts';
import type { HfDay, HfResult } from '../../../core/reach/types.ts';
import { CAUTIONS } from '../../../core/report/cautions.ts';
import { KM_PER_NM } from '../../../core/units/constants.ts';
import { useApp } from '../../store/context.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { useFormat } from '../../ui/text.ts';
import { bareNumber, symbolOf } from '../pathLoss/figures.ts';
import { Chips } from '../range/Chips.tsx';
import { Slider } from '../range/Slider.tsx';
import { ConditionsSection } from './ConditionsSection.tsx';
import { GroundWaveTable, HfBandTable } from './HfBandTable.tsx';
import { HfDayTable } from './HfDayTable.tsx';
import { HfGrid } from './HfGrid.tsx';
import { shownBands } from './hfGrid.ts';
import { clock, distanceChoices, hfHeadline, hopWords } from './hfWords.ts';
import './reach.css';

/** Noon: the view begins where both the day's bands and the reading are easiest to follow. */
const BEGIN_HOUR = 12;
const BEGIN_KM = 500 * KM_PER_NM;

/** One HF set with its antenna: which band at which hour over which distance, what it radiates, and what that rests on. */
export function HfSections({ project, result }: { project: Project; result: HfResult }) {
  const [distanceKm, setDistance] = useState(BEGIN_KM);
  const [hour, setHour] = useState(BEGIN_HOUR);
  const day = useMemo(() => hfDay(project, result, distanceKm), [project, result, distanceKm]);
  return (
    <>
      <section className="panel-section">
        <Headline result={result} day={day} hour={hour} />
        <DistanceControls distanceKm={distanceKm} onChange={setDistance} />
        <Slider label="Hour, local solar time" value={hour} words={clock(hour)} min={0} max={23} onChange={setHour} />
        {shownBands(day, result.bands).length === 0 ? null : (
          <>
            <HfGrid day={day} bands={result.bands} hour={hour} onHour={setHour} />
            <HfDayTable day={day} bands={result.bands} />
          </>
        )}
        <p className="small soft">{[...day.notes, 'Listen before you trust it.'].join(' ')}</p>
      </section>
      <ConditionsSection project={project} />
      <HfBandTable result={result} />
      <GroundWaveTable result={result} />
      {result.canTransmit ? <HfCautions /> : null}
    </>
  );
}

function Headline({ result, day, hour }: { result: HfResult; day: HfDay; hour: number }) {
  const { rich } = useFormat();
  if (shownBands(day, result.bands).length === 0) {
    return (
      <p className="outcome-text">It listens below the HF bands; the ground wave carries there, no hop is reckoned.</p>
    );
  }
  return (
    <div className="outcome" role="status">
      <p className="outcome-text">{rich(hfHeadline(result, day, hour))}</p>
      <p className="small soft">{hopWords(day, result.bands, hour)}</p>
    </div>
  );
}

function DistanceControls({ distanceKm, onChange }: { distanceKm: number; onChange: (km: number) => void }) {
  const preferences = useApp((state) => state.preferences);
  const options = distanceChoices(preferences).map((km) => ({ id: km, name: bareNumber(km, 'km', preferences, 0) }));
  return (
    <div className="hf-distance">
      <Chips
        label={`Distance, ${symbolOf('km', preferences)}`}
        options={options}
        value={distanceKm}
        onChange={onChange}
      />
      <QuantityField
        label="Or another"
        value={distanceKm}
        unit="km"
        digits={0}
        min={MIN_SKY_KM}
        max={MAX_SKY_KM}
        onCommit={(km) => km !== null && onChange(km)}
      />
    </div>
  );
}

/** The usual cautions that HF asks for, word for word as on the sheet. */
const HF_CAUTIONS = ['HF burn and shock', 'Keep clear of radiating antennas', 'Licences'];

function HfCautions() {
  return (
    <section className="panel-section">
      <h3 className="heading">Before you transmit</h3>
      <p className="caution">
        <strong>Listen first.</strong> Make sure the channel is free and that nobody is near the wire. The calling and
        distress channels have their own rules and silence.
      </p>
      {CAUTIONS.filter(({ title }) => HF_CAUTIONS.includes(title)).map(({ title, text }) => (
        <p key={title} className="caution">
          <strong>{title}.</strong> {text}
        </p>
      ))}
    </section>
  );
}
