import { createContext, use } from "react";
import { type Keys, useKeys } from "../app/keys.ts";

/** False while a dialog is open over the station: keys only act on visible things. */
export const KeysOn = createContext(true);

/** Binds keys like `useKeys`, for content under the station's dialogs. */
export function useStationKeys(keys: Keys): void {
  useKeys(use(KeysOn) ? keys : {});
}
