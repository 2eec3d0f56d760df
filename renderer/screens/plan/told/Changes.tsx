import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import type { Planned } from "../types.ts";
import { useWork } from "../useWork.ts";
import { Gains } from "./Gains.tsx";
import { Working } from "./Working.tsx";

/** Works out what one or two changes would bring, once the plan itself is there, and lists it. */
export function Changes({ planned }: { readonly planned: Planned }) {
  const { t } = useTranslation("plan");
  const trpc = useTRPC();
  const { data: result } = useQuery(trpc.plan.result.queryOptions());
  const isReady = result != null && !result.stale;
  const work = useWork("whatIfs", isReady);
  const { data: told } = useQuery(trpc.plan.whatIfs.queryOptions());
  if (result == null) return null;
  return (
    <Section title={t("gains.title")}>
      <p className="quiet measure">{t("gains.lead")}</p>
      {work.at !== "done" && <Working work={work} label={t("working.whatIfs")} />}
      {told != null && !told.stale && <Gains whatIfs={told.whatIfs} planned={planned} />}
    </Section>
  );
}
