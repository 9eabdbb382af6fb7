import type { ComponentType } from 'react';
import { Button, Tab, TabList, TabPanel, Tabs, Tooltip, TooltipTrigger } from 'react-aria-components';
import { useHost } from '../host/context.ts';
import { FindingsPanel } from '../panels/FindingsPanel.tsx';
import { ParticularsPanel } from '../panels/ParticularsPanel.tsx';
import { PathLossPanel } from '../panels/PathLossPanel.tsx';
import { RangePanel } from '../panels/RangePanel.tsx';
import { RedundancyPanel } from '../panels/RedundancyPanel.tsx';
import { SheetPanel } from '../panels/SheetPanel.tsx';
import { useApp, useAppStore } from '../store/context.ts';
import { PANELS, type PanelId } from '../store/store.ts';
import { actionById } from './actions.ts';

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
      <div className="panel-tabs">
        <TabList aria-label="Panels">
          {PANELS.map(({ id, name }) => (
            <Tab key={id} id={id}>
              {name}
            </Tab>
          ))}
        </TabList>
        <PageHelp />
      </div>
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

/** Opens the help at what it says about the page shown. */
function PageHelp() {
  const store = useAppStore();
  const host = useHost();
  const action = actionById('help-page');
  return (
    <TooltipTrigger delay={500}>
      <Button
        className="button button--quiet button--icon"
        aria-label={action.name}
        onPress={() => void action.perform(store, host)}
      >
        ?
      </Button>
      <Tooltip>{action.name}</Tooltip>
    </TooltipTrigger>
  );
}
