import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { Answer } from "../../parts/Answer.tsx";
import { EmptyState } from "../../parts/EmptyState.tsx";
import { Section } from "../../parts/Panel.tsx";
import { Progress } from "../../parts/Progress.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { BringBundle } from "./BringBundle.tsx";
import { LookAtBundle } from "./LookAtBundle.tsx";
import css from "./Reference.module.css";
import { ReferenceTable } from "./ReferenceTable.tsx";
import { RefusedBundle } from "./RefusedBundle.tsx";
import { type BundleInHand, useBundle } from "./useBundle.ts";

/** Bundles of other organisers to compare with: bring one, say where it is from, look at those that are kept. */
export function ReferenceScreen() {
  const { t } = useTranslation("reference");
  const trpc = useTRPC();
  const list = useQuery(trpc.reference.list.queryOptions());
  const bundle = useBundle();
  return (
    <Screen title={t("title")} lead={t("lead")} ready={list.isFetched}>
      <div className={css.halves}>
        <InHand bundle={bundle} />
        <section className={css.how}>
          <h2>{t("how.title")}</h2>
          <ul>
            <li>{t("how.same")}</li>
            <li>{t("how.origin")}</li>
            <li>{t("how.steps")}</li>
            <li>{t("how.twenty")}</li>
          </ul>
        </section>
      </div>
      <Section title={t("list.title")}>
        <Answer query={list}>
          {(references) => (references.length === 0 ? <Empty /> : <ReferenceTable references={references} />)}
        </Answer>
      </Section>
    </Screen>
  );
}

function InHand({ bundle }: { readonly bundle: BundleInHand }) {
  const { t } = useTranslation("reference");
  const { standing, putAway } = bundle;
  switch (standing.step) {
    case "none":
      return <BringBundle bundle={bundle} />;
    case "bringing":
      return <Progress label={t("reading", { name: standing.name })} done={null} total={1} />;
    case "refused":
      return <RefusedBundle name={standing.name} sentence={standing.sentence} onDone={putAway} />;
    case "brought":
      return <LookAtBundle name={standing.name} bundle={standing.bundle} onDone={putAway} />;
  }
}

function Empty() {
  const { t } = useTranslation("reference");
  return <EmptyState title={t("empty.title")} steps={[t("empty.ask"), t("empty.bring"), t("empty.look")]} />;
}
