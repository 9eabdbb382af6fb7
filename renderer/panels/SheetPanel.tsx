import { useMemo } from 'react';
import { Button, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { installSheet } from '../../core/report/sheet.ts';
import { exportLosses, exportPdf, exportSchedule, exportSvg, today } from '../app/fileActions.ts';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { LargeSheet } from './sheet/LargeSheet.tsx';
import { SheetArticle } from './sheet/SheetArticle.tsx';
import './sheet.css';

/** The install sheet as it will be printed, section by section, and the ways to take it away. */
export function SheetPanel() {
  const store = useAppStore();
  const host = useHost();
  const assessment = useAssessment();
  const project = useApp(shownProject);
  const preferences = useApp((state) => state.preferences);
  const { paper } = preferences;
  const sheet = useMemo(
    () => installSheet(project, assessment, { paper, preferences, date: today() }),
    [project, assessment, paper, preferences],
  );
  return (
    <div className="panel sheet-panel">
      <section className="panel-section" aria-label="Take the sheet away">
        <div className="row-between">
          <Button className="button button--primary" onPress={() => exportPdf(store, host)}>
            Export PDF
          </Button>
          <PaperChoice />
          <LargeSheet sheet={sheet} />
        </div>
        <div className="row">
          <Button className="button" onPress={() => exportSchedule(store, host)}>
            Cable schedule CSV
          </Button>
          <Button className="button" onPress={() => exportLosses(store, host)}>
            Path losses CSV
          </Button>
          <Button className="button" onPress={() => exportSvg(store, host)}>
            Drawing SVG
          </Button>
        </div>
      </section>
      <SheetArticle sheet={sheet} />
    </div>
  );
}

function PaperChoice() {
  const store = useAppStore();
  const paper = useApp((state) => state.preferences.paper);
  return (
    <ToggleButtonGroup
      aria-label="Paper"
      className="row"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[paper]}
      onSelectionChange={(keys) => store.getState().setPreferences({ paper: keys.has('Letter') ? 'Letter' : 'A4' })}
    >
      <ToggleButton id="A4">A4</ToggleButton>
      <ToggleButton id="Letter">Letter</ToggleButton>
    </ToggleButtonGroup>
  );
}
