import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useNow } from "../../../app/now.ts";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { Tag } from "../../../parts/marks/Tag.tsx";
import { faceOf, useTexts } from "../../../tests/registry.ts";
import { useWriteDay } from "../../../words/dates.ts";
import { useWriteValue } from "../../../words/marks.ts";
import { useWriteReady } from "../readyTime.ts";
import type { Found } from "../types.ts";
import css from "./AthleteCard.module.css";

interface AthleteCardProps {
  readonly test: TestCode;
  readonly found: Found;
  readonly variant: string;
  readonly lengths: LengthUnit;
}

/** Shows the athlete's name, large enough to compare with the person. */
export function AthleteName({ found }: Pick<AthleteCardProps, "found">) {
  const { t } = useTranslation("station");
  const writeReady = useWriteReady();
  const now = useNow();
  const { who, readyAt } = found;
  return (
    <Stack gap={1}>
      <p className={`figures ${css.name}`}>{who.name}</p>
      <Row as="p" gap={3} lines={0} align="center" wrap>
        {who.number !== "" && <span>{t("athlete.number", { number: who.number })}</span>}
        {who.league}
        {Date.parse(readyAt) > now && (
          <Tag tone="alert">{t("athlete.resting", { time: writeReady(readyAt) })}</Tag>
        )}
      </Row>
    </Stack>
  );
}

/** Shows the marks that the next one is compared with: today's, the last and the best. */
export function AthleteMarks({ test, found, variant, lengths }: AthleteCardProps) {
  const { t } = useTranslation("station");
  const history = found.history.find((each) => each.variant === variant) ?? found.history[0];
  const today = history?.today?.mark.state === "complete" ? history.today.mark.value : null;
  const earlier = history?.last != null && history.best !== null;
  return (
    <>
      {(today !== null || earlier) && (
        <Row as="dl" gap={5} lines={1} wrap>
          {today !== null && <Mark label={t("athlete.today")} value={today} {...{ test, lengths }} />}
          {history?.last != null && (
            <Mark label={t("athlete.last")} {...history.last} {...{ test, lengths }} />
          )}
          {history?.best != null && (
            <Mark label={t("athlete.best")} {...history.best} {...{ test, lengths }} />
          )}
        </Row>
      )}
      {!earlier && <p className="quiet">{t("athlete.never")}</p>}
      <Begun test={test} found={found} />
    </>
  );
}

/** Says which part of the test is entered already. */
function Begun({ test, found }: Pick<AthleteCardProps, "test" | "found">) {
  const textsOf = useTexts();
  const seen = found.standing.map((each) => protocolOf(test).attempt.parse(each.seen));
  const begun = faceOf(test).begun?.(textsOf(test), seen) ?? null;
  return begun === null ? null : <p className="strong">{begun}</p>;
}

interface MarkProps {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  readonly label: string;
  readonly value: number;
  readonly date?: string;
}

function Mark({ test, lengths, label, value, date }: MarkProps) {
  const writeDay = useWriteDay();
  const written = useWriteValue(test, lengths)(value);
  return (
    <Row gap={2} align="baseline" className={css.mark}>
      <dt>{label}</dt>
      <dd>
        <strong>{written}</strong>{" "}
        {date !== undefined && <span className={`small quiet ${css.date}`}>{writeDay(date)}</span>}
      </dd>
    </Row>
  );
}
