import { useTranslation } from "react-i18next";
import { Row, Stack } from "../../../../parts/flow/Stack.tsx";
import type { Live } from "../../../../tests/live/tool.ts";
import css from "./StageDone.module.css";
import { Standing } from "./Standing.tsx";

const standings = ["best", "first", "equal", "below"] as const;

/** Counts the marks of each standing, in place of the clock once all lanes are done. */
export function StageDone({ live }: { readonly live: Live }) {
  const { t } = useTranslation("live");
  // A result in doubt is no best yet, and the lane asks about it in place of its standing.
  const sure = live.lanes.filter(({ in: each }) => each.doubts.length === 0);
  const told = sure.map(({ in: each }) => each.told?.news?.standing ?? null);
  const doubted = live.lanes.length - sure.length;
  return (
    <Stack as="section" gap={4} top className={css.done} aria-label={t("done.title")}>
      <h2 className={css.title} role="status">
        {t("done.title")}
      </h2>
      <ul className={css.sums}>
        {standings.map((standing) => {
          const count = told.filter((each) => each === standing).length;
          if (count === 0) return null;
          return (
            <Row as="li" gap={3} align="center" key={standing}>
              <strong className={`figures ${css.count}`}>{count}</strong>
              <Standing standing={standing} />
            </Row>
          );
        })}
      </ul>
      {doubted > 0 && (
        <p className="strong" role="status">
          {t("done.doubted", { count: doubted })}
        </p>
      )}
      <p className="quiet">{t("done.how")}</p>
    </Stack>
  );
}
