import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Select } from "../../parts/controls/Select.tsx";
import { devicePlaces, useOfferedPlaces } from "../../parts/devices/places.ts";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import css from "./Devices.module.css";
import { PlaceOptions } from "./PlaceOptions.tsx";
import { type NetworkView, useNetworkActs } from "./view.ts";

type Asking = NetworkView["asking"][number];

/** Devices that gave the right code and wait for the organiser. */
export function AskingList({ asking }: { readonly asking: readonly Asking[] }) {
  const { t } = useTranslation("devices");
  return (
    <Panel title={t("asking.title", { count: asking.length })} tone="alert">
      <Stack as="ul" gap={4}>
        {asking.map((each) => (
          <li key={each.id}>
            <OneAsking asking={each} />
          </li>
        ))}
      </Stack>
    </Panel>
  );
}

const none = -1;

/** Its name, what it is to be used for, and yes or no. Nothing is chosen beforehand: that would be a yes by habit. */
function OneAsking({ asking: { id, name } }: { readonly asking: Asking }) {
  const { t } = useTranslation("devices");
  const offered = useOfferedPlaces();
  const [number, setNumber] = useState(none);
  const { answer } = useNetworkActs();
  const place = devicePlaces[number];
  return (
    <Row gap={4} lines={2} align="end" wrap>
      <strong className={`lead ${css.asker}`}>{name}</strong>
      <Select label={t("asking.for", { name })} value={number} onChange={setNumber}>
        <option value={none}>{t("asking.choose")}</option>
        <PlaceOptions offered={offered} />
      </Select>
      <Button busy={answer.isPending} onPress={() => answer.mutate({ askId: id, place: null })}>
        {t("asking.no")}
      </Button>
      <Button
        kind="primary"
        disabled={place === undefined}
        busy={answer.isPending}
        onPress={() => place !== undefined && answer.mutate({ askId: id, place })}
      >
        {t("asking.yes")}
      </Button>
    </Row>
  );
}
