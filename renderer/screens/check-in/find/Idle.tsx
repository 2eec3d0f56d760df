import { useTranslation } from "react-i18next";
import { Button, LinkButton } from "../../../parts/controls/Button.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { Cautions } from "../../../parts/layout/Cautions.tsx";
import { EmptyState } from "../../../parts/layout/EmptyState.tsx";

interface IdleProps {
  /** Number of athletes on the list; null while unknown. */
  readonly listed: number | null;
  readonly onWalkUp: () => void;
}

/** Explains, while no athlete is open, how to check in, or how to fill the list. */
export function Idle({ listed, onWalkUp }: IdleProps) {
  const { t } = useTranslation("checkIn");
  if (listed === null) return null;
  if (listed === 0) {
    return (
      <EmptyState
        title={t("nobody.title")}
        steps={[t("nobody.sheets"), t("nobody.walkUp")]}
        action={
          <Row gap={3} wrap>
            <LinkButton kind="primary" to="/sheets">
              {t("nobody.go")}
            </LinkButton>
            <Button onPress={onWalkUp}>{t("walkUp")}</Button>
          </Row>
        }
      />
    );
  }
  return (
    <Stack gap={4} top>
      <EmptyState title={t("idle.title")} steps={[t("idle.type"), t("idle.scan"), t("idle.ask")]} />
      <Cautions />
    </Stack>
  );
}
