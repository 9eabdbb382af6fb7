import type { ReactNode } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useApp } from '../store/context.ts';
import type { DialogId } from '../store/view.ts';

/** Whether this dialog is the open one, and how to open or close it. */
export function useDialog(id: DialogId): { isOpen: boolean; onOpenChange: (isOpen: boolean) => void } {
  const isOpen = useApp((state) => state.dialog === id);
  const setView = useApp((state) => state.setView);
  return { isOpen, onOpenChange: (open) => setView({ dialog: open ? id : null }) };
}

/** The frame of the shell's dialogs; what is inside is mounted only while it is open, so it starts afresh each time. */
export function AppDialog({
  id,
  title,
  children,
  isWide = false,
}: {
  id: DialogId;
  title: string;
  children: (close: () => void) => ReactNode;
  isWide?: boolean;
}) {
  const { isOpen, onOpenChange } = useDialog(id);
  return (
    <ModalOverlay isOpen={isOpen} onOpenChange={onOpenChange} isDismissable>
      <Modal>
        <Dialog className={isWide ? 'dialog dialog--wide' : 'dialog'}>
          <Heading slot="title" className="dialog-title">
            {title}
          </Heading>
          {children(() => onOpenChange(false))}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** The row of buttons under a dialog: Cancel and the one that does it. */
export function DialogActions({
  close,
  name,
  isEnabled = true,
}: {
  close: () => void;
  name: string;
  isEnabled?: boolean;
}) {
  return (
    <div className="dialog-actions">
      <Button className="button" onPress={close}>
        Cancel
      </Button>
      <Button className="button button--primary" type="submit" isDisabled={!isEnabled}>
        {name}
      </Button>
    </div>
  );
}
