import { useEffect, useState } from 'react';
import { openDropped } from '../app/openActions.ts';
import { useHost } from '../host/context.ts';
import { useAppStore } from '../store/context.ts';
import { isUnsaved } from '../store/store.ts';
import { dropPromise, dropRefusal } from './drop.ts';
import './welcome.css';

const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** Takes files dragged onto the window, wherever they are let go, and says beforehand what will happen. */
export function DropTarget() {
  const store = useAppStore();
  const host = useHost();
  const [promise, setPromise] = useState<ReturnType<typeof dropPromise> | null>(null);
  useEffect(() => {
    const promised = (event: DragEvent): ReturnType<typeof dropPromise> => {
      const state = store.getState();
      const isBusy = state.dialog !== null || state.question !== null;
      return dropPromise({ count: event.dataTransfer?.items.length ?? 0, isBusy, isUnsaved: isUnsaved(state) });
    };
    const over = (event: DragEvent): void => {
      if (!holdsFiles(event) || !event.dataTransfer) return;
      // Else the browser would leave the page for the file.
      event.preventDefault();
      const next = promised(event);
      event.dataTransfer.dropEffect = next.takes ? 'copy' : 'none';
      setPromise((before) => (before?.text === next.text ? before : next));
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setPromise(null);
    };
    const drop = (event: DragEvent): void => {
      setPromise(null);
      if (!holdsFiles(event) || !event.dataTransfer) return;
      event.preventDefault();
      const { takes, text } = promised(event);
      const refusal = dropRefusal([...event.dataTransfer.files].map(({ name }) => name)) ?? (takes ? null : text);
      if (refusal === null) void openDropped(store, host, event.dataTransfer);
      else store.getState().say({ tone: 'refusal', text: refusal });
    };
    window.addEventListener('dragover', over);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [store, host]);
  return promise ? (
    <div className="drop-veil" data-refused={!promise.takes || undefined}>
      <p className="drop-words">{promise.text}</p>
    </div>
  ) : null;
}
