import { useState } from 'react';
import type { HfBand, HfReach, HfResult } from '../../../core/reach/types.ts';
import { useApp } from '../../store/context.ts';
import { bareNumber, symbolOf, wattDigits } from '../pathLoss/figures.ts';
import { HfWhy } from './HfWhy.tsx';
import { sharedNotes } from './hfWords.ts';

/** What becomes of the power on each band, and why. */
export function HfBandTable({ result }: { result: HfResult }) {
  const { bands, canTransmit } = result;
  return (
    <section className="panel-section">
      <h3 className="heading">Antenna and power by band</h3>
      <div className="table-scroll">
        <table className="table hf-table">
          <Heads canTransmit={canTransmit} />
          <tbody>
            {bands.map((band) => (
              <BandRows key={band.id} result={result} band={band} />
            ))}
          </tbody>
        </table>
      </div>
      {sharedNotes(result).map(({ bands: names, note }) => (
        <p key={note} className="small">
          {names === null ? '' : `${names}: `}
          {note}
        </p>
      ))}
      <p className="small soft">
        Noise from outside, above the thermal floor kT0B. Earth and joints are the ground loss; it is the first thing
        worth the work.
      </p>
    </section>
  );
}

function Heads({ canTransmit }: { canTransmit: boolean }) {
  const names = [
    ...(canTransmit ? ['Radiated W'] : []),
    'Efficiency %',
    'Radiation Ω',
    'Coil Ω',
    'Ground Ω',
    'Noise dB',
  ];
  return (
    <thead>
      <tr>
        <th scope="col">Band</th>
        {names.map((name) => (
          <th key={name} scope="col" className="num">
            {name}
          </th>
        ))}
      </tr>
    </thead>
  );
}

function BandRows({ result, band }: { result: HfResult; band: HfBand }) {
  const preferences = useApp((state) => state.preferences);
  const [isOpen, setOpen] = useState(false);
  const ohm = (value: number | null): string =>
    value === null ? '–' : bareNumber(value, 'ohm', preferences, value < 10 ? 1 : 0);
  const percent = 100 * band.efficiency;
  return (
    <>
      <tr>
        <th scope="row">
          {band.name}
          <span className="basis">
            <button type="button" className="why" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
              Why
              <span className="sr-only"> this number: efficiency on {band.name}</span>
            </button>
          </span>
        </th>
        {result.canTransmit ? (
          <td className="num">
            {band.radiatedW === null ? '–' : bareNumber(band.radiatedW, 'W', preferences, wattDigits(band.radiatedW))}
          </td>
        ) : null}
        <td className="num">
          {band.radiationOhm === null ? '≥ ' : ''}
          {bareNumber(percent, 'percent', preferences, percent < 10 ? 1 : 0)}
        </td>
        <td className="num">{ohm(band.radiationOhm)}</td>
        <td className="num">{ohm(band.coilOhm)}</td>
        <td className="num">{ohm(result.groundLossOhm)}</td>
        <td className="num">{bareNumber(band.noiseDb, 'dB', preferences, 0)}</td>
      </tr>
      {isOpen ? <HfWhy result={result} band={band} columns={result.canTransmit ? 7 : 6} /> : null}
    </>
  );
}

/** How far the ground wave goes by day, band by band and far end by far end. */
export function GroundWaveTable({ result }: { result: HfResult }) {
  const preferences = useApp((state) => state.preferences);
  const bands = result.bands.filter(({ groundWave }) => groundWave.length > 0);
  const ends = [...new Map(bands.flatMap(({ groundWave }) => groundWave).map((end) => [end.key, end.name]))];
  if (ends.length === 0) return null;
  return (
    <section className="panel-section">
      <h3 className="heading">Ground wave by day</h3>
      <div className="table-scroll">
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Band</th>
              {ends.map(([key, name]) => (
                <th key={key} scope="col" className="num hf-end">
                  {name}, {symbolOf('km', preferences)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {bands.map((band) => (
              <tr key={band.id}>
                <th scope="row">{band.name}</th>
                {ends.map(([key]) => (
                  <ReachCell key={key} reach={band.groundWave.find((end) => end.key === key) ?? null} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="small soft">
        Along the sea, with the band its tolerances make; by night the sky wave comes on top and may disturb it.
      </p>
    </section>
  );
}

function ReachCell({ reach }: { reach: HfReach | null }) {
  const preferences = useApp((state) => state.preferences);
  const km = (value: number): string => bareNumber(value, 'km', preferences, 0);
  if (!reach) return <td className="num">–</td>;
  const { nominalKm, lowKm, highKm } = reach.reach;
  return (
    <td className="num">
      <strong>{km(nominalKm)}</strong>
      <span className="band">
        {km(lowKm)}–{km(highKm)}, {reach.limitedBy === 'transmit' ? 'they lose you' : 'you lose them'}
      </span>
    </td>
  );
}
