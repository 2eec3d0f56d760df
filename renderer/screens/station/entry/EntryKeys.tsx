import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";

interface EntryKeysProps {
  /** What the key that saves says. */
  readonly save: string;
  readonly busy: boolean;
  readonly onSave: () => void;
  readonly onLeave: () => void;
  /** Keys besides these. */
  readonly children?: ReactNode;
}

/** The keys under an athlete's typed values: to save them, or to turn to somebody else. */
export function EntryKeys({ save, busy, onSave, onLeave, children }: EntryKeysProps) {
  const { t } = useTranslation("station");
  return (
    <Row gap={3} lines={2} wrap>
      <Button kind="primary" hint="Enter" busy={busy} onPress={onSave}>
        {save}
      </Button>
      <Button hint="Esc" onPress={onLeave}>
        {t("entry.other")}
      </Button>
      {children}
    </Row>
  );
}
