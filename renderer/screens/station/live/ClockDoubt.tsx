import { useEffect, useState, useSyncExternalStore } from "react";
import { useTranslation } from "react-i18next";
import { toldDoubt } from "../../../../electron/domain/heats/offset.ts";
import { useShowNumber } from "../../../words/numbers.ts";
import { doubtOf, followClocks } from "./sync/heatClocks.ts";

/** Ms in which the looks at the table's clock have come to what they come to. */
const settledMs = 2_500;

/** Says how far the clock of a heat may be off on this screen, where that is worth saying and no answer bettered it. */
export function ClockDoubt({ heatId }: { readonly heatId: string }) {
  const { t } = useTranslation("live");
  const show = useShowNumber();
  const told = useSyncExternalStore(followClocks, () => toldDoubt(doubtOf(heatId)));
  const [isSettled, setSettled] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(true), settledMs);
    return () => clearTimeout(timer);
  }, []);
  if (told === null || !isSettled) return null;
  return (
    <p role="status" className="small quiet">
      {t("note.doubt", { seconds: show(told.toFixed(1)) })}
    </p>
  );
}
