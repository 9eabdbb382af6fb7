import { Button } from 'react-aria-components';
import { useApp } from '../store/context.ts';
import { AppDialog } from './AppDialog.tsx';

/** Why a file was not opened: each thing wrong in it, where, and the mend. Nothing of it was loaded. */
export function FileProblemsDialog() {
  const problems = useApp((state) => state.fileProblems);
  return (
    <AppDialog id="file-problems" title={`${problems?.name ?? 'The file'} was not opened`} isWide>
      {(close) => (
        <>
          <div className="dialog-body">
            <ul className="file-problems">
              {problems?.sentences.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
            <p className="small soft">Nothing of it was loaded, and the file itself was not touched.</p>
          </div>
          <div className="dialog-actions">
            <Button className="button button--primary" onPress={close} autoFocus>
              Close
            </Button>
          </div>
        </>
      )}
    </AppDialog>
  );
}
