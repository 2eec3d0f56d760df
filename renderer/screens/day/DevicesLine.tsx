import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Row } from "../../parts/flow/Stack.tsx";

/** Says in one line whether devices at the stations reach this laptop, and leads to where that is turned on. */
export function DevicesLine() {
  const { t } = useTranslation("devices");
  const trpc = useTRPC();
  const { data: view } = useQuery(trpc.network.view.queryOptions());
  if (view === undefined) return null;
  const told =
    view.on === null ? t("line.off") : t("line.on", { count: view.devices.length, address: view.on.address });
  return (
    <Row as="p" gap={4} lines={2} align="center" wrap>
      <span>{told}</span>
      {view.asking.length > 0 && <strong>{t("asking.title", { count: view.asking.length })}</strong>}
      <Link href="/devices">{t("title")}</Link>
    </Row>
  );
}
