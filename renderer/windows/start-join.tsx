import { I18nProvider } from "react-aria-components/I18nProvider";
import { createRoot } from "react-dom/client";
import "../app/base.css";
import { languageFor } from "../../electron/domain/languages.ts";
import { wipeKeep } from "../app/device-keep.ts";
import { JoinScreen } from "../screens/join/JoinScreen.tsx";
import { setUpWords } from "../words/setUp.ts";

/** The page of a device that has not joined: it knows nothing of the day, and speaks its own browser's language. */
async function boot(): Promise<void> {
  const root = document.getElementById("root");
  if (root === null) throw new Error("The page has no root element.");
  const language = languageFor(navigator.languages);
  document.documentElement.dataset.theme = "desk";
  // The table does not know this device any more: nothing of an earlier day stays on it.
  await wipeKeep();
  await setUpWords(language);
  createRoot(root).render(
    <I18nProvider locale={language}>
      <JoinScreen />
    </I18nProvider>,
  );
}

await boot();
