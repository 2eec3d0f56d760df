import { useTranslation } from "react-i18next";
import { Button } from "../../parts/Button.tsx";
import css from "./Athletes.module.css";

interface PagesProps {
  /** From 0. */
  readonly page: number;
  readonly pages: number;
  readonly onPage: (page: number) => void;
}

/** The way through a long list; nothing where one page holds all. */
export function Pages({ page, pages, onPage }: PagesProps) {
  const { t } = useTranslation("athletes");
  if (pages === 1) return null;
  return (
    <nav className={css.pages} aria-label={t("pages.label")}>
      <Button disabled={page === 0} onPress={() => onPage(page - 1)}>
        {t("pages.before")}
      </Button>
      <span role="status">{t("pages.at", { page: page + 1, pages })}</span>
      <Button disabled={page === pages - 1} onPress={() => onPage(page + 1)}>
        {t("pages.after")}
      </Button>
    </nav>
  );
}
