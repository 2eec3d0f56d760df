import { useTranslation } from "react-i18next";
import type { Membership } from "../../app/membership.ts";
import { useReady } from "../../app/ready.ts";
import { useNameOfPlace } from "../../parts/devices/places.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { LeaveTable } from "../../parts/frame/LeaveTable.tsx";
import css from "./Join.module.css";

/** What a joined laptop shows that was started while the table is away: its place, and what it waits for. */
export function AwayAtStart({ membership }: { readonly membership: Extract<Membership, { is: "joined" }> }) {
  const { t } = useTranslation(["atTable", "common"]);
  const nameOfPlace = useNameOfPlace();
  const { address, place, otherKey } = membership;
  useReady(true);
  return (
    <main className={css.page}>
      <p className={`figures ${css.print}`}>{t("common:name")}</p>
      <h1>{t("away.title")}</h1>
      <Stack gap={3} className={css.waiting} role="status">
        <p className="lead">{t("away.what", { place: nameOfPlace(place), address })}</p>
        <p>{otherKey ? t("away.otherKey", { address }) : t("away.check")}</p>
      </Stack>
      <p>
        <LeaveTable />
      </p>
    </main>
  );
}
