import { useTranslation } from "react-i18next";
import { clearChance, likelyChance } from "../../../electron/domain/statistics/change.ts";
import { normalQuantile } from "../../../electron/domain/statistics/normal.ts";
import type { Answers } from "../../app/answers.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useWriteDay } from "../../words/dates.ts";
import { useUnitWord } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { isWideShare } from "../../words/wide.ts";
import css from "./Noise.module.css";

type TestNoise = Answers["noise"]["get"]["tests"][number];

/** Length of the tape in spreads of a difference, as on the board. */
const length = 3.4;
const likely = normalQuantile(likelyChance);
const clear = normalQuantile(clearChance);

/** Draws the first marks that are a likely and a clear gain, starting from a typical mark. */
function Zones({ told }: { readonly told: TestNoise }) {
  const { t } = useTranslation(["noise", "common"]);
  const writeDay = useWriteDay();
  const { typical, likelyFrom, clearFrom } = told;
  const show = useShowNumber();
  const word = useUnitWord()(typical.written.unit);
  const zones = [
    { zone: "noise", starts: typical.written.number, grow: likely },
    { zone: "likely", starts: likelyFrom?.number, grow: clear - likely },
    { zone: "clear", starts: clearFrom?.number, grow: length - clear },
  ] as const;
  return (
    <Stack gap={1}>
      <p className="small quiet">
        {typical.date === null ? t("from.example") : t("from.day", { date: writeDay(typical.date) })}
      </p>
      <ol className={css.lane}>
        {zones.map(({ zone, starts, grow }) => (
          <li key={zone} data-zone={zone} style={{ flexGrow: grow }}>
            <span className={css.bar} aria-hidden="true" />
            <strong className={css.starts}>{show(starts ?? "–")}</strong>
            {zone === "noise" && word !== "" && ` ${word}`}
            <span className={`small quiet ${css.word}`}>{t(`zone.${zone}`)}</span>
          </li>
        ))}
      </ol>
    </Stack>
  );
}

/** Shows one test's typical error, its source, and the first marks that are a likely or a clear gain. */
export function NoiseOfTest({ told }: { readonly told: TestNoise }) {
  const { t } = useTranslation(["noise", "common"]);
  const testWord = useTestWords();
  const say = useSay();
  const facts = useFacts(told);
  const { test, used, least, assumed, pairs, source } = told;
  const unitOf = ({ number, unit }: TestNoise["used"]) =>
    t(`common:counted.${unit}`, { count: Number(number) });
  const [first, ...more] = facts;
  return (
    <li className={css.test} data-test={test} aria-label={testWord(test, "name")}>
      <Stack gap={2} align="start" className="strong">
        <TestMark test={test} name="ability" />
        <Tag tone={assumed ? "quiet" : "go"}>
          {assumed ? t("tag.assumed") : t("tag.pairs", { count: pairs })}
        </Tag>
      </Stack>
      <BigNumber
        label={t("swings")}
        number={used.number}
        unit={unitOf(used)}
        note={t("least", { number: least.number, unit: unitOf(least) })}
      />
      <Zones told={told} />
      <div className={`small quiet ${css.facts}`}>
        <p>{first}</p>
        <p>{t("start", { source: say(source) })}</p>
        {more.map((fact) => (
          <p key={fact}>{fact}</p>
        ))}
      </div>
    </li>
  );
}

/** Describes one test's noise in plain sentences; the first says what the figure is based on. */
function useFacts(told: TestNoise): string[] {
  const { t } = useTranslation(["noise", "common"]);
  const written = ({ number, unit }: TestNoise["used"]) => ({
    number,
    unit: t(`common:counted.${unit}`, { count: Number(number) }),
  });
  const { own, trials, icc, clearBy, worthwhile, hall, learning } = told;
  const facts = [clearBy === null ? t("neverClear") : t("clear", written(clearBy))];
  if (own === null) facts.unshift(t("assumed"));
  else {
    const [low, high] = [own.low.number, own.high.number];
    facts.unshift(t("own", { used: own.used.number, unit: written(own.used).unit, low, high }));
  }
  const days = { count: hall.days, ...written(hall.used) };
  facts.push(t(hall.days === 0 ? "hall.assumed" : "hall.days", days));
  if (learning.length === 0) facts.push(t("learning.none"));
  for (const { from, by, low, high, athletes } of learning) {
    const ends = { low: low.number, high: high.number };
    facts.push(t("learning.step", { from, to: from + 1, count: athletes, ...written(by), ...ends }));
  }
  if (worthwhile !== null) {
    const seen = clearBy !== null && Number(worthwhile.number) >= Number(clearBy.number);
    facts.push(t(seen ? "worthwhile.more" : "worthwhile.less", written(worthwhile)));
  }
  if (icc !== null) {
    const [percent, low, high] = [icc.value, icc.low, icc.high].map((share) =>
      Math.round(100 * Math.max(0, share)),
    );
    const means = t("icc", { percent, low, high });
    facts.push(isWideShare(icc) ? `${means} ${t("iccWide")}` : means);
  }
  if (trials !== null) {
    const { used, athletes, raised } = trials;
    const values = { count: athletes, used: used.number, unit: written(used).unit };
    facts.push(t(raised ? "trials.raised" : "trials.below", values));
  }
  return facts;
}
