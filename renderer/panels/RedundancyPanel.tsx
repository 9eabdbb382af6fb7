import type { ComponentType } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { REDUNDANCY_VIEWS, type RedundancyViewId } from '../store/view.ts';
import { AdviceView } from './redundancy/advice/AdviceView.tsx';
import { ChancesView } from './redundancy/chances/ChancesView.tsx';
import { OneFailure } from './redundancy/OneFailure.tsx';
import { RaftView } from './redundancy/raft/RaftView.tsx';
import { RulePacksView } from './redundancy/rules/RulePacksView.tsx';
import { SeveralView } from './redundancy/several/SeveralView.tsx';
import { TreeView } from './redundancy/tree/TreeView.tsx';
import './redundancy.css';

const VIEWS: Readonly<Record<RedundancyViewId, ComponentType>> = {
  one: OneFailure,
  help: AdviceView,
  several: SeveralView,
  chances: ChancesView,
  tree: TreeView,
  raft: RaftView,
  rules: RulePacksView,
};

/** What failures take away: one at a time, several together, how likely, why, what would help, and what goes into the raft. */
export function RedundancyPanel() {
  const { redundancy } = useAssessment();
  const view = useApp((state) => state.redundancyView);
  const setView = useApp((state) => state.setView);
  if (redundancy.ways.length === 0) {
    return (
      <div className="panel">
        <p className="empty">
          Nothing to lose yet. Place a radio and an antenna, join them with a cable and give the radio a supply; this
          page then shows what each failure takes away.
        </p>
      </div>
    );
  }
  return (
    <Tabs
      className="react-aria-Tabs redundancy-views"
      selectedKey={view}
      onSelectionChange={(key) => {
        const chosen = REDUNDANCY_VIEWS.find(({ id }) => id === key);
        if (chosen) setView({ redundancyView: chosen.id });
      }}
    >
      <TabList aria-label="Redundancy" className="chips view-chips">
        {REDUNDANCY_VIEWS.map(({ id, name }) => (
          <Tab key={id} id={id} className="chip-tab">
            {name}
          </Tab>
        ))}
      </TabList>
      {REDUNDANCY_VIEWS.map(({ id }) => {
        const View = VIEWS[id];
        return (
          <TabPanel key={id} id={id} className="panel redundancy">
            <View />
          </TabPanel>
        );
      })}
    </Tabs>
  );
}
