import { useMemo, useState } from 'react';
import {
  Button,
  ComboBox,
  Form,
  Header,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  ListBoxSection,
  Popover,
} from 'react-aria-components';
import { CATALOGUE } from '../../core/catalogue/catalogue.ts';
import { indexProject } from '../../core/catalogue/lookup.ts';
import { isPlaceable } from '../../core/model/placeable.ts';
import { AppDialog, DialogActions } from '../app/AppDialog.tsx';
import { Icon } from '../app/icons.tsx';
import { addPart } from '../commands/place.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { partGroups } from './partGroups.ts';

/** Adds a part at a place without the pointer. */
export function AddPartDialog() {
  return (
    <AppDialog id="add-part" title="Add a part">
      {(close) => <AddPart close={close} />}
    </AppDialog>
  );
}

function AddPart({ close }: { close: () => void }) {
  const store = useAppStore();
  const project = useApp((state) => state.project);
  const [partId, setPartId] = useState(() => store.getState().partId);
  const [placeId, setPlaceId] = useState(() => selectedPlaceId(store.getState()));
  const part = partId === null ? undefined : indexProject(project).parts.get(partId);
  const add = (): void => {
    if (part && isPlaceable(part) && addPart(store, part, placeId === null ? {} : { placeId })) close();
  };
  return (
    <Form
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <div className="dialog-body">
        <PartChoice partId={partId} onChange={setPartId} />
        {part ? <p className="soft small">{part.description}</p> : null}
        <ComboBox
          selectedKey={placeId}
          onSelectionChange={(key) => setPlaceId(key === null ? null : String(key))}
          autoFocus={partId !== null}
          menuTrigger="focus"
        >
          <Label>At which place</Label>
          <ComboInput placeholder="The usual place for such a part" />
          <Popover>
            <ListBox>
              {project.places.map((place) => (
                <ListBoxItem key={place.id} id={place.id}>
                  {place.name}
                </ListBoxItem>
              ))}
            </ListBox>
          </Popover>
        </ComboBox>
      </div>
      <DialogActions close={close} name="Add" isEnabled={part !== undefined} />
    </Form>
  );
}

function PartChoice({ partId, onChange }: { partId: string | null; onChange: (partId: string | null) => void }) {
  const ownParts = useApp((state) => state.project.parts);
  const groups = useMemo(() => partGroups(CATALOGUE, ownParts, ''), [ownParts]);
  return (
    <ComboBox
      selectedKey={partId}
      onSelectionChange={(key) => onChange(key === null ? null : String(key))}
      autoFocus={partId === null}
    >
      <Label>Part</Label>
      <ComboInput placeholder="Type part of a name" />
      <Popover>
        <ListBox>
          {groups.map((group) => (
            <ListBoxSection key={group.id}>
              <Header>{group.name}</Header>
              {group.parts.map((part) => (
                <ListBoxItem key={part.id} id={part.id}>
                  {part.name}
                </ListBoxItem>
              ))}
            </ListBoxSection>
          ))}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

function ComboInput({ placeholder }: { placeholder: string }) {
  return (
    <div className="combo">
      <Input placeholder={placeholder} />
      <Button className="button button--icon">
        <Icon name="chevron" size={12} />
      </Button>
    </div>
  );
}

/** The place to offer first: the selected one, or that of the selected item. */
function selectedPlaceId(state: {
  readonly selection: readonly { readonly kind: string; readonly id: string }[];
  readonly project: { readonly items: readonly { readonly id: string; readonly placeId: string | null }[] };
}): string | null {
  const place = state.selection.find(({ kind }) => kind === 'place');
  if (place) return place.id;
  const item = state.selection.find(({ kind }) => kind === 'item');
  return state.project.items.find(({ id }) => id === item?.id)?.placeId ?? null;
}
