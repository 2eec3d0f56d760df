import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { Store } from "../../store/connection/store.ts";
import type { Desk } from "./desk.ts";

/**
 * The desk as one request has it: with the store that was in use when the request came, to its end. A request that waits
 * for something (a long sheet, a backup) must not go on in another store that was put to use meanwhile: it is refused.
 * What the request itself puts to use is its own.
 */
export function heldDesk(desk: Desk): Desk {
  let { store, kind } = desk;

  function held(): Store {
    if (desk.store !== store) throw new Refusal("conflict", sentence("door.otherStore"));
    return store;
  }
  function holdAgain(): void {
    ({ store, kind } = desk);
  }
  const own: Pick<Desk, "use" | "replaceOwn"> = {
    use(wanted) {
      desk.use(wanted);
      holdAgain();
    },
    replaceOwn(work) {
      held();
      try {
        return desk.replaceOwn(work);
      } finally {
        holdAgain();
      }
    },
  };
  // All the rest is the desk's, read when it is asked for.
  return Object.create(desk, {
    store: { get: held },
    kind: { get: () => kind },
    use: { value: own.use },
    replaceOwn: { value: own.replaceOwn },
  }) as Desk;
}
