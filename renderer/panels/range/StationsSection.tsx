import { Button } from 'react-aria-components';
import { addStation, removeStation, setStation } from '../../../core/edit/stations.ts';
import type { Project, Station } from '../../../core/model/project.ts';
import type { Unit } from '../../../core/units/quantity.ts';
import { Choice } from '../../app/Choice.tsx';
import { useAppStore } from '../../store/context.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { TextRow } from '../../ui/TextRow.tsx';
import { useFormat } from '../../ui/text.ts';
import { newStation, STATION_KINDS, stationSummary } from './groups.ts';

/** The far ends that ranges are quoted to. */
export function StationsSection({ project }: { project: Project }) {
  const store = useAppStore();
  const { stations } = project;
  return (
    <section className="panel-section">
      <details className="more">
        <summary>Stations: {stations.length} far ends that ranges are quoted to</summary>
        <div className="stations">
          {stations.map((station) => (
            <StationEditor key={station.id} station={station} />
          ))}
          <Button
            className="button"
            onPress={() =>
              store.getState().edit('Station added', (current) => addStation(current, newStation(current.stations)))
            }
          >
            Add a station
          </Button>
        </div>
      </details>
    </section>
  );
}

type NumberKey = Exclude<keyof Station, 'id' | 'name' | 'kind'>;

const FIELDS: readonly {
  readonly key: NumberKey;
  readonly label: string;
  readonly unit: Unit;
  readonly digits: number;
  readonly min: number;
  readonly max: number;
}[] = [
  { key: 'antennaHeightM', label: 'Antenna above the water', unit: 'm', digits: 1, min: 0.1, max: 5000 },
  { key: 'gainDbi', label: 'Antenna gain', unit: 'dBi', digits: 2, min: -20, max: 20 },
  { key: 'feederLossDb', label: 'Feeder loss', unit: 'dB', digits: 1, min: 0, max: 30 },
  { key: 'voicePowerW', label: 'Voice power', unit: 'W', digits: 1, min: 0, max: 100 },
  { key: 'aisPowerW', label: 'AIS power (0: none)', unit: 'W', digits: 1, min: 0, max: 100 },
  { key: 'cellularPowerW', label: 'Mobile-network power (0: none)', unit: 'W', digits: 1, min: 0, max: 100 },
  { key: 'wifiPowerW', label: 'Wi-Fi power (0: none)', unit: 'W', digits: 2, min: 0, max: 100 },
  { key: 'sensitivityDbm', label: 'Receiver sensitivity', unit: 'dBm', digits: 0, min: -140, max: -50 },
];

function StationEditor({ station }: { station: Station }) {
  const store = useAppStore();
  const { rich } = useFormat();
  const set = (change: Partial<Omit<Station, 'id'>>): void => {
    store.getState().edit(`${station.name} changed`, (current) => setStation(current, station.id, change));
  };
  const setKind = (id: string): void => {
    const kind = STATION_KINDS.find((each) => each.id === id)?.id;
    if (kind) set({ kind });
  };
  return (
    <details className="more station">
      <summary>{rich(stationSummary(station))}</summary>
      <div className="station-fields">
        <TextRow label="Name" value={station.name} isRequired onCommit={(name) => set({ name })} />
        <Choice label="Kind" options={STATION_KINDS} value={station.kind} onChange={setKind} />
        {FIELDS.map(({ key, ...field }) => (
          <QuantityField
            key={key}
            {...field}
            value={station[key]}
            onCommit={(value) => value !== null && set({ [key]: value })}
          />
        ))}
        <Button
          className="button button--danger"
          onPress={() =>
            store
              .getState()
              .edit(`${station.name} removed from the stations`, (current) => removeStation(current, station.id))
          }
        >
          Remove {station.name}
        </Button>
      </div>
    </details>
  );
}
