import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { Store } from "../../store/connection/store.ts";
import type { Desk } from "./desk.ts";

/**
 * Holds the desk for one request with the store that was in use when it came. A request that waits (for a long sheet, a
 * backup) must not go on in another store that was switched to meanwhile: it is refused. A switch by the request itself
 * is allowed.
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
  // Everything else is the desk's, read when needed.
  return Object.create(desk, {
    store: { get: held },
    kind: { get: () => kind },
    use: { value: own.use },
    replaceOwn: { value: own.replaceOwn },
  }) as Desk;
}
