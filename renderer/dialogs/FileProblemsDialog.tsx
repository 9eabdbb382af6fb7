import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { AppDialog } from '../app/AppDialog.tsx';
import { useHost } from '../host/context.ts';
import { useApp } from '../store/context.ts';
import type { ReadableLine, ReadableText } from '../store/readable.ts';

/** Why a file was not opened: each thing wrong in it, where, the mend, and what of it can be read. Nothing was loaded. */
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
            {problems ? <Readable readable={problems.readable} /> : null}
            {problems?.handle ? <SetAside handle={problems.handle} /> : null}
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

function Readable({ readable: { parts, isCut } }: { readable: ReadableText }) {
  const view = useRef<HTMLDivElement>(null);
  useEffect(() => {
    view.current?.querySelector('mark')?.scrollIntoView({ block: 'center' });
  }, []);
  const isEmpty = parts.every((lines) => lines.every(({ before, mark, after }) => before + mark + after === ''));
  if (isEmpty) return null;
  return (
    <section className="stack" aria-label="What can be read of it">
      <h3 className="heading">What can be read of it</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long text must scroll by keyboard. */}
      <div className="readable" ref={view} tabIndex={0}>
        {parts.map((lines, i) => (
          <div key={lines[0]?.number ?? 0} className={i > 0 ? 'readable-part' : undefined}>
            {lines.map((line) => (
              <Line key={line.number} line={line} />
            ))}
          </div>
        ))}
      </div>
      {isCut ? <p className="small soft">Only a part of the file is shown.</p> : null}
    </section>
  );
}

function Line({ line: { number, before, mark, after } }: { line: ReadableLine }) {
  return (
    <div className="readable-line" data-marked={mark !== '' || undefined}>
      <span className="readable-number">{number}</span>
      <span className="readable-text">
        {before}
        {mark === '' ? null : <mark title="The first problem is here">{mark}</mark>}
        {after}
      </span>
    </div>
  );
}

/** Makes a copy of the file that cannot be read, beside it, so that mending or overwriting it loses nothing. */
function SetAside({ handle }: { handle: string }) {
  const host = useHost();
  const [outcome, setOutcome] = useState<{ readonly done: boolean; readonly text: string } | null>(null);
  const setAside = async (): Promise<void> => {
    const answer = await host.setAside({ handle });
    const where = host.kind === 'browser' ? 'is in your downloads' : 'stands beside it';
    setOutcome(
      answer.ok ? { done: true, text: `A copy ${where}: ${answer.value.name}` } : { done: false, text: answer.message },
    );
  };
  return (
    <div className="row" aria-live="polite">
      {outcome?.done ? null : (
        <Button className="button" onPress={() => void setAside()}>
          Set a copy aside
        </Button>
      )}
      <span className={outcome && !outcome.done ? 'small error' : 'small soft'}>
        {outcome?.text ?? 'Before you mend the file or ask someone to: the copy keeps it as it is now.'}
      </span>
    </div>
  );
}
