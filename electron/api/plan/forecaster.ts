import type { Forecast } from "../../domain/plan/told.ts";
import type { Store } from "../../store/connection/store.ts";
import { planOfDay } from "../../store/tables/day-plans.ts";
import type { Day } from "../../store/tables/days.ts";
import { Stopped } from "../door/calculate.ts";
import type { Desk } from "../door/desk.ts";
import { untyped } from "./hall.ts";
import { isInUse } from "./in-use.ts";
import { knownOf, learnBetweenEntries } from "./known.ts";
import { momentOf } from "./moment.ts";
import { firstSeed, settingsOf } from "./task.ts";

/** What is told of the rest of a day, and the moment (ISO 8601) from which its seconds count. */
export interface KeptForecast {
  readonly dayId: number;
  readonly at: string;
  /** Null where nobody has a test left. */
  readonly forecast: Forecast | null;
}

/** The forecast of a store, and whether a newer one comes. */
interface Forecasting {
  kept: KeptForecast | null;
  /** The store's newest change in it, and when it was begun, by the monotonic clock. */
  seq: number;
  begunMs: number;
  state: "idle" | "soon" | "busy";
}

/** Ms after a change until a forecast is begun: changes come together, and those who enter go before. */
const pauseMs = 150;
/** Ms after which a forecast is made anew though nothing has changed: people rest, and time passes. */
const oldMs = 30_000;

const ofStores = new WeakMap<Store, Forecasting>();

/**
 * Returns the newest forecast of an open day, and sees to it that a newer one is made in the background where something
 * has changed since or it is old; the topic `forecast` is announced then. Null until the first one is there.
 */
export function newestForecast(desk: Desk, day: Day): KeptForecast | null {
  const { store } = desk;
  const one = ofStores.get(store) ?? { kept: null, seq: -1, begunMs: 0, state: "idle" };
  ofStores.set(store, one);
  const isOld = desk.monotonic().ms - one.begunMs > oldMs;
  if (desk.calculator !== null && one.state === "idle" && (one.seq !== store.seq() || isOld)) {
    one.state = "soon";
    setTimeout(() => void begin(desk, store, day, one), pauseMs).unref();
  }
  return one.kept?.dayId === day.id ? one.kept : null;
}

async function begin(desk: Desk, store: Store, day: Day, one: Forecasting): Promise<void> {
  try {
    if (!isInUse(desk, store)) return;
    one.state = "busy";
    await learnBetweenEntries(store, day);
    if (!isInUse(desk, store)) return;
    one.seq = store.seq();
    one.begunMs = desk.monotonic().ms;
    one.kept = await forecastOfDay(desk, day);
  } catch (error) {
    // Stopped: the desk closes.
    if (!(error instanceof Stopped)) console.error("The day's end could not be foreseen:", error);
  } finally {
    one.state = "idle";
    if (isInUse(desk, store)) desk.tell("forecast");
  }
}

/** Makes the forecast of a day as it is now. @throws Stopped when the desk closes meanwhile */
async function forecastOfDay(desk: Desk, day: Day): Promise<KeptForecast> {
  const { db } = desk.store;
  const at = desk.now().toISOString();
  const settings = settingsOf(db, day);
  const moment = momentOf(db, day, settings, at);
  if (desk.calculator === null || moment.athletes.length === 0) return { dayId: day.id, at, forecast: null };
  const known = untyped(settings, knownOf(db, day));
  const seed = planOfDay(db, day.id)?.seed ?? firstSeed;
  const calculating = desk.calculator.begin<"forecast">({ kind: "forecast", moment, known, seed }, () => {});
  return { dayId: day.id, at, forecast: await calculating.outcome };
}
