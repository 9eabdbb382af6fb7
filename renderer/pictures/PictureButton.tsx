import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { NewPicture } from '../../core/edit/pictures.ts';
import { useAppStore } from '../store/context.ts';
import { preparedPicture } from './prepare.ts';

/** A button that asks for a picture and hands it on, made ready; what is wrong with the file is said in the status line. */
export function PictureButton({ label, onPicture }: { label: string; onPicture: (picture: NewPicture) => void }) {
  const store = useAppStore();
  const input = useRef<HTMLInputElement>(null);
  const [isBusy, setBusy] = useState(false);
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setBusy(true);
    try {
      onPicture(await preparedPicture(file));
    } catch (error) {
      store.getState().say({ tone: 'refusal', text: error instanceof Error ? error.message : String(error) });
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <Button className="button" isDisabled={isBusy} onPress={() => input.current?.click()}>
        {isBusy ? 'Reading…' : label}
      </Button>
      <input
        ref={input}
        type="file"
        accept="image/png,image/jpeg"
        hidden
        onChange={(event) => {
          void take(event.target.files?.[0]);
          event.target.value = '';
        }}
      />
    </>
  );
}
