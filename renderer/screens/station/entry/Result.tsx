import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { protocols } from "../../../../electron/domain/tests/registry.ts";
import { peakPower } from "../../../../electron/domain/tests/vertical/protocol.ts";
import { BigNumber } from "../../../parts/BigNumber.tsx";
import { Button } from "../../../parts/Button.tsx";
import { Row, Stack } from "../../../parts/layout/Stack.tsx";
import { useWriteDay } from "../../../words/dates.ts";
import { useUnitWord, useWriteChange, useWriteValue } from "../../../words/marks.ts";
import { useSay } from "../../../words/say.ts";
import { useStationKeys } from "../stationKeys.ts";
import type { Told } from "../types.ts";
import css from "./Result.module.css";
import type { Saved } from "./useKeyedEntry.ts";

interface ResultProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly saved: Saved;
  readonly lengths: LengthUnit;
  /** Corrects it, as soon as the list has it. */
  readonly correct: (() => void) | null;
}

/** What was just saved, to be read from two steps away, and whether it is news. Read out politely. */
export function Result({ test, parameters, saved, lengths, correct }: ResultProps) {
  const { t } = useTranslation(["station", "common"]);
  const say = useSay();
  const unitWord = useUnitWord();
  const { who, told } = saved;
  useStationKeys(correct === null ? {} : { "Alt+C": correct });
  const name = t("athlete.bib", { bib: who.bib });
  if (told === null) return <p role="status">{t("result.voided")}</p>;
  const { written, news } = told;
  const trial = told.mark.state === "incomplete" ? trialOf(parameters, saved.seen[0]) : null;
  return (
    <div className={css.result} data-standing={news?.standing ?? "none"}>
      <Row gap={5} lines={2} align="center" wrap role="status">
        <p className={css.who}>
          <strong>{t("result.title")}</strong> {name} · {who.name}
        </p>
        {trial !== null && <BigNumber size="hero" number={trial} unit={t("common:unit.landings")} />}
        {written.number !== "" && (
          <BigNumber size="hero" number={written.number} unit={unitWord(written.unit) || undefined} />
        )}
        <div className={css.news}>
          {trial !== null && <p>{t("result.trial")}</p>}
          {written.note !== undefined && <p className="lead">{say(written.note)}</p>}
          {news !== null && (
            <p className={css.standing}>
              <StandingSign standing={news.standing} />
              {t(`standing.${news.standing}`)}
            </p>
          )}
          {news !== null && <News test={test} lengths={lengths} news={news} />}
          <Power saved={saved} told={told} />
        </div>
      </Row>
      {correct !== null && (
        <Button hint="Alt+C" onPress={correct}>
          {t("result.correct")}
        </Button>
      )}
    </div>
  );
}

/** A shape for each way a mark can stand, so that one glance is enough: a flag of tape for a best. */
function StandingSign({ standing }: { readonly standing: NonNullable<Told["news"]>["standing"] }) {
  const paths = {
    first: "M12 3v18M3 12h18",
    best: "M4 15 12 7l8 8",
    equal: "M4 9h16M4 15h16",
    below: "M4 9l8 8 8-8",
  };
  return (
    <svg className={css.sign} viewBox="0 0 24 24" data-standing={standing} aria-hidden="true">
      <path d={paths[standing]} />
    </svg>
  );
}

interface NewsProps {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  readonly news: NonNullable<Told["news"]>;
}

/** Against the last test first, then whether that is more than noise. */
function News({ test, lengths, news }: NewsProps) {
  const { t } = useTranslation("station");
  const writeDay = useWriteDay();
  const writeValue = useWriteValue(test, lengths);
  const writeChange = useWriteChange(test, lengths);
  if (news.previous === null || news.change === null || news.verdict === null) return null;
  const last = writeValue(news.previous);
  const date = writeDay(news.previousDate ?? "");
  const change = writeChange(news.change);
  // "0:12 longer than", but "+3 reps on".
  const worded = test === "core" || test === "endurance";
  return (
    <Stack gap={1}>
      <p>
        {news.change === 0
          ? t("result.same", { last, date })
          : t(worded ? "result.thanLast" : "result.vsLast", { change, last, date })}
      </p>
      {news.change !== 0 && <p className="strong">{t(`verdict.${news.verdict}`)}</p>}
      {news.standing === "below" && news.bestBefore !== null && (
        <p className="quiet">{t("result.best", { best: writeValue(news.bestBefore) })}</p>
      )}
    </Stack>
  );
}

/** One direction of the quadrant jump by itself: as the mean of two that are the same. */
function trialOf(parameters: unknown, seen: unknown): string | null {
  const { agility } = protocols;
  const frozen = agility.parameters.safeParse(parameters);
  const one = agility.attempt.safeParse(seen);
  if (!frozen.success || !one.success) return null;
  const both = [
    { ...one.data, direction: "cw" as const },
    { ...one.data, direction: "ccw" as const },
  ];
  const mark = agility.score(frozen.data, both);
  return mark.state === "complete" ? agility.write(mark.value, "cm").number : null;
}

/** Height and mass together give an estimate of power; never ranked, and nothing below zero. */
function Power({ saved, told }: { readonly saved: Saved; readonly told: Told }) {
  const { t } = useTranslation("station");
  const seen = protocols.vertical.attempt.safeParse(saved.seen[0]);
  if (!seen.success || seen.data.bodyMass === undefined || told.mark.state !== "complete") return null;
  const watts = Math.round(peakPower(told.mark.value, seen.data.bodyMass) ?? 0);
  return watts <= 0 ? null : <p className="quiet">{t("result.power", { watts })}</p>;
}
