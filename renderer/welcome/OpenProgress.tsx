import { Button, Label, ProgressBar } from 'react-aria-components';
import { useHost } from '../host/context.ts';
import { useApp } from '../store/context.ts';
import './welcome.css';

/** Files below this are read before anyone could press Cancel, bytes. */
const WORTH_SHOWING_BYTES = 1_000_000;

/** How far the reading of a large file has come, with the way to stop it; what is open stays usable meanwhile. */
export function OpenProgress() {
  const host = useHost();
  const progress = useApp((state) => state.openProgress);
  if (progress === null || progress.size < WORTH_SHOWING_BYTES) return null;
  const { read, size } = progress;
  const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);
  return (
    <div className="progress-card">
      <ProgressBar value={read} maxValue={size} valueLabel={`${megabytes(read)} of ${megabytes(size)} MB`}>
        {({ percentage = 0, valueText }) => (
          <>
            <div className="row-between">
              <Label>{read < size ? 'Reading the file' : 'Checking the document'}</Label>
              <span className="small soft mono-num">{valueText}</span>
            </div>
            <div className="progress-track">
              <div className="progress-done" style={{ width: `${percentage}%` }} />
            </div>
          </>
        )}
      </ProgressBar>
      <Button className="button" onPress={() => void host.cancelOpen()}>
        Cancel
      </Button>
    </div>
  );
}
