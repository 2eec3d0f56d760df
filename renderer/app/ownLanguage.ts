import i18next from "i18next";
import { type Language, languageAmong } from "../../electron/domain/languages.ts";
import { keptCell } from "./cell.ts";
import { isDevice } from "./table.ts";

const chosen = keptCell(
  localStorage,
  "own-language",
  (kept): Language | "" => languageAmong([kept ?? ""]) ?? "",
);

/** Returns the language that somebody chose on this device, else its browser's; null where we speak neither. */
function ownOf(choice: Language | ""): Language | null {
  return choice === "" ? languageAmong(navigator.languages) : choice;
}

/** Returns a device's own language; null in the program's windows, and where the table's is as good as any. */
export function ownLanguage(): Language | null {
  return isDevice ? ownOf(chosen.get()) : null;
}

/** The same in a component, which follows the choice. */
export function useOwnLanguage(): Language | null {
  const choice = chosen.use();
  return isDevice ? ownOf(choice) : null;
}

/** Keeps a language for this device alone, and speaks it at once: the table and the others keep theirs. */
export function chooseOwnLanguage(language: Language): void {
  chosen.set(language);
  void i18next.changeLanguage(language);
}
