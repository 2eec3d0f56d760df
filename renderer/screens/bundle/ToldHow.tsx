import { useTranslation } from "react-i18next";
import { Stack } from "../../parts/flow/Stack.tsx";
import type { Preview } from "./preview.ts";

const names = ["ageBand", "category", "leagueSize", "quarter"] as const;

interface ToldHowProps {
  readonly test: Preview["tests"][number];
  readonly bundle: Preview;
}

/** In words: the step, and what is not told; or why nothing is. */
export function ToldHow({ test, bundle: { k, kind } }: ToldHowProps) {
  const { t, i18n } = useTranslation(["bundle", "common"]);
  const { levels, step, parts } = test;
  if (levels === null || test.told === 0) {
    const enough = test.able >= 2 * k;
    const why = kind === "profiles" ? t("leaves.leftOut") : t("leaves.untold", { k });
    return <span className="small quiet">{enough ? why : t("leaves.few", { two: 2 * k })}</span>;
  }
  const list = new Intl.ListFormat(i18n.language, { type: "conjunction" });
  const hidden = names.filter((name) => levels[name] > 0).map((name) => t(`leaves.part.${name}`));
  const shown = names.filter((name) => levels[name] === 0).map((name) => t(`leaves.part.${name}`));
  return (
    <Stack as="span">
      <span>{stepsOf()}</span>
      <span className="small quiet">
        {t("leaves.told", { parts: list.format(shown) })}
        {hidden.length > 0 && ` ${t("leaves.hidden", { parts: list.format(hidden) })}`}
      </span>
    </Stack>
  );

  function stepsOf(): string {
    if (step === null || parts.every(({ low, high }) => low === null || high === null))
      return t("leaves.halves");
    const unit = t(`common:unit.${test.unit as "reps"}`, { defaultValue: test.unit });
    return step === 1 ? t("leaves.single", { unit }) : t("leaves.steps", { step, unit });
  }
}
