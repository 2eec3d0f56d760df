import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import css from "./Noise.module.css";
import { NoiseOfTest } from "./NoiseOfTest.tsx";

/** Shows each test's typical error, its source, and the change that exceeds it. */
export function NoiseScreen() {
  const { t } = useTranslation("noise");
  const trpc = useTRPC();
  const { lengths } = useLengthUnit();
  const noise = useQuery(trpc.noise.get.queryOptions({ lengths }));
  return (
    <Screen title={t("title")} lead={t("lead")} ready={noise.isFetched}>
      <Answer query={noise}>
        {({ tests, isDayOpen }) => (
          <>
            {isDayOpen && <p className="measure">{t("openDay")}</p>}
            <Stack as="ol">
              {tests.map((told) => (
                <NoiseOfTest key={told.test} told={told} />
              ))}
            </Stack>
          </>
        )}
      </Answer>
      <div className={css.halves}>
        <Words />
        <Stack gap={5}>
          <Section title={t("better.title")}>
            <p className="measure">{t("better.how")}</p>
            <p className="measure">{t("better.judges")}</p>
            <div>
              <LinkButton to="/study">{t("better.study")}</LinkButton>
            </div>
          </Section>
          <Section title={t("everybody.title")}>
            <p className="measure">{t("everybody.how")}</p>
            <p className="measure">{t("everybody.learnt")}</p>
            <p className="measure">{t("everybody.day")}</p>
          </Section>
        </Stack>
      </div>
    </Screen>
  );
}

/** Explains the three verdicts, as every screen, the board and the cards use them. */
function Words() {
  const { t } = useTranslation("noise");
  const words = [
    ["noise", t("words.noise"), t("words.noiseMeans")],
    ["likely", t("words.likely"), t("words.likelyMeans")],
    ["clear", t("words.clear"), t("words.clearMeans")],
  ] as const;
  return (
    <Section title={t("words.title")}>
      <Stack as="dl" gap={3} className={css.words}>
        {words.map(([zone, word, means]) => (
          <div key={zone} data-zone={zone}>
            <dt>{word}</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </Stack>
    </Section>
  );
}
