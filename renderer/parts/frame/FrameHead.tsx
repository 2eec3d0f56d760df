import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { useInitials } from "../../app/initials.tsx";
import { useStanding } from "../../app/standing.tsx";
import { isDevice } from "../../app/table.ts";
import { useWriteDay } from "../../words/dates.ts";
import { Button } from "../controls/Button.tsx";
import { Tag } from "../marks/Tag.tsx";
import css from "./FrameHead.module.css";
import { HandedOver } from "./HandedOver.tsx";
import { LanguageChoice } from "./LanguageChoice.tsx";
import { LeaveDemo } from "./LeaveDemo.tsx";

interface FrameHeadProps {
  readonly day: {
    readonly title: string;
    readonly date: string;
    readonly state: "planned" | "open" | "closed";
  } | null;
  readonly demo: boolean;
}

/** The top of the desk: the day and its state, the initials, and the button for the big screen. */
export function FrameHead({ day, demo }: FrameHeadProps) {
  const { t } = useTranslation("common");
  const writeDay = useWriteDay();
  const { initials, change } = useInitials();
  const { post } = useStanding();
  const isOrganiser = post.role === "organiser";
  return (
    <div className={css.head} data-demo={demo}>
      {day !== null && (
        <p className={css.day}>
          <strong className={`lead figures ${css.title}`}>{day.title}</strong>
          <span>{writeDay(day.date)}</span>
          <Tag tone={day.state === "open" ? "go" : "quiet"}>{t(`day.${day.state}`)}</Tag>
        </p>
      )}
      {demo && <Tag>{t("demo.invented")}</Tag>}
      {/* A device's own line says it, which never gives way. */}
      {post.role !== "organiser" && !isDevice && <HandedOver post={post} />}
      <div className={css.tools}>
        {demo && isOrganiser && <LeaveDemo />}
        {day === null && !isDevice && <LanguageChoice />}
        {day !== null && (
          <Button onPress={() => void change()}>
            {initials === null ? t("initials.none") : t("initials.some", { initials })}
          </Button>
        )}
        {day !== null && bridge !== null && isOrganiser && (
          <Button onPress={() => void bridge?.openBoard()}>{t("frame.openBoard")}</Button>
        )}
      </div>
    </div>
  );
}
