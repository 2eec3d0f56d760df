import type { ReactNode } from "react";
import { Button } from "./Button.tsx";
import { Dialog } from "./Dialog.tsx";

interface ConfirmDialogProps {
  readonly title: ReactNode;
  /** The question: sentences, fields. */
  readonly children: ReactNode;
  /** The button that changes nothing. */
  readonly cancel: string;
  /** The button that does it. */
  readonly confirm: string;
  readonly onConfirm: () => void;
  readonly onClose: () => void;
  readonly busy: boolean;
  /** primary: it can be changed again. */
  readonly kind?: "danger" | "primary";
  /** True if Enter confirms at once, without any typing before. */
  readonly autoFocus?: boolean;
}

/** A question to answer before an action. */
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
