import { type PointerEvent, useMemo, useState } from 'react';
import { Button, Header, Input, ListBox, ListBoxItem, ListBoxSection, SearchField } from 'react-aria-components';
import { CATALOGUE } from '../../core/catalogue/catalogue.ts';
import { Icon } from '../app/icons.tsx';
import { usePlacing } from '../canvas/placing.tsx';
import { useApp, useAppStore } from '../store/context.ts';
import { type PartGroup, partGroups } from './partGroups.ts';

/** Everything that can be put aboard: drag a part onto the boat, or press Enter on it and choose a place. */
export function PartsList() {
  const store = useAppStore();
  const ownParts = useApp((state) => state.project.parts);
  const [search, setSearch] = useState('');
  const groups = useMemo(() => partGroups(CATALOGUE, ownParts, search), [ownParts, search]);
  const startPlacing = usePlacing();
  const handleDown = (event: PointerEvent): void => {
    const row = event.target instanceof Element ? event.target.closest('[data-part]') : null;
    const partId = row?.getAttribute('data-part');
    if (partId && event.button === 0) startPlacing(partId, event.nativeEvent);
  };
  return (
    <div className="parts">
      <SearchField aria-label="Search parts" value={search} onChange={setSearch}>
        <Input placeholder="Search parts" id="parts-search" />
      </SearchField>
      <div className="parts-scroll" onPointerDownCapture={handleDown}>
        <ListBox
          aria-label="Parts. Press Enter to add one"
          className="parts-list"
          onAction={(key) => store.getState().setView({ partId: String(key), dialog: 'add-part' })}
          renderEmptyState={() => (
            <p className="empty">No part matches “{search}”. Try another word, or add a part of your own.</p>
          )}
        >
          {groups.map(groupRows)}
        </ListBox>
      </div>
      <div className="parts-foot">
        <Button className="button" onPress={() => store.getState().setView({ dialog: 'own-part' })}>
          <Icon name="plus" size={14} /> Add your own part…
        </Button>
      </div>
    </div>
  );
}

function groupRows(group: PartGroup) {
  return (
    <ListBoxSection key={group.id} id={`group-${group.id}`}>
      <Header>{group.name}</Header>
      {group.parts.map((part) => (
        <ListBoxItem key={part.id} id={part.id} textValue={part.name} className="part">
          <span className="part-row" data-part={part.id}>
            <Icon name={part.kind} size={18} />
            <span className="part-text">
              <span>{part.name}</span>
              <span className="part-description">{part.description}</span>
            </span>
          </span>
        </ListBoxItem>
      ))}
    </ListBoxSection>
  );
}
