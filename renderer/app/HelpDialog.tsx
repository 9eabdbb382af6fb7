import { Button } from 'react-aria-components';
import { AppDialog } from './AppDialog.tsx';
import { ACTIONS } from './actions.ts';
import { shownChord } from './keys.ts';

const STEPS = [
  'Drag a part from the Parts list onto the boat. It snaps to a named place when it is near one.',
  'Point at a part to see its ports. Drag from a port to another: what fits is ringed, what does not says why.',
  'Drop a splitter, joint or arrestor on a run to put it into that run.',
  'Select a run and drag it to bend it. Drag a bend to move it, double-click it to remove it.',
  'The Outline lists the same things for the keyboard; everything the pointer does has a command there too.',
];

/** How to work the drawing, every shortcut, and where the program's word ends. */
export function HelpDialog() {
  return (
    <AppDialog id="help" title="How to work with the drawing" isWide>
      {(close) => (
        <>
          <div className="dialog-body">
            <ol className="stack">
              {STEPS.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
            <h3 className="heading">Keys</h3>
            <table className="table">
              <tbody>
                {ACTIONS.filter(({ keys }) => keys.length > 0).map((action) => (
                  <tr key={action.id}>
                    <th scope="row">{action.name}</th>
                    <td>{action.keys.map(shownChord).join('  or  ')}</td>
                  </tr>
                ))}
              </tbody>
            </table>
            <p className="caution">
              What is computed here is an estimate for planning. Local codes and a licensed or certified installer
              govern. Isolate and fuse DC before work; never transmit without an antenna; keep clear of antennas that
              radiate; look up for overhead lines before a mast moves.
            </p>
          </div>
          <div className="dialog-actions">
            <Button className="button button--primary" onPress={close}>
              Close
            </Button>
          </div>
        </>
      )}
    </AppDialog>
  );
}
