import { useAppStore } from '../../store/context.ts';
import { useStudy } from '../../store/derived.ts';

/** What stands in a cut set: a part, which it selects on the drawing, or a common cause, which it shows there. */
export function EventOrThing({ id }: { id: string }) {
  const { labels } = useStudy();
  const store = useAppStore();
  const found = labels.get(id);
  const press = (): void => {
    if (found?.subject) store.getState().select([found.subject]);
    else store.getState().showEvent(id.replace(/^cause:/, ''));
  };
  return (
    <button type="button" className={`link thing${found?.subject ? '' : ' thing--cause'}`} onClick={press}>
      {found?.label ?? id}
    </button>
  );
}
