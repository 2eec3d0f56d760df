import { createContext, use } from "react";
import { type Keys, useKeys } from "../app/keys.ts";

/** False while a dialog stands over the station: its keys are for what is in sight. */
export const KeysOn = createContext(true);

/** As `useKeys`, for what lies under the station's dialogs. */
export function useStationKeys(keys: Keys): void {
  useKeys(use(KeysOn) ? keys : {});
}
