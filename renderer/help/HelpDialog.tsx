import { lazy, Suspense } from 'react';
import { Button } from 'react-aria-components';
import { AppDialog } from '../app/AppDialog.tsx';

// The guide's text is fetched from the program's own files when help is first opened, not at every start.
const HelpPages = lazy(() => import('./HelpPages.tsx').then(({ HelpPages: pages }) => ({ default: pages })));

/** The user guide and the keys, to read and to search. Nothing of it comes from a network. */
export function HelpDialog() {
  return (
    <AppDialog id="help" title="Help" isWide>
      {(close) => (
        <>
          <Suspense fallback={<div className="dialog-body help-body" />}>
            <HelpPages close={close} />
          </Suspense>
          <div className="dialog-actions">
            <p className="small soft settings-note">
              What is computed here is an estimate for planning. Local codes and a licensed or certified installer
              govern.
            </p>
            <Button className="button button--primary" onPress={close}>
              Close
            </Button>
          </div>
        </>
      )}
    </AppDialog>
  );
}
