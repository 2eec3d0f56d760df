import { useTranslation } from "react-i18next";
import type { TestNoise } from "./types.ts";

/** What there is to say of one test's noise, in plain sentences; the first says what the figure stands on. */
export function useFacts(told: TestNoise): string[] {
  const { t } = useTranslation("noise");
  const written = ({ number, unit }: TestNoise["used"]) => ({
    number,
    unit: t(`unit.${unit}`, { count: Number(number) }),
  });
  const { own, trials, icc, detectable, worthwhile } = told;
  const facts = [t("detectable", written(detectable))];
  if (own === null) facts.unshift(t("assumed"));
  else {
    const [low, high] = [own.low.number, own.high.number];
    facts.unshift(t("own", { used: own.used.number, unit: written(own.used).unit, low, high }));
  }
  if (worthwhile !== null) {
    const seen = Number(worthwhile.number) > Number(detectable.number);
    facts.push(t(seen ? "worthwhile.more" : "worthwhile.less", written(worthwhile)));
  }
  if (icc !== null) {
    const [percent, low, high] = [icc.value, icc.low, icc.high].map((share) =>
      Math.round(100 * Math.max(0, share)),
    );
    facts.push(t("icc", { percent, low, high }));
  }
  if (trials !== null) {
    const { used, athletes, raised } = trials;
    const values = { count: athletes, used: used.number, unit: written(used).unit };
    facts.push(t(raised ? "trials.raised" : "trials.below", values));
  }
  return facts;
}
