import { useTranslation } from "react-i18next";
import { Row } from "../flow/Stack.tsx";
import css from "./PlotLegend.module.css";

/** Explains the symbols of every history plot; once per page is enough. */
export function PlotLegend() {
  const { t } = useTranslation("plots");
  return (
    <Row as="ul" gap={5} lines={2} wrap className={`small quiet ${css.legend}`}>
      <li>
        <Sign />
        <span>{t("legend.earlier")}</span>
      </li>
      <li>
        <Sign filled />
        <span>{t("legend.today")}</span>
      </li>
      <li>
        <Band />
        <span>{t("legend.noise")}</span>
      </li>
    </Row>
  );
}

/** A neutral shape, not a test's own: the legend is about all five. */
function Sign({ filled = false }: { readonly filled?: boolean }) {
  return (
    <svg className={css.sign} viewBox="0 0 24 24" aria-hidden="true" data-filled={filled}>
      <path d="M7 3h10l5.5 9L17 21H7L1.5 12z" />
    </svg>
  );
}

function Band() {
  return (
    <svg className={css.band} viewBox="0 0 40 24" aria-hidden="true">
      <rect x="0" y="4" width="40" height="16" />
      <path d="M0 4h40M0 20h40" />
    </svg>
  );
}
