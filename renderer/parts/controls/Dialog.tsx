import type { ReactNode } from "react";
import { Dialog as AriaDialog } from "react-aria-components/Dialog";
import { Heading } from "react-aria-components/Heading";
import { Modal, ModalOverlay } from "react-aria-components/Modal";
import { InDialog } from "../../app/keys.ts";
import css from "./Dialog.module.css";

interface DialogProps {
  /** False for one that is not there; left out, it is open. */
  readonly open?: boolean;
  /** Called when Escape, a press outside, or the program closes it. */
  readonly onClose: () => void;
  readonly title: ReactNode;
  readonly children: ReactNode;
  /** The buttons, the main one last. */
  readonly actions?: ReactNode;
  /** question: must be answered; a press outside does not close it. */
  readonly kind?: "plain" | "question";
}

/** A dialog over the screen: the focus stays inside and returns to where it was. */
export function Dialog({ open = true, onClose, title, children, actions, kind = "plain" }: DialogProps) {
  return (
    <ModalOverlay
      className={css.overlay ?? ""}
      isOpen={open}
      isDismissable={kind === "plain"}
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose();
      }}
    >
      <Modal className={css.modal ?? ""}>
        <AriaDialog className={css.dialog ?? ""} role={kind === "question" ? "alertdialog" : "dialog"}>
          <Heading slot="title" level={2} className={css.title ?? ""}>
            {title}
          </Heading>
          <InDialog value={true}>
            <div className={css.body}>{children}</div>
            {actions !== undefined && <div className={css.actions}>{actions}</div>}
          </InDialog>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
