import type { ReactNode } from "react";
import { Button } from "./Button.tsx";
import { Dialog } from "./Dialog.tsx";

interface ConfirmDialogProps {
  readonly title: ReactNode;
  /** What is asked: sentences, fields. */
  readonly children: ReactNode;
  /** The word that leaves everything as it is. */
  readonly cancel: string;
  /** The word that does it. */
  readonly confirm: string;
  readonly onConfirm: () => void;
  readonly onClose: () => void;
  readonly busy: boolean;
  /** primary: it can be changed again. */
  readonly kind?: "danger" | "primary";
  /** Whether Enter confirms at once, where nothing is typed before. */
  readonly autoFocus?: boolean;
}

/** A question that must be answered before something is done. */
export function ConfirmDialog({
  title,
  children,
  cancel,
  confirm,
  onConfirm,
  onClose,
  ...rest
}: ConfirmDialogProps) {
  const { busy, kind = "danger", autoFocus = false } = rest;
  return (
    <Dialog
      open
      kind="question"
      onClose={onClose}
      title={title}
      actions={
        <>
          <Button onPress={onClose}>{cancel}</Button>
          <Button kind={kind} autoFocus={autoFocus} busy={busy} onPress={onConfirm}>
            {confirm}
          </Button>
        </>
      }
    >
      {children}
    </Dialog>
  );
}
