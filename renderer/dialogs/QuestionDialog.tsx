import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useApp } from '../store/context.ts';
import { whenSaid } from '../ui/when.ts';
import { questionWords } from './questionWords.ts';

/** What the program must ask before it goes on, over any other dialog. Escape is Cancel; a press beside it does nothing. */
export function QuestionDialog() {
  const open = useApp((state) => state.question);
  const words = open && questionWords(open.question, whenSaid);
  return (
    <ModalOverlay
      className="react-aria-ModalOverlay question-overlay"
      isOpen={open !== null}
      onOpenChange={(isOpen) => {
        if (!isOpen) open?.answer('cancel');
      }}
    >
      <Modal>
        {/* A question that follows another at once is one of its own, with its own focus. */}
        <Dialog key={words?.title} className="dialog" role="alertdialog">
          <Heading slot="title" className="dialog-title question-title">
            {words?.title}
          </Heading>
          <div className="dialog-body">
            {words?.sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
          <div className="dialog-actions">
            {words?.choices.map(({ id, name, loses }, i) => {
              const isMain = i === words.choices.length - 1;
              const kind = isMain ? 'button button--primary' : loses ? 'button button--danger' : 'button';
              return (
                <Button key={id} className={kind} onPress={() => open?.answer(id)} autoFocus={isMain}>
                  {name}
                </Button>
              );
            })}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
