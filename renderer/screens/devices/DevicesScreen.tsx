import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { AskingList } from "./AskingList.tsx";
import { DeviceList } from "./DeviceList.tsx";
import { JoinPanel } from "./JoinPanel.tsx";
import { SetUpPaper } from "./paper/SetUpPaper.tsx";
import { TurnOn } from "./TurnOn.tsx";
import { useNetwork, useNetworkActs } from "./view.ts";

/** The organiser's place for screens at the stations: whether devices reach this laptop, and which is used for what. */
export function DevicesScreen() {
  const { t } = useTranslation("devices");
  const query = useNetwork();
  const on = query.data?.on ?? null;
  return (
    <Screen
      title={t("title")}
      lead={t("lead")}
      ready={query.isFetched}
      {...(on !== null && { actions: <TurnOff devices={query.data?.devices.length ?? 0} /> })}
    >
      <Answer query={query}>
        {(view) => (
          <>
            {view.on === null ? (
              <TurnOn view={view} />
            ) : (
              <>
                {view.asking.length > 0 && <AskingList asking={view.asking} />}
                <JoinPanel on={view.on} code={view.code} shutMs={view.shutMs} />
                <DeviceList devices={view.devices} />
              </>
            )}
            <SetUpPaper isOn={view.on !== null} />
          </>
        )}
      </Answer>
    </Screen>
  );
}

/** The switch, back to off; asks first where somebody would stand before a dead screen. */
function TurnOff({ devices }: { readonly devices: number }) {
  const { t } = useTranslation("devices");
  const [asking, setAsking] = useState(false);
  const { turnOff } = useNetworkActs();
  const press = () => (devices === 0 ? turnOff.mutate() : setAsking(true));
  return (
    <>
      <Button busy={turnOff.isPending} onPress={press}>
        {t("off.do")}
      </Button>
      {asking && (
        <ConfirmDialog
          title={t("off.title")}
          cancel={t("off.keep")}
          confirm={t("off.do")}
          busy={turnOff.isPending}
          onConfirm={() => turnOff.mutate(undefined, { onSettled: () => setAsking(false) })}
          onClose={() => setAsking(false)}
        >
          <p>{t("off.what", { count: devices })}</p>
        </ConfirmDialog>
      )}
    </>
  );
}
