import { useTranslation } from "react-i18next";
import { Choice } from "../../parts/Choice.tsx";
import type { Wish } from "./preview.ts";
import css from "./WishChoice.module.css";

interface WishChoiceProps {
  readonly wish: Wish;
  readonly onChange: (wish: Wish) => void;
}

/** For whom the bundle is, and whether the marks of one athlete stay together. */
export function WishChoice({ wish, onChange }: WishChoiceProps) {
  const { t } = useTranslation("bundle");
  return (
    <div className={css.wishes}>
      <Choice
        label={t("wish.k.label")}
        value={String(wish.k)}
        options={[
          { value: "5", label: t("wish.k.5") },
          { value: "11", label: t("wish.k.11") },
        ]}
        onChange={(k) => onChange({ ...wish, k: k === "11" ? 11 : 5 })}
      />
      <Choice
        label={t("wish.kind.label")}
        value={wish.kind}
        options={[
          { value: "marks", label: t("wish.kind.marks") },
          { value: "profiles", label: t("wish.kind.profiles") },
        ]}
        onChange={(kind) => onChange({ ...wish, kind })}
      />
    </div>
  );
}
