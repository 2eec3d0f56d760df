import { tracked } from "@trpc/server";
import { z } from "zod";
import type { Announcement, Announcements } from "./door/desk.ts";
import { allow } from "./door/trpc.ts";
import { afterWindows } from "./door/turns.ts";

/**
 * The change feed: the topics to read again, as they change, and of which tests' stations. A client that was away resumes after its last id; where
 * that is too old or unknown, it has to read everything.
 */
export const changes = allow("organiser", "check-in", "station", "second-judge", "board", "locked")
  .input(z.object({ lastEventId: z.string().max(100).nullish() }).optional())
  .subscription(async function* ({ ctx, input, signal }) {
    const tell = ctx.device == null ? atOnce : afterWindows;
    for await (const announcement of follow(ctx.desk.news, input?.lastEventId ?? null, tell, signal)) {
      const { id, ...about } = announcement;
      yield tracked(id, about);
    }
  });

const atOnce = (tell: () => void) => tell();

/**
 * Yields announcements since `lastId`, then each new one, when `soon` calls back; listens before reading the backlog, so
 * that none is lost.
 */
async function* follow(
  news: Announcements,
  lastId: string | null,
  soon: (tell: () => void) => void,
  signal: AbortSignal | undefined,
): AsyncGenerator<Announcement> {
  const waiting: Announcement[] = [];
  let wake = () => {};
  const stop = news.listen((announcement) => {
    waiting.push(announcement);
    soon(() => wake());
  });
  const onAbort = () => wake();
  signal?.addEventListener("abort", onAbort);
  try {
    // Nothing can be announced between these two lines, so every waiting one is newer than the backlog.
    yield* news.since(lastId);
    while (signal?.aborted !== true) {
      const next = waiting.shift();
      if (next !== undefined) yield next;
      else await new Promise<void>((resolve) => (wake = resolve));
    }
  } finally {
    stop();
    signal?.removeEventListener("abort", onAbort);
  }
}
