import { type BrowserWindow, dialog } from "electron";
import { say } from "../../api/door/words.ts";
import type { Recovery } from "../../backups/recovery.ts";
import { Refusal } from "../../domain/refusal.ts";
import { type Answer, guarded } from "../scheme/answer.ts";
import { shellLanguage, shellText } from "../words.ts";
import { recoveryPage, workingPage } from "./recovery-page.ts";
import { textAnswer, withLooks } from "./refused-page.ts";

export interface Recovering {
  readonly recovery: Recovery;
  readonly why: string;
  readonly where: readonly string[];
  window(): BrowserWindow;
  /** Opens the store as decided (the restored one, the old one as it is, or an empty one) and shows the app. */
  done(accepted: boolean): Promise<void>;
}

/**
 * Serves the page that explains a refused store, and its buttons' actions. Work continues after the answer, so that the
 * page can say so; failures are shown on the page, where everything can be tried again.
 */
export function createRecoveryAnswer(parts: Recovering): Answer {
  let working = false;
  let trouble = "";

  function begin(work: () => Promise<void>): Response {
    if (!working) {
      working = true;
      trouble = "";
      // A moment later, so that the page that says so loads first.
      setTimeout(() => void finish(work), 50);
    }
    return textAnswer("text/html", workingPage());
  }
  async function finish(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      console.error("That did not work:", error);
      trouble =
        error instanceof Refusal ? say(error.sentence, shellLanguage()) : shellText("recovery.failed");
    } finally {
      working = false;
    }
  }
  async function page(): Promise<Response> {
    if (working) return textAnswer("text/html", workingPage());
    const { why, where } = parts;
    const view = { why, where, offers: await parts.recovery.offers(), trouble };
    return textAnswer("text/html", recoveryPage(view));
  }

  const actions: Record<string, (form: URLSearchParams) => Response> = {
    "/go-back": (form) =>
      begin(async () => {
        await parts.recovery.goBack(Number(form.get("index")), form.get("passphrase"));
        await parts.done(false);
      }),
    "/as-it-is": () => begin(() => parts.done(true)),
    "/start-anew": () =>
      begin(async () => {
        parts.recovery.startAnew();
        await parts.done(true);
      }),
    "/look": () => begin(() => look(parts)),
  };

  return withForms(
    guarded("desk", async (request, path) => {
      const action = actions[path];
      if (request.method === "POST" && action !== undefined) {
        return action(new URLSearchParams((await request.text()).slice(0, 10_000)));
      }
      if (request.method !== "GET") return new Response(null, { status: 405 });
      return path === "/" ? page() : withLooks(path);
    }),
  );
}

async function look({ recovery, window }: Recovering): Promise<void> {
  const { canceled, filePaths } = await dialog.showOpenDialog(window(), { properties: ["openDirectory"] });
  const [folder] = filePaths;
  if (!canceled && folder !== undefined) recovery.lookIn(folder);
}

/** Allows forms on this page only, back to the page itself; it has no script, so none may run. */
function withForms(answer: Answer): Answer {
  return async (request) => {
    const response = await answer(request);
    const policy =
      "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
    response.headers.set("content-security-policy", policy);
    // With "no-referrer" a form's origin would be sent as "null", and refused as foreign.
    response.headers.set("referrer-policy", "same-origin");
    return response;
  };
}
