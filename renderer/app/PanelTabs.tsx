import type { ComponentType } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { FindingsPanel } from '../panels/FindingsPanel.tsx';
import { ParticularsPanel } from '../panels/ParticularsPanel.tsx';
import { PathLossPanel } from '../panels/PathLossPanel.tsx';
import { RangePanel } from '../panels/RangePanel.tsx';
import { RedundancyPanel } from '../panels/RedundancyPanel.tsx';
import { SheetPanel } from '../panels/SheetPanel.tsx';
import { useApp } from '../store/context.ts';
import { PANELS, type PanelId } from '../store/store.ts';

const CONTENT: Readonly<Record<PanelId, ComponentType>> = {
  particulars: ParticularsPanel,
  'path-loss': PathLossPanel,
  range: RangePanel,
  redundancy: RedundancyPanel,
  findings: FindingsPanel,
  sheet: SheetPanel,
};

/** The column of results and particulars. */
export function PanelTabs() {
  const panel = useApp((state) => state.panel);
  const showPanel = useApp((state) => state.showPanel);
  return (
    <Tabs
      className="react-aria-Tabs column-tabs"
      selectedKey={panel}
      onSelectionChange={(key) => {
        const chosen = PANELS.find(({ id }) => id === key);
        if (chosen) showPanel(chosen.id);
      }}
    >
      <TabList aria-label="Panels">
        {PANELS.map(({ id, name }) => (
          <Tab key={id} id={id}>
            {name}
          </Tab>
        ))}
      </TabList>
      {PANELS.map(({ id, name }) => {
        const Content = CONTENT[id];
        return (
          <TabPanel key={id} id={id}>
            <h2 className="sr-only">{name}</h2>
            <Content />
          </TabPanel>
        );
      })}
    </Tabs>
  );
}
