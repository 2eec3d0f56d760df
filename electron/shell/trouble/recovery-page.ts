import type { Offer, Offers } from "../../backups/recovery.ts";
import type { Holding } from "../../domain/backups/records.ts";
import { localeOf } from "../../domain/languages.ts";
import { shellLanguage, shellText } from "../words.ts";
import { escapeText, standalonePage } from "./refused-page.ts";

/** The content of the page. */
export interface RecoveryView {
  /** The reason why the store is not opened. */
  readonly why: string;
  /** Locations of the files, one per line. */
  readonly where: readonly string[];
  readonly offers: Offers;
  /** The error of the last action; empty if there is none. */
  readonly trouble: string;
}

/** Makes the page that explains a refused store, and offers the possible actions. It has no script of its own. */
export function recoveryPage({ why, where, offers, trouble }: RecoveryView): string {
  const parts = [
    trouble === "" ? "" : `<p class="trouble" role="alert">${escapeText(trouble)}</p>`,
    `<p>${escapeText(why)}</p>`,
    offers.anything ? wayOut(offers) : "",
    ...where.map((line) => `<p class="where">${escapeText(line)}</p>`),
  ];
  return standalonePage(shellText("refused.title"), parts.join("\n"));
}

/** Makes the page shown during work: it reloads each second, until the app replaces it. */
export function workingPage(): string {
  const words = `<p class="working" role="status">${escapeText(shellText("recovery.working"))}</p>`;
  return standalonePage(shellText("refused.title"), words, '<meta http-equiv="refresh" content="1; url=/">');
}

function wayOut(offers: Offers): string {
  const none = `<p>${escapeText(shellText("recovery.none"))}</p>`;
  const own = listOf(offers, true);
  return `
    <h2>${escapeText(shellText("recovery.title"))}</h2>
    <p>${escapeText(shellText("recovery.what"))}</p>
    ${own === "" ? none : own}
    <div class="others">
      ${button("/look", shellText("recovery.look"))}
      ${offers.asItIs ? button("/as-it-is", shellText("recovery.asItIs")) : ""}
      ${button("/start-anew", shellText("recovery.startAnew"))}
    </div>
    <p class="where">${escapeText(shellText("recovery.others"))}</p>
    ${elsewhere(listOf(offers, false))}`;
}

/** Lists backups of other computers, which are of other halls: below the own ones, under a heading. */
function elsewhere(list: string): string {
  if (list === "") return "";
  return `
    <h2>${escapeText(shellText("recovery.elsewhere"))}</h2>
    <p>${escapeText(shellText("recovery.elsewhereWhat"))}</p>
    ${list}`;
}

function listOf({ backups, held }: Offers, own: boolean): string {
  const items = backups.map((offer, index) =>
    offer.own === own ? `<li>${offerOf(offer, index, held)}</li>` : "",
  );
  return items.every((item) => item === "") ? "" : `<ol>${items.join("\n")}</ol>`;
}

function offerOf(offer: Offer, index: number, held: Holding | null): string {
  const { at, holding, locked, proved, own, source } = offer;
  const said = proved ? "recovery.proved" : locked ? "recovery.locked" : "recovery.unproved";
  const whose = own ? lackOf(holding, held) : shellText("recovery.madeBy", { source });
  const lines = [
    `<strong>${escapeText(writeInstant(at))}</strong>`,
    escapeText(`${amounts(holding)} ${whose} ${shellText(said)}`),
  ];
  const passphrase = locked
    ? `<label>${escapeText(shellText("recovery.passphrase"))} <input type="password" name="passphrase" required></label>`
    : "";
  return `<form method="post" action="/go-back">
    <p>${lines.join("<br>")}</p>
    <input type="hidden" name="index" value="${index}">${passphrase}
    <button${own && index === 0 ? ' class="first"' : ""}>${escapeText(shellText(own ? "recovery.goBack" : "recovery.takeOver"))}</button>
  </form>`;
}

function amounts({ attempts, athletes, days }: Holding): string {
  const of = (key: string, count: number) => shellText(`recovery.${key}`, { count });
  return `${of("attempts", attempts)}, ${of("athletes", athletes)}, ${of("days", days)}.`;
}

function lackOf(holding: Holding, held: Holding | null): string {
  if (held === null) return shellText("recovery.lacksUnknown");
  const count = held.attempts - holding.attempts;
  return count > 0 ? shellText("recovery.lacks", { count }) : shellText("recovery.lacksNothing");
}

function button(action: string, words: string): string {
  return `<form method="post" action="${action}"><button>${escapeText(words)}</button></form>`;
}

/** Formats an instant in local wall time: "Saturday 14 November 2026 at 09:05". */
function writeInstant(at: string): string {
  const locale = localeOf(shellLanguage());
  return new Intl.DateTimeFormat(locale, { dateStyle: "full", timeStyle: "short" }).format(new Date(at));
}
