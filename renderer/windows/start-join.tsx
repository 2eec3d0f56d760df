import type { ReactNode } from "react";
import { I18nProvider } from "react-aria-components/I18nProvider";
import { createRoot } from "react-dom/client";
import { useTranslation } from "react-i18next";
import { arrivedAt } from "../app/arrival.ts";
import "../app/base.css";
import { countKept, openKeepIfAny } from "../app/device-keep.ts";
import { heedTable } from "../app/let-go.ts";
import { membershipNow } from "../app/membership.ts";
import { ownLanguage } from "../app/ownLanguage.ts";
import { isJoinedProgram, showTable } from "../app/table.ts";
import { LeftHere } from "../screens/away/LeftHere.tsx";
import { JoinScreen } from "../screens/join/JoinScreen.tsx";
import { OverScreen } from "../screens/join/OverScreen.tsx";
import { setUpWords } from "../words/setUp.ts";

/**
 * The page of a device that the table does not know: it knows nothing of the day, and speaks its own browser's language.
 * A program that had joined says why it is no device any more; it joins from its own first screen.
 */
async function boot(): Promise<void> {
  const root = document.getElementById("root");
  if (root === null) throw new Error("The page has no root element.");
  const membership = isJoinedProgram ? await membershipNow() : null;
  document.documentElement.dataset.theme = "desk";
  // Once it is let in, it says again what it is for.
  arrivedAt.set("");
  await openKeepIfAny();
  // One that the table let go has nothing to keep.
  await heedTable(await showTable({ waiting: countKept(), battery: null }));
  await setUpWords(membership?.language ?? ownLanguage() ?? "en");
  const left = countKept() === 0 ? null : <LeftHere />;
  createRoot(root).render(
    <InItsLanguage>
      {membership === null ? <JoinScreen left={left} /> : <OverScreen membership={membership} left={left} />}
    </InItsLanguage>,
  );
}

function InItsLanguage({ children }: { readonly children: ReactNode }) {
  const { i18n } = useTranslation();
  return <I18nProvider locale={i18n.language}>{children}</I18nProvider>;
}

await boot();
