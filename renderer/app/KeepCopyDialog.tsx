import { useState } from 'react';
import { Form, Input, Label, TextField } from 'react-aria-components';
import { keepAsAlternative } from '../../core/edit/alternatives.ts';
import { useAppStore } from '../store/context.ts';
import { AppDialog, DialogActions } from './AppDialog.tsx';

/** Keeps a copy of the layout under a name, to compare with after changing this one. */
export function KeepCopyDialog() {
  return (
    <AppDialog id="keep-copy" title="Keep a copy of this layout">
      {(close) => <KeepCopy close={close} />}
    </AppDialog>
  );
}

function KeepCopy({ close }: { close: () => void }) {
  const store = useAppStore();
  const { layoutName, alternatives } = store.getState().project;
  const [name, setName] = useState(
    alternatives.some((other) => other.name === 'Proposed') || layoutName === 'Proposed'
      ? `Proposed ${alternatives.length + 1}`
      : 'Proposed',
  );
  const keep = (): void => {
    if (store.getState().edit(`Copy kept as ${name}`, (project) => keepAsAlternative(project, name.trim()))) close();
  };
  return (
    <Form
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <div className="dialog-body">
        <p>
          You go on with “{layoutName}”. The copy stays beside it under the name below; the layout menu swaps between
          them.
        </p>
        <TextField value={name} onChange={setName} autoFocus isRequired>
          <Label>Name of the copy</Label>
          <Input />
        </TextField>
      </div>
      <DialogActions close={close} name="Keep copy" isEnabled={name.trim() !== ''} />
    </Form>
  );
}
