import { useTranslation } from "react-i18next";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { useClock } from "../clock.ts";
import type { Planned } from "../types.ts";
import { End } from "./End.tsx";

/** Shows what was told of a day before it began; how it goes now, the overview says. */
export function ToldBefore({ planned }: { readonly planned: Planned }) {
  const { t } = useTranslation("plan");
  const { told, date, begins } = planned;
  const clock = useClock(`${date}T${told?.begins ?? begins}`);
  return (
    <Stack gap={5}>
      <p className="measure">
        {told === null ? t("before.none") : t("before.what", { count: told.athletes, begins: clock.time(0) })}
      </p>
      {told !== null && <End plan={told} clock={clock} roomHelps={null} />}
      {planned.state === "open" && <p className="measure quiet">{t("before.change")}</p>}
    </Stack>
  );
}
