import { defaultParameters, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { addAthlete, leagueNamed } from "../../electron/store/tables/athletes.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { leaveOut, setEntrant } from "../../electron/store/tables/entrants.ts";

const since = "2026-11-14T09:00:00.000Z";

/**
 * An open day with so many invented athletes who test, all five or `only` one; their ids are 1, 2, 3 and so on. One
 * transaction.
 */
export function makeHall(store: Store, athletes: number, only?: TestCode): void {
  store.write(["day", "people", "entrants"], (db) => {
    const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
    const dayId = addDay(db, { date: "2026-11-14", title: "Fault day", restMinutes: 5 }, protocols);
    setDayState(db, dayId, "open");
    for (let index = 1; index <= athletes; index += 1) {
      const athleteId = addAthlete(db, {
        leagueId: leagueNamed(db, "Foundry Town"),
        ...{ name: `Skater ${index}`, number: String(index), birthYear: null, category: null },
        ...{ guardianConsent: false, board: "bib", share: false, asked: false },
      });
      setEntrant(db, dayId, { athleteId, state: "testing", bib: index, since });
      for (const test of testCodes.filter((each) => only !== undefined && each !== only)) {
        const skipped = { test, kind: "skip", reason: "Not today", decidedBy: "QA", at: since } as const;
        leaveOut(db, dayId, { athleteId, ...skipped });
      }
    }
  });
}
