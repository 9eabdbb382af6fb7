import { Button } from 'react-aria-components';
import { addStation } from '../../../core/edit/stations.ts';
import { SEA_SERVICE_WORDS } from '../../../core/reach/types.ts';
import { useAppStore } from '../../store/context.ts';
import type { Unanswered } from './radios.ts';

/** Sets that nobody answers: no range without a far end of their service, and one press to have one. */
export function FarEndNotes({ found }: { found: readonly Unanswered[] }) {
  const store = useAppStore();
  return found.map(({ service, tags, station }) => (
    <p key={service} className="note">
      No range for {tags.join(', ')}: no station has {SEA_SERVICE_WORDS[service]}.{' '}
      <Button
        className="button link"
        onPress={() => store.getState().edit(`${station.name} added`, (current) => addStation(current, station))}
      >
        Add: {station.name}
      </Button>
    </p>
  ));
}
