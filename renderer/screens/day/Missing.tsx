import { useTranslation } from "react-i18next";
import type { Answers } from "../../app/answers.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import css from "./DayScreen.module.css";
import { NeedLink } from "./NeedLink.tsx";

type Told = Answers["day"]["beforeClosing"];

interface MissingProps {
  readonly told: Told;
  /** Called when a link to something missing is followed. */
  readonly onGo: () => void;
}

/** Lists what a day lacks before it is closed, each linked to the screen where it is done. */
export function Missing({ told, onGo }: MissingProps) {
  const { t } = useTranslation("planning");
  const lines = useLines(told);
  if (lines.length === 0) return <p>{t("closing.nothing")}</p>;
  return (
    <>
      <p>{t("closing.missing")}</p>
      <Stack as="ul" className={css.needs}>
        {lines.map(({ to, text }) => (
          <li key={text}>
            <NeedLink to={to} text={text} onGo={onGo} />
          </li>
        ))}
      </Stack>
    </>
  );
}

function useLines({ expected, waiting, heats }: Told): { to: string; text: string }[] {
  const { t } = useTranslation("planning");
  const testWord = useTestWords();
  function write({ count, names }: Told["expected"]): string {
    const more = count - names.length;
    return more > 0 ? t("closing.more", { names: names.join(", "), count: more }) : names.join(", ");
  }
  const { count } = expected;
  return [
    ...heats.map((test) => ({
      to: `/station/${test}`,
      text: t("closing.heat", { test: testWord(test, "ability") }),
    })),
    ...waiting.map(({ test, ...people }) => ({
      to: `/station/${test}`,
      text: t("closing.waits", {
        test: testWord(test, "ability"),
        count: people.count,
        names: write(people),
      }),
    })),
    ...(count > 0
      ? [{ to: "/check-in", text: t("closing.expected", { count, names: write(expected) }) }]
      : []),
  ];
}
