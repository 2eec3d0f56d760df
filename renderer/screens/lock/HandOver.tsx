import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import type { Post } from "../../../electron/domain/lock/post.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { firstPathOf } from "../../app/standing.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./Lock.module.css";

type Volunteer = Exclude<Post, { role: "organiser" }>;

/** Hands the desk over with one press; only the PIN takes it back. */
export function HandOver() {
  const { t } = useTranslation(["lock", "common"]);
  const trpc = useTRPC();
  const [, go] = useLocation();
  const standing = () => queryClient.invalidateQueries(trpc.lock.standing.queryFilter());
  const handOver = useMutation(
    trpc.lock.handOver.mutationOptions({
      async onSuccess(_nothing, { to }) {
        go(firstPathOf(to as Volunteer));
        await standing();
      },
    }),
  );
  const lockNow = useMutation(trpc.lock.lockNow.mutationOptions({ onSuccess: standing }));
  const busy = handOver.isPending || lockNow.isPending;
  const give = (to: Volunteer) => handOver.mutate({ to });
  return (
    <Panel title={t("handOver.title")}>
      <p className="measure">{t("handOver.what")}</p>
      <div className={css.posts}>
        <Button size="large" busy={busy} onPress={() => give({ role: "check-in" })}>
          {t("common:place.checkIn")}
        </Button>
        {testCodes.map((test) => (
          <Button key={test} size="large" busy={busy} onPress={() => give({ role: "station", test })}>
            <TestMark test={test} size="small" name="ability" />
          </Button>
        ))}
      </div>
      <p className="measure">{t("handOver.lockWhat")}</p>
      <div>
        <Button kind="primary" size="large" busy={busy} onPress={() => lockNow.mutate()}>
          {t("handOver.lock")}
        </Button>
      </div>
    </Panel>
  );
}
