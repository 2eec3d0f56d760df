import { I18nProvider } from "react-aria-components/I18nProvider";
import { createRoot } from "react-dom/client";
import "../app/base.css";
import { languageFor } from "../../electron/domain/languages.ts";
import { countKept, openKeepIfAny } from "../app/device-keep.ts";
import { heedTable } from "../app/let-go.ts";
import { showTable } from "../app/table.ts";
import { LeftHere } from "../screens/away/LeftHere.tsx";
import { JoinScreen } from "../screens/join/JoinScreen.tsx";
import { setUpWords } from "../words/setUp.ts";

/** The page of a device that has not joined: it knows nothing of the day, and speaks its own browser's language. */
async function boot(): Promise<void> {
  const root = document.getElementById("root");
  if (root === null) throw new Error("The page has no root element.");
  const language = languageFor(navigator.languages);
  document.documentElement.dataset.theme = "desk";
  await openKeepIfAny();
  // One that the table let go has nothing to keep.
  await heedTable(await showTable({ waiting: countKept(), battery: null }));
  await setUpWords(language);
  createRoot(root).render(
    <I18nProvider locale={language}>
      <JoinScreen left={countKept() === 0 ? null : <LeftHere />} />
    </I18nProvider>,
  );
}

await boot();
