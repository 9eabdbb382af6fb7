import { useEffect, useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import '../styles/overlays.css';
import '../styles/shell.css';
import '../styles/drawing.css';
import { DrawingSheet } from '../canvas/DrawingSheet.tsx';
import { PlacingProvider } from '../canvas/placing.tsx';
import { AboutDialog } from '../dialogs/AboutDialog.tsx';
import { FileProblemsDialog } from '../dialogs/FileProblemsDialog.tsx';
import { NewBoatDialog } from '../dialogs/NewBoatDialog.tsx';
import { OwnPartDialog } from '../dialogs/OwnPartDialog.tsx';
import { QuestionDialog } from '../dialogs/QuestionDialog.tsx';
import { RecoveriesDialog } from '../dialogs/RecoveriesDialog.tsx';
import { SettingsDialog } from '../dialogs/SettingsDialog.tsx';
import { HelpDialog } from '../help/HelpDialog.tsx';
import { Outline } from '../outline/Outline.tsx';
import { AddPartDialog } from '../parts/AddPartDialog.tsx';
import { PartsList } from '../parts/PartsList.tsx';
import { useApp } from '../store/context.ts';
import { DropTarget } from '../welcome/DropTarget.tsx';
import { OpenProgress } from '../welcome/OpenProgress.tsx';
import { StartCard } from '../welcome/StartCard.tsx';
import { Tour } from '../welcome/Tour.tsx';
import { useDialog } from './AppDialog.tsx';
import { CommandPalette } from './CommandPalette.tsx';
import { ConnectDialog } from './ConnectDialog.tsx';
import { InsertDialog } from './InsertDialog.tsx';
import { KeepCopyDialog } from './KeepCopyDialog.tsx';
import { PanelTabs } from './PanelTabs.tsx';
import { RouteDialog } from './RouteDialog.tsx';
import { Splitter } from './Splitter.tsx';
import { StatusLine } from './StatusLine.tsx';
import { useShortcuts } from './shortcuts.ts';
import { TopBar } from './TopBar.tsx';
import { useTheme } from './useTheme.ts';

const MIN_PANEL_PX = 360;
const MAX_PANEL_PX = 900;

/** The whole window: bar, parts and outline, drawing, panels, status line, and the dialogs over them. */
export function App() {
  useTheme();
  useShortcuts();
  return (
    <PlacingProvider>
      <div className="shell">
        <TopBar />
        <Columns />
        <StatusLine />
      </div>
      <Tour />
      <StartCard />
      <Dialogs />
      <OpenProgress />
      <DropTarget />
    </PlacingProvider>
  );
}

function Columns() {
  const [panelWidth, setPanelWidth] = useState(() => (window.innerWidth >= 1600 ? 620 : 456));
  useEffect(() => {
    const fit = (): void => setPanelWidth((width) => Math.min(width, Math.max(MIN_PANEL_PX, window.innerWidth * 0.45)));
    window.addEventListener('resize', fit);
    return () => window.removeEventListener('resize', fit);
  }, []);
  return (
    <div className="columns" style={{ gridTemplateColumns: `var(--left-width) minmax(0, 1fr) ${panelWidth}px` }}>
      <LeftTabs />
      <main className="centre">
        <DrawingSheet />
      </main>
      <aside className="column column--right" aria-label="Results and particulars">
        <Splitter
          name="Width of the panels"
          width={panelWidth}
          min={MIN_PANEL_PX}
          max={MAX_PANEL_PX}
          onChange={setPanelWidth}
        />
        <PanelTabs />
      </aside>
    </div>
  );
}

function LeftTabs() {
  const leftTab = useApp((state) => state.leftTab);
  const setView = useApp((state) => state.setView);
  return (
    <aside className="column" aria-label="Parts and outline">
      <Tabs
        className="react-aria-Tabs column-tabs"
        selectedKey={leftTab}
        onSelectionChange={(key) => setView({ leftTab: key === 'outline' ? 'outline' : 'parts' })}
      >
        <TabList aria-label="Parts and outline">
          <Tab id="parts">Parts</Tab>
          <Tab id="outline">Outline</Tab>
        </TabList>
        <TabPanel id="parts">
          <PartsList />
        </TabPanel>
        <TabPanel id="outline">
          <Outline />
        </TabPanel>
      </Tabs>
    </aside>
  );
}

function Dialogs() {
  return (
    <>
      <NewBoatDialog {...useDialog('new-boat')} />
      <OwnPartDialog {...useDialog('own-part')} />
      <SettingsDialog {...useDialog('settings')} />
      <AddPartDialog />
      <ConnectDialog />
      <InsertDialog />
      <RouteDialog />
      <KeepCopyDialog />
      <HelpDialog />
      <FileProblemsDialog />
      <AboutDialog />
      <RecoveriesDialog />
      <CommandPalette />
      <QuestionDialog />
    </>
  );
}
