import { useQuery } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit, Written } from "../../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../../app/client.tsx";
import { useKeys } from "../../../app/keys.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { Beside } from "../../../parts/marks/Beside.tsx";
import { BigNumber } from "../../../parts/marks/BigNumber.tsx";
import { faceOf, readParameters, useTexts } from "../../../tests/registry.ts";
import { useWriteSeen } from "../../../tests/seen.ts";
import { useWriteDay } from "../../../words/dates.ts";
import { useUnitWord, useWriteChange, useWriteValue } from "../../../words/marks.ts";
import { useSay } from "../../../words/say.ts";
import { StandingSign } from "../live/run/Standing.tsx";
import type { AttemptView, Told } from "../types.ts";
import css from "./Result.module.css";
import type { Saved } from "./useKeyedEntry.ts";

interface ResultProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly saved: Saved;
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
}

/**
 * Shows what was just saved, legible from two steps away, and its standing; after a correction, what stands in its place
 * now. Screen readers read it politely.
 */
export function Result({ test, parameters, saved, lengths, onCorrect }: ResultProps) {
  const { t } = useTranslation(["station", "common"]);
  const say = useSay();
  const textsOf = useTexts();
  const trpc = useTRPC();
  const which = { test, attemptId: saved.attemptId, lengths };
  const now = useQuery(trpc.station.standing.queryOptions(which)).data;
  const attempt = now?.attempt ?? null;
  const { who } = attempt ?? saved;
  const told = now === undefined ? saved.told : now.told;
  const correct = useWhenThere(attempt, onCorrect);
  useKeys(attempt?.void != null ? {} : { "Alt+C": correct });
  const name = t("athlete.bib", { bib: who.bib });
  if (attempt?.void != null) return <Cancelled attempt={attempt} void={attempt.void} />;
  if (told === null && saved.waits && now === undefined) return <Waiting {...{ test, saved, lengths }} />;
  if (told === null) return <p role="status">{t("result.voided")}</p>;
  const { written, news } = told;
  const face = faceOf(test);
  const texts = textsOf(test);
  const rules = readParameters(test, parameters);
  const seen = protocolOf(test).attempt.parse(attempt?.seen ?? saved.seen[0]);
  const alone = told.mark.state === "incomplete" ? face.alone?.(texts, rules, seen) : undefined;
  const remark = face.remark?.(texts, seen, told.mark) ?? null;
  return (
    <Stack gap={3} align="start" className={css.result} data-standing={news?.standing ?? "none"}>
      <Row gap={5} lines={2} align="center" wrap role="status">
        <p className={`lead ${css.who}`}>
          <strong>{t(now?.corrected === true ? "result.corrected" : "result.title")}</strong> {name} ·{" "}
          {who.name}
        </p>
        {alone !== undefined && <Hero {...alone.written} />}
        <Hero {...written} />
        <Stack gap={1} align="start" className={css.news}>
          {alone !== undefined && <p>{alone.what}</p>}
          {written.note !== undefined && <p className="lead">{say(written.note)}</p>}
          {news !== null && (
            <p className={`lead figures ${css.standing}`}>
              <StandingSign standing={news.standing} />
              {t(`standing.${news.standing}`)}
            </p>
          )}
          {news !== null && <News test={test} lengths={lengths} news={news} />}
          <Beside beside={told.beside} />
          {remark !== null && <p>{remark}</p>}
        </Stack>
      </Row>
      <Button hint="Alt+C" onPress={correct}>
        {t("result.correct")}
      </Button>
    </Stack>
  );
}

/** In place of a result that the table has not answered for: it is not saved yet. */
function Waiting({ test, saved, lengths }: Pick<ResultProps, "test" | "saved" | "lengths">) {
  const { t } = useTranslation("station");
  const writeSeen = useWriteSeen();
  const seen = saved.seen.map((each) => writeSeen(test, each, lengths)).join(" · ");
  return (
    <Stack gap={3} align="start" className={css.result}>
      <p role="status">
        {t("athlete.bib", { bib: saved.who.bib })} · {saved.who.name} · <strong>{seen}</strong>.{" "}
        {t("result.waits")}
      </p>
    </Stack>
  );
}

/** Returns what corrects an attempt: at once, or as soon as the desk has said what stands, so that no key is lost. */
function useWhenThere(attempt: AttemptView | null, act: (attempt: AttemptView) => void): () => void {
  const [isWanted, setWanted] = useState(false);
  useEffect(() => {
    if (!isWanted || attempt === null) return;
    setWanted(false);
    act(attempt);
  }, [isWanted, attempt, act]);
  return () => (attempt === null ? setWanted(true) : act(attempt));
}

interface CancelledProps {
  readonly attempt: AttemptView;
  readonly void: NonNullable<AttemptView["void"]>;
}

/** In place of a result that was cancelled since: nothing of it counts. */
function Cancelled({ attempt: { who }, void: ended }: CancelledProps) {
  const { t } = useTranslation("station");
  return (
    <Stack gap={3} align="start" className={css.result}>
      <p role="status">
        {t("athlete.bib", { bib: who.bib })} · {who.name}. <strong>{t("recent.void", ended)}</strong>
      </p>
    </Stack>
  );
}

/** Shows a mark, or a single attempt, alone on the screen; nothing without a number. */
function Hero({ number, unit }: Pick<Written, "number" | "unit">) {
  const unitWord = useUnitWord();
  if (number === "") return null;
  return <BigNumber size="hero" number={number} unit={unitWord(unit, number) || undefined} />;
}

interface NewsProps {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  readonly news: NonNullable<Told["news"]>;
}

/** Says the change first, since the last test or from the level of several, then whether it exceeds the noise. */
function News({ test, lengths, news }: NewsProps) {
  const { t } = useTranslation("station");
  const writeDay = useWriteDay();
  const writeValue = useWriteValue(test, lengths);
  const writeChange = useWriteChange(test, lengths);
  if (news.level === null || news.change === null || news.verdict === null) return null;
  const last = writeValue(news.level);
  const date = writeDay(news.previousDate ?? "");
  const change = writeChange(news.change);
  // "0:12 longer than", but "+3 reps on".
  const worded = protocolOf(test).grain.unit === "s";
  const several = news.earlier > 1;
  const against = several
    ? t(worded ? "result.thanLevel" : "result.vsLevel", { change, level: last, results: news.earlier })
    : t(worded ? "result.thanLast" : "result.vsLast", { change, last, date });
  const same = several
    ? t("result.sameLevel", { level: last, results: news.earlier })
    : t("result.same", { last, date });
  return (
    <Stack gap={1}>
      <p>{news.change === 0 ? same : against}</p>
      {news.change !== 0 && <p className="strong">{t(`verdict.${news.verdict}`)}</p>}
      {news.standing === "below" && news.bestBefore !== null && (
        <p className="quiet">{t("result.best", { best: writeValue(news.bestBefore) })}</p>
      )}
    </Stack>
  );
}
