import { benchOf, type Calling, clear, scheduleOf } from "./bench.ts";
import { momentByMoment } from "./by-moment.ts";
import { stageByStage } from "./by-stage.ts";
import { judgesBind, type Schedule, type Shop } from "./shop.ts";

/** Works out orders in one shop, again and again in the same memory. */
export interface Decoder {
  /**
   * Works out the first `count` jobs of an order, as if there were no others. Returns when the last is done, and the
   * sum of all ends, by which equal days differ, in an array that is the same each time.
   */
  readonly run: (order: Int32Array, count: number) => Float64Array;
  /** Returns what the last run came to, turn by turn, in memory of its own. */
  readonly schedule: () => Schedule;
}

/** Returns a decoder. Judges who are fewer than places tie the stations together, which takes longer. */
export function decoderOf(shop: Shop, calling: Calling): Decoder {
  const bench = benchOf(shop);
  const work = (judgesBind(shop) ? momentByMoment : stageByStage)(shop, calling, bench);
  return {
    run: (order, count) => {
      clear(bench, shop, order, count);
      work(order, count);
      return bench.outcome;
    },
    schedule: () => scheduleOf(bench),
  };
}
