import { Redirect, Route, Switch, useLocation } from "wouter";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { firstPathOf, mayOpen, useStanding } from "../app/standing.tsx";
import { AthletesScreen } from "../screens/athletes/AthletesScreen.tsx";
import { BundleScreen } from "../screens/bundle/BundleScreen.tsx";
import { CardsScreen } from "../screens/cards/CardsScreen.tsx";
import { CheckInScreen } from "../screens/check-in/CheckInScreen.tsx";
import { DayScreen } from "../screens/day/DayScreen.tsx";
import { DevicesScreen } from "../screens/devices/DevicesScreen.tsx";
import { HomeScreen } from "../screens/home/HomeScreen.tsx";
import { InstructionsScreen } from "../screens/instructions/InstructionsScreen.tsx";
import { JoinTableScreen } from "../screens/join/JoinTableScreen.tsx";
import { LockScreen } from "../screens/lock/LockScreen.tsx";
import { NoiseScreen } from "../screens/noise/NoiseScreen.tsx";
import { PapersScreen } from "../screens/papers/PapersScreen.tsx";
import { PlanScreen } from "../screens/plan/PlanScreen.tsx";
import { ReferenceScreen } from "../screens/reference/ReferenceScreen.tsx";
import { RehearsalScreen } from "../screens/rehearsal/RehearsalScreen.tsx";
import { ReportScreen } from "../screens/report/ReportScreen.tsx";
import { SheetsScreen } from "../screens/sheets/SheetsScreen.tsx";
import { StationScreen } from "../screens/station/StationScreen.tsx";
import { SecondJudgeScreen } from "../screens/station/second/SecondJudgeScreen.tsx";
import { StudiesScreen } from "../screens/study/StudiesScreen.tsx";
import { StudyScreen } from "../screens/study/StudyScreen.tsx";
import { idOf } from "../screens/summary/paths.ts";
import { SummaryScreen } from "../screens/summary/SummaryScreen.tsx";

/** Renders the screen of each place; the places themselves and the way back are in places.ts. */
export function DeskRoutes() {
  const { post } = useStanding();
  const [path] = useLocation();
  // Whatever address is typed or followed, a desk that was handed over has one place.
  if (!mayOpen(post, path)) return <Redirect to={firstPathOf(post)} replace />;
  return (
    <Switch>
      <Route path="/">
        <HomeScreen />
      </Route>
      <Route path="/backups">
        <HomeScreen toBackups />
      </Route>
      <Route path="/day" component={DayScreen} />
      <Route path="/sheets" component={SheetsScreen} />
      <Route path="/check-in/:id?">{({ id }) => <CheckInScreen id={id ?? null} />}</Route>
      <Route path="/station/:test">
        {({ test }) => {
          const code = testCodes.find((candidate) => candidate === test);
          return code === undefined ? <Redirect to="/day" /> : <StationScreen key={code} test={code} />;
        }}
      </Route>
      <Route path="/second-judge/:test">
        {({ test }) => {
          const code = testCodes.find((candidate) => candidate === test);
          return code === undefined ? <Redirect to="/day" /> : <SecondJudgeScreen key={code} test={code} />;
        }}
      </Route>
      <Route path="/athletes/:id?">{({ id }) => <AthletesScreen id={id ?? null} />}</Route>
      <Route path="/plan" component={PlanScreen} />
      <Route path="/rehearsal" component={RehearsalScreen} />
      <Route path="/devices" component={DevicesScreen} />
      <Route path="/join" component={JoinTableScreen} />
      <Route path="/lock" component={LockScreen} />
      <Route path="/noise" component={NoiseScreen} />
      <Route path="/study" component={StudiesScreen} />
      <Route path="/study/:id">{({ id }) => <StudyScreen key={id} id={id} />}</Route>
      <Route path="/report" component={ReportScreen} />
      <Route path="/bundle" component={BundleScreen} />
      <Route path="/reference" component={ReferenceScreen} />
      <Route path="/summary/:day?/:league?">
        {({ day, league }) => <SummaryScreen dayId={idOf(day)} leagueId={idOf(league) ?? null} />}
      </Route>
      <Route path="/cards/:day?/:which?">
        {({ day, which }) => <CardsScreen day={day ?? null} which={which ?? null} />}
      </Route>
      <Route path="/papers/:what?/:who?">
        {({ what, who }) => <PapersScreen what={what ?? null} who={who ?? null} />}
      </Route>
      <Route path="/instructions/:which?">
        {({ which }) => <InstructionsScreen which={which ?? null} />}
      </Route>
      <Route>
        <Redirect to="/" />
      </Route>
    </Switch>
  );
}
