import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

export interface DialogProps {
  readonly isOpen: boolean;
  readonly onOpenChange: (isOpen: boolean) => void;
}

/**
 * A wide dialog whose content is mounted only while it is open, so that it starts afresh each time. A press beside it
 * closes it only where nothing typed can be lost by that.
 */
export function DialogFrame({
  isOpen,
  onOpenChange,
  title,
  children,
  isDismissable = false,
}: DialogProps & { title: string; children: (close: () => void) => ReactNode; isDismissable?: boolean }) {
  return (
    <ModalOverlay isOpen={isOpen} onOpenChange={onOpenChange} isDismissable={isDismissable}>
      <Modal>
        <Dialog className="dialog dialog--wide">
          <Heading slot="title" className="dialog-title">
            {title}
          </Heading>
          {children(() => onOpenChange(false))}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
