import { join } from "node:path";
import { z } from "zod";
import { type Opener, readHeader, unpackBackup } from "../../backups/file.ts";
import { backupsIn, headersIn } from "../../backups/folder.ts";
import type { Keeper } from "../../backups/keeper.ts";
import { forgottenBy, isThere } from "../../backups/places.ts";
import { restoreStore } from "../../backups/restore.ts";
import { lockOf } from "../../backups/settings.ts";
import { whyNotUsed } from "../../backups/trouble.ts";
import { ownFirst } from "../../domain/backups/order.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { holdingOf } from "../../store/connection/checks.ts";
import type { Desk } from "../door/desk.ts";
import { allow, router } from "../door/trpc.ts";

const listed = 200;

const named = z.object({ place: z.enum(["own", "second"]), name: z.string().max(120) });

/** Lists, makes and locks backups, and restores one. Only the shell chooses folders. */
export const backups = router({
  state: allow("organiser").query(({ ctx: { desk } }) => stateOf(desk)),

  /** Makes a backup now, in every reachable place; answers once it is made. */
  now: allow("organiser").mutation(async ({ ctx: { desk } }) => {
    requireOwn(desk);
    await requireKeeper(desk).run();
    return stateOf(desk);
  }),

  /** Locks the second backups from now on; null leaves them open. Earlier backups stay as they are. */
  setPassphrase: allow("organiser")
    .input(z.object({ passphrase: z.string().min(12).max(200).nullable() }))
    .mutation(async ({ ctx: { desk }, input }) => {
      await requireKeeper(desk).choosePassphrase(input.passphrase);
      return stateOf(desk);
    }),

  /** Stops second backups; those already made stay. */
  leaveSecond: allow("organiser").mutation(async ({ ctx: { desk } }) => {
    await requireKeeper(desk).chooseSecond(null);
    return stateOf(desk);
  }),

  /** Returns the backups reachable now: this computer's own, newest first, then others'. */
  list: allow("organiser").query(async ({ ctx: { desk } }) => ({
    here: holdingOf(desk.store.db),
    backups: await found(requireKeeper(desk)),
  })),

  /**
   * Restores a backup. The current store is backed up first, and its file set aside. A locked one also brings the key by
   * which devices know the table.
   * @throws Refusal with what to do; the store is then unchanged.
   */
  restore: allow("organiser")
    .input(named.extend({ passphrase: z.string().max(200).nullable() }))
    .mutation(async ({ ctx: { desk }, input }) => {
      requireOwn(desk);
      const keeper = requireKeeper(desk);
      const { file, opener } = await openerOf(keeper, input);
      const { store, networkKey } = await unpackBackup(file, opener).catch(refuse);
      await keeper.runWhatLacks();
      requireOwn(desk);
      const location = keeper.location();
      return desk.replaceOwn(() => {
        const setAside = orRefuse(() => restoreStore(location, store, desk.now()));
        if (networkKey !== null) desk.network?.takeKey(networkKey);
        return { setAside };
      });
    }),
});

function stateOf(desk: Desk) {
  const keeper = requireKeeper(desk);
  const { lock, forgetUpTo } = keeper.settings();
  const running = keeper.running();
  const places = keeper.places().map((place) => {
    const { last, trouble } = keeper.news(place.kind);
    return { kind: place.kind, folder: place.folder, there: isThere(place), last, trouble };
  });
  return {
    /** True in the demo, where nothing is backed up. */
    demo: desk.kind === "demo",
    places: places.map(({ last, ...place }) => ({ ...place, last: last?.at ?? null })),
    running: running === null ? null : { ...running },
    locked: lock !== null,
    /** True while earlier backups still hold somebody erased, in a place that has not been reached since. */
    toForget: forgetUpTo > 0 && places.some(({ there, last }) => !there || (last?.number ?? 0) <= forgetUpTo),
  };
}

async function found(keeper: Keeper) {
  const { source } = keeper.settings();
  const forgotten = forgottenBy(keeper.settings());
  const lists = keeper
    .places()
    .filter(isThere)
    .map(async ({ kind, folder }) => {
      const all = await headersIn(folder);
      return all.filter((each) => !forgotten(each)).map((each) => ({ kind, ...each }));
    });
  const all = (await Promise.all(lists)).flat();
  // The same backup in both places counts once: this computer's copy comes first and is used.
  const once = all.filter((each, index) => all.findIndex(({ name }) => name === each.name) === index);
  return ownFirst(once, (each) => each.source === source)
    .flatMap(({ backup: { kind, name, header }, own }) =>
      header === null
        ? []
        : [
            {
              ...{ place: kind, name, at: header.at, holding: header.holding },
              ...{ locked: header.locked !== null, anew: header.anew === true, own },
            },
          ],
    )
    .slice(0, listed);
}

/** Finds the file of a listed backup and its passphrase. The name is looked up, never built into a path. */
async function openerOf(
  keeper: Keeper,
  { place, name, passphrase }: z.infer<typeof named> & { passphrase: string | null },
): Promise<{ file: string; opener: Opener }> {
  const folder = keeper.places().find(({ kind }) => kind === place)?.folder;
  const there = folder === undefined ? [] : await backupsIn(folder).catch(() => []);
  const forgotten = forgottenBy(keeper.settings());
  if (folder === undefined || !there.some((each) => each.name === name && !forgotten(each))) {
    throw new Refusal("not-found", sentence("backups.gone"));
  }
  const file = join(folder, name);
  if (passphrase !== null) return { file, opener: { passphrase } };
  const lock = lockOf(keeper.settings());
  const header = await readHeader(file).catch(refuse);
  return { file, opener: header.locked === null || lock === null ? null : { lock } };
}

function orRefuse<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    return refuse(error);
  }
}

function refuse(error: unknown): never {
  throw new Refusal("conflict", whyNotUsed(error));
}

function requireKeeper(desk: Desk): Keeper {
  if (desk.backups === null) throw new Refusal("unavailable", sentence("backups.none"));
  return desk.backups;
}

function requireOwn(desk: Desk): void {
  if (desk.kind === "demo") throw new Refusal("conflict", sentence("backups.demo"));
}
