import { useTranslation } from "react-i18next";
import { Stack } from "../flow/Stack.tsx";
import css from "./Cautions.module.css";

interface CautionsProps {
  /** full: all of them, under a heading. short: the two that matter while somebody is moving. */
  readonly size?: "full" | "short";
}

const lines = { full: ["stop", "after", "rest", "rules", "advice"], short: ["stop", "after"] } as const;

/**
 * Shows the cautions beside every test and on every printed sheet: safety before any result.
 * resources/locales/README.md names the sources of these texts.
 */
export function Cautions({ size = "full" }: CautionsProps) {
  const { t } = useTranslation("cautions");
  return (
    <Stack as="aside" gap={2} className={css.cautions} data-size={size} aria-label={t("title")}>
      {size === "full" && <p className="strong">{t("title")}</p>}
      <Stack as="ul" gap={1} className={`small measure ${css.lines}`}>
        {lines[size].map((line) => (
          <li key={line}>{t(line)}</li>
        ))}
      </Stack>
    </Stack>
  );
}
