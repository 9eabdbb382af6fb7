import { useMemo, useState } from 'react';
import { Button, type Key, Tree, TreeItem, TreeItemContent } from 'react-aria-components';
import { Icon } from '../app/icons.tsx';
import { useApp, useAppStore } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { type Entry, outlineSections, type Section, subjectKey } from './sections.ts';

/** The drawing as a list: one sentence per item, run, feed, link and place; the selection is the drawing's own. */
export function Outline() {
  const store = useAppStore();
  const project = useApp(shownProject);
  const preferences = useApp((state) => state.preferences);
  const selection = useApp((state) => state.selection);
  const assessment = useAssessment();
  const sections = useMemo(
    () => outlineSections({ project, assessment, preferences }),
    [project, assessment, preferences],
  );
  const [expanded, setExpanded] = useState<Iterable<Key>>(['items', 'runs']);
  const handleSelect = (keys: 'all' | Set<Key>): void => {
    const entries = sections.flatMap((section) => section.entries);
    const chosen = keys === 'all' ? entries : entries.filter(({ key }) => keys.has(key));
    store.getState().select(chosen.map(({ subject }) => subject));
  };
  return (
    <div className="outline" data-area="outline">
      <Tree
        aria-label="Outline of the drawing"
        selectionMode="multiple"
        selectionBehavior="replace"
        selectedKeys={selection.map(subjectKey)}
        onSelectionChange={handleSelect}
        expandedKeys={expanded}
        onExpandedChange={setExpanded}
        disabledKeys={sections.map(({ key }) => `${key}-empty`)}
        disabledBehavior="selection"
      >
        {sections.map(sectionRow)}
      </Tree>
    </div>
  );
}

function sectionRow({ key, name, entries, empty }: Section) {
  const title = `${name} (${entries.length})`;
  return (
    <TreeItem key={key} id={key} textValue={title}>
      <TreeItemContent>
        <span className="outline-row">
          <Button slot="chevron" aria-label={`Show or hide ${name}`}>
            <Icon name="chevronRight" size={14} />
          </Button>
          {title}
        </span>
      </TreeItemContent>
      {entries.length > 0 ? (
        entries.map(entryRow)
      ) : (
        <TreeItem id={`${key}-empty`} textValue={empty}>
          <TreeItemContent>
            <span className="faint">{empty}</span>
          </TreeItemContent>
        </TreeItem>
      )}
    </TreeItem>
  );
}

function entryRow({ key, text }: Entry) {
  return (
    <TreeItem key={key} id={key} textValue={text}>
      <TreeItemContent>{text}</TreeItemContent>
    </TreeItem>
  );
}
