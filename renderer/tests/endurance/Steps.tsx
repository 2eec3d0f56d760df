import { useTranslation } from "react-i18next";
import type { EnduranceParameters } from "../../../electron/domain/tests/endurance/protocol.ts";
import css from "../Steps.module.css";

/** Lists the exercises of a round, one per line. */
export function Steps({ parameters: { exercises } }: { readonly parameters: EnduranceParameters }) {
  const { t } = useTranslation("endurance");
  return (
    <ol className={css.steps}>
      {exercises.map(({ exercise, count }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
        <li key={index}>{t(`counted.${exercise}`, { count })}</li>
      ))}
    </ol>
  );
}
