import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import type { LiveHeat } from "../../../tests/live/types.ts";
import css from "../entry/Notice.module.css";

interface HeatBehindProps {
  readonly heat: LiveHeat | null;
  readonly onShow: () => void;
}

/** Says over the entry from paper that a heat of this test has athletes in its lanes, with the way back to it. */
export function HeatBehind({ heat, onShow }: HeatBehindProps) {
  const { t } = useTranslation("live");
  if (heat === null || heat.allDone || heat.lane.length === 0) return null;
  return (
    <div className={css.notice}>
      <Row gap={3} align="center" wrap between>
        <p role="status" className="strong">
          {t(`behind.${heat.state}`, { count: heat.lane.length })}
        </p>
        <Button hint="Alt+L" onPress={onShow}>
          {t("behind.show")}
        </Button>
      </Row>
    </div>
  );
}
