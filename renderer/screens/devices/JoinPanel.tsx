import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import css from "./Devices.module.css";
import { QrCode } from "./QrCode.tsx";
import { type NetworkView, useNetworkActs } from "./view.ts";

interface JoinPanelProps {
  readonly on: NonNullable<NetworkView["on"]>;
  readonly code: NetworkView["code"];
  readonly shutMs: number;
}

/** How a device joins: what it opens, what it types, and what its browser will show before. */
export function JoinPanel({ on, code, shutMs }: JoinPanelProps) {
  const { t } = useTranslation("devices");
  return (
    <Panel title={t("join.title")}>
      <div className={css.join}>
        <div className={css.qr}>
          {code === null ? <NoCode shutMs={shutMs} /> : <QrCode text={code.link} label={t("join.qr")} />}
        </div>
        <div>
          <Stack as="dl" gap={1} className={css.keys}>
            <dt>{t("join.address")}</dt>
            <dd className={`lead strong ${css.address}`}>{on.url}</dd>
            {code !== null && (
              <>
                <dt>{t("join.code")}</dt>
                <dd className={`figures ${css.code}`}>
                  {code.code} <CodeTime leftMs={code.leftMs} />
                </dd>
              </>
            )}
            <dt>{t("join.key")}</dt>
            <dd className="strong">{on.shortForm}</dd>
          </Stack>
          <p className={css.laptop}>{t("join.laptop")}</p>
        </div>
        <ol className={css.steps}>
          <li>{t("join.same")}</li>
          <li>{t("join.scan")}</li>
          <li>{t("join.warning")}</li>
          <li>{t("join.type")}</li>
          <li>{t("join.yes")}</li>
        </ol>
      </div>
    </Panel>
  );
}

/** Nobody can join now: the press that lets them, or why it has to wait. */
function NoCode({ shutMs }: { readonly shutMs: number }) {
  const { t } = useTranslation("devices");
  const { openJoining } = useNetworkActs();
  if (shutMs > 0) return <p>{t("join.shut", { count: Math.ceil(shutMs / 1_000) })}</p>;
  return (
    <Button kind="primary" size="large" busy={openJoining.isPending} onPress={() => openJoining.mutate()}>
      {t("join.open")}
    </Button>
  );
}

function CodeTime({ leftMs }: { readonly leftMs: number }) {
  const { t } = useTranslation("devices");
  const { closeJoining } = useNetworkActs();
  return (
    <Row as="span" gap={3} align="center" wrap className={css.left}>
      {t("join.left", { count: Math.ceil(leftMs / 1_000) })}
      <Button onPress={() => closeJoining.mutate()}>{t("join.close")}</Button>
    </Row>
  );
}
