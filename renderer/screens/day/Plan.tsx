import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { useDistance } from "../../parts/plan/useDistance.ts";
import { writeDate } from "../../words/dates.ts";
import { ChangePlanDialog } from "./ChangePlanDialog.tsx";
import { DiscardDialog } from "./DiscardDialog.tsx";
import css from "./Plan.module.css";

interface PlanProps {
  readonly day: { readonly id: number; readonly title: string; readonly date: string };
  /** ISO 8601. */
  readonly today: string;
  /** Number of athletes on its list. */
  readonly listed: number;
}

/** Shows the name and the date of a planned day; both can be changed, and the day deleted, until it opens. */
export function Plan({ day, today, listed }: PlanProps) {
  const { t, i18n } = useTranslation("planning");
  const [open, setOpen] = useState<"change" | "discard" | null>(null);
  const distance = useDistance(day.date, today);
  const close = () => setOpen(null);
  return (
    <section aria-label={t("plan.label")}>
      <Row gap={4} lines={2} align="center" wrap between>
        <p>
          <strong>{day.title}</strong>, {writeDate(day.date, i18n.language)}
        </p>
        <Row gap={3} lines={2} wrap>
          <Button onPress={() => setOpen("change")}>{t("plan.change")}</Button>
          <Button kind="danger" onPress={() => setOpen("discard")}>
            {t("plan.discard")}
          </Button>
        </Row>
      </Row>
      {distance !== null && <p className={`alert ${css.far}`}>{t("far.note", { distance })}</p>}
      {open === "change" && <ChangePlanDialog day={day} today={today} onClose={close} />}
      {open === "discard" && <DiscardDialog day={day} listed={listed} onClose={close} />}
    </section>
  );
}
