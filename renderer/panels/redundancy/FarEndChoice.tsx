import { Choice } from '../../app/Choice.tsx';
import { useApp } from '../../store/context.ts';
import { useFarEnd } from '../../store/derived.ts';
import { shownProject } from '../../store/store.ts';

/** To whom the reach of what is left is quoted. */
export function FarEndChoice() {
  const stations = useApp((state) => shownProject(state).stations);
  const setView = useApp((state) => state.setView);
  const farEnd = useFarEnd();
  if (!farEnd) return null;
  return (
    <Choice
      label="Reach to"
      options={stations.map(({ id, name }) => ({ id, name }))}
      value={farEnd.id}
      onChange={(farEndId) => setView({ farEndId })}
    />
  );
}
