import { I18nProvider } from "react-aria-components/I18nProvider";
import { useTranslation } from "react-i18next";
import { Router } from "wouter";
import { useHashLocation } from "wouter/use-hash-location";
import { Frame } from "../parts/Frame.tsx";
import { ClientProvider } from "./client.tsx";
import { InitialsProvider } from "./initials.tsx";
import { DeskRoutes } from "./routes.tsx";

/** Everything in the desk's window. */
export function DeskApp() {
  const { i18n } = useTranslation();
  return (
    <ClientProvider>
      <I18nProvider locale={i18n.language}>
        <Router hook={useHashLocation}>
          <InitialsProvider>
            <Frame>
              <DeskRoutes />
            </Frame>
          </InitialsProvider>
        </Router>
      </I18nProvider>
    </ClientProvider>
  );
}
