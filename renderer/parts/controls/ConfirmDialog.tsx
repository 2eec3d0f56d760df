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
  /** True while it can't be done. */
  readonly disabled?: boolean;
  /** Further buttons, between the two. */
  readonly between?: ReactNode;
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
  const { busy, disabled = false, between, kind = "danger", autoFocus = false } = rest;
  return (
    <Dialog
      kind="question"
      onClose={onClose}
      title={title}
      actions={
        <>
          <Button onPress={onClose}>{cancel}</Button>
          {between}
          <Button kind={kind} autoFocus={autoFocus} disabled={disabled} busy={busy} onPress={onConfirm}>
            {confirm}
          </Button>
        </>
      }
    >
      {children}
    </Dialog>
  );
}
