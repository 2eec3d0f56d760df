import { I18nProvider } from "react-aria-components/I18nProvider";
import { useTranslation } from "react-i18next";
import { Route, Router, Switch } from "wouter";
import { useHashLocation } from "wouter/use-hash-location";
import { ClientProvider } from "../app/client.tsx";
import { InitialsProvider } from "../app/initials.tsx";
import { StandingProvider } from "../app/standing.tsx";
import { isDevice } from "../app/table.ts";
import { InitialsDialog } from "../parts/controls/InitialsDialog.tsx";
import { Frame } from "../parts/frame/Frame.tsx";
import { Answer } from "../parts/layout/Answer.tsx";
import { HeldPage } from "../screens/athletes/held/HeldPage.tsx";
import { WithDeviceLine } from "../screens/away/DeviceLine.tsx";
import { PrintCards } from "../screens/cards/PrintCards.tsx";
import { PrintSetUp } from "../screens/devices/paper/PrintSetUp.tsx";
import { PrintPage } from "../screens/instructions/PrintPage.tsx";
import { LockCover } from "../screens/lock/LockCover.tsx";
import { PrintPapers } from "../screens/papers/PrintPapers.tsx";
import { TimetablePrintPage } from "../screens/plan/paper/TimetablePrintPage.tsx";
import { StudyPrintPage } from "../screens/study/paper/StudyPrintPage.tsx";
import { SummaryPrintPage } from "../screens/summary/paper/SummaryPrintPage.tsx";
import { DeskRoutes } from "./routes.tsx";

/** Everything in the desk's window. */
export function DeskApp() {
  const { i18n } = useTranslation();
  return (
    <ClientProvider>
      <I18nProvider locale={i18n.language}>
        <Router hook={useHashLocation}>
          <Switch>
            {/* Pages for paper stand alone: the shell shows them in a window of their own. */}
            <Route path="/print/instructions/:which/:paper">
              {({ which, paper }) => <PrintPage which={which} paper={paper} />}
            </Route>
            <Route path="/print/cards/:day/:which/:paper">
              {({ day, which, paper }) => <PrintCards day={day} which={which} paper={paper} />}
            </Route>
            <Route path="/print/papers/:what/:who/:paper">
              {({ what, who, paper }) => <PrintPapers what={what} who={who} paper={paper} />}
            </Route>
            <Route path="/print/plan/:paper">{({ paper }) => <TimetablePrintPage paper={paper} />}</Route>
            <Route path="/print/set-up/:paper">{({ paper }) => <PrintSetUp paper={paper} />}</Route>
            <Route path="/print/held/:athleteId/:paper">
              {({ athleteId, paper }) => <HeldPage athleteId={athleteId} paper={paper} />}
            </Route>
            <Route path="/print/study/:id/:paper">
              {({ id, paper }) => <StudyPrintPage id={id} paper={paper} />}
            </Route>
            <Route path="/print/summary/:day/:league/:paper">
              {({ day, league, paper }) => <SummaryPrintPage day={day} league={league} paper={paper} />}
            </Route>
            <Route>
              <StandingProvider
                cover={<LockCover />}
                failed={(query) => <Answer query={query}>{() => null}</Answer>}
              >
                <InitialsProvider question={InitialsDialog}>
                  <Framed />
                </InitialsProvider>
              </StandingProvider>
            </Route>
          </Switch>
        </Router>
      </I18nProvider>
    </ClientProvider>
  );
}

/** A device has a line of its own above the frame. */
function Framed() {
  const frame = (
    <Frame>
      <DeskRoutes />
    </Frame>
  );
  return isDevice ? <WithDeviceLine>{frame}</WithDeviceLine> : frame;
}
