import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { Sheet } from '../../../core/report/types.ts';
import { SheetArticle } from './SheetArticle.tsx';

/** The sheet over the whole window, wide enough for its schedules. */
export function LargeSheet({ sheet }: { sheet: Sheet }) {
  return (
    <DialogTrigger>
      <Button className="button">Read it large</Button>
      <ModalOverlay isDismissable>
        <Modal>
          <Dialog className="dialog dialog--wide dialog--sheet">
            {({ close }) => (
              <>
                <Heading slot="title" className="dialog-title">
                  Install sheet
                </Heading>
                <div className="dialog-body sheet-large">
                  <SheetArticle sheet={sheet} />
                </div>
                <div className="dialog-actions">
                  <Button className="button button--primary" onPress={close}>
                    Close
                  </Button>
                </div>
              </>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
