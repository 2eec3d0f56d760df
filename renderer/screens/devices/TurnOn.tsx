import { useState } from "react";
import { useTranslation } from "react-i18next";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { useSay } from "../../words/say.ts";
import css from "./Devices.module.css";
import { type NetworkView, useNetworkActs } from "./view.ts";

/** What turning it on means, and for which network. */
export function TurnOn({ view }: { readonly view: NetworkView }) {
  const { t } = useTranslation("devices");
  return (
    <Panel title={t("on.title")}>
      <div className={css.turnOn}>
        <Stack as="ul" gap={2} className={`measure ${css.facts}`}>
          <li>{t("on.reach")}</li>
          <li>{t("on.yes")}</li>
          <li>{t("on.until")}</li>
          <li>{t("on.own")}</li>
        </Stack>
        {view.addresses.length === 0 ? <NoNetwork /> : <WhichNetwork view={view} />}
      </div>
    </Panel>
  );
}

function NoNetwork() {
  const { t } = useTranslation("devices");
  return <EmptyState title={t("none.title")} steps={[t("none.connect"), t("none.own"), t("none.back")]} />;
}

function WhichNetwork({ view }: { readonly view: NetworkView }) {
  const { t } = useTranslation("devices");
  const say = useSay();
  const { turnOn } = useNetworkActs();
  const [chosen, setChosen] = useState<string | null>(null);
  const [port, setPort] = useState(String(view.port));
  // A network that was left meanwhile is not the chosen one any more.
  const address =
    view.addresses.find((each) => each.address === chosen)?.address ?? view.addresses[0]?.address;
  const error = turnOn.error === null ? null : say(sentenceOf(turnOn.error));
  function go(): void {
    if (address !== undefined) turnOn.mutate({ address, port: Number(port) });
  }
  return (
    <Stack gap={5}>
      <Choice
        label={t("on.network")}
        help={t("on.networkHelp")}
        value={address ?? null}
        onChange={setChosen}
        options={view.addresses.map(({ way, address: each }) => ({
          value: each,
          label: (
            <span>
              <strong>{each}</strong> {way}
            </span>
          ),
        }))}
      />
      <div className={css.port}>
        <NumberField
          label={t("on.port")}
          help={t("on.portHelp")}
          value={port}
          onChange={setPort}
          maxLength={5}
        />
      </div>
      {error !== null && (
        <p role="alert" className={`strong ${css.error}`}>
          {error}
        </p>
      )}
      <div>
        <Button kind="primary" size="large" busy={turnOn.isPending} onPress={go}>
          {t("on.do")}
        </Button>
      </div>
    </Stack>
  );
}
