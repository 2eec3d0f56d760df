import { backups } from "./backups/backups.ts";
import { board } from "./board/board.ts";
import { bundle } from "./bundle/bundle.ts";
import { cards } from "./cards/cards.ts";
import { changes } from "./changes.ts";
import { checkIn } from "./check-in/check-in.ts";
import { day } from "./day/day.ts";
import { router } from "./door/trpc.ts";
import { heat } from "./heat/heat.ts";
import { intake } from "./intake/intake.ts";
import { language } from "./language.ts";
import { lock } from "./lock/procedures.ts";
import { network } from "./network/procedures.ts";
import { noise } from "./noise/noise.ts";
import { papers } from "./papers/papers.ts";
import { people } from "./people/people.ts";
import { plan } from "./plan/plan.ts";
import { reference } from "./reference/reference.ts";
import { rehearsal } from "./rehearsal/rehearsal.ts";
import { station } from "./station/station.ts";
import { study } from "./study/study.ts";
import { summary } from "./summary/summary.ts";

/** All procedures of a desk, by capability. */
export const appRouter = router({
  day,
  intake,
  checkIn,
  people,
  station,
  heat,
  board,
  bundle,
  cards,
  language,
  network,
  noise,
  papers,
  plan,
  reference,
  rehearsal,
  study,
  summary,
  backups,
  lock,
  changes,
});

export type AppRouter = typeof appRouter;
