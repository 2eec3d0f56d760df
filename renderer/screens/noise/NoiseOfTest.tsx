import { useTranslation } from "react-i18next";
import { useTestWords } from "../../app/testWords.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useSay } from "../../words/say.ts";
import { useFacts } from "./facts.ts";
import css from "./Noise.module.css";
import type { TestNoise } from "./types.ts";
import { Zones } from "./Zones.tsx";

/** One test: the figure that is used, what it is made of, and from which mark on a gain is likely or clear. */
export function NoiseOfTest({ told }: { readonly told: TestNoise }) {
  const { t } = useTranslation(["noise", "common"]);
  const testWord = useTestWords();
  const say = useSay();
  const facts = useFacts(told);
  const { test, kind, amount, used, assumed, pairs, source } = told;
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
        unit={t(`unit.${used.unit}`, { count: Number(used.number) })}
        {...(kind === "share" && { note: t("share", { percent: Number((100 * amount).toFixed(1)) }) })}
      />
      <Zones told={told} />
      <div className={css.facts}>
        <p>{first}</p>
        <p>{t("start", { source: say(source) })}</p>
        {more.map((fact) => (
          <p key={fact}>{fact}</p>
        ))}
      </div>
    </li>
  );
}
