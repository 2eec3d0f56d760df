import { first } from "./0001-first.ts";
import { heats } from "./0002-heats.ts";
import { erasure } from "./0003-erasure.ts";
import { unsaved } from "./0004-unsaved.ts";
import { references } from "./0005-references.ts";
import { heatOfAttempt } from "./0006-heat-of-attempt.ts";
import { dayHistory } from "./0007-day-history.ts";
import { pastVoid } from "./0008-past-void.ts";
import { sheetForms } from "./0009-sheet-forms.ts";
import { steps } from "./0010-steps.ts";
import { devices } from "./0011-devices.ts";
import { heatGatherer } from "./0012-heat-gatherer.ts";
import { heatHolder } from "./0014-heat-holder.ts";
import { dayIdentity } from "./0016-day-identity.ts";
import { heightsAsRead } from "./0017-heights-as-read.ts";
import { howMade } from "./0018-how-made.ts";
import { heatStartDoubt } from "./0019-heat-start-doubt.ts";
import { studies } from "./0020-studies.ts";
import { dayPlan } from "./0021-day-plan.ts";
import { performed } from "./0022-performed.ts";
import { correctionsFound } from "./0024-corrections-found.ts";
import { secondJudges } from "./0025-second-judges.ts";
import { referenceTables } from "./0026-reference-tables.ts";

/** All migrations in order; the store's `user_version` is how many of them it has had. A shipped one never changes. */
export const migrations: readonly string[] = [
  first,
  heats,
  erasure,
  unsaved,
  references,
  heatOfAttempt,
  dayHistory,
  pastVoid,
  sheetForms,
  steps,
  devices,
  heatGatherer,
  heatHolder,
  dayIdentity,
  heightsAsRead,
  howMade,
  heatStartDoubt,
  studies,
  dayPlan,
  performed,
  correctionsFound,
  secondJudges,
  referenceTables,
];
