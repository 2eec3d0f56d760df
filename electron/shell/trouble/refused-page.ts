import { type Answer, guarded } from "../scheme/answer.ts";
import { shellLanguage } from "../words.ts";

/** The text of the page that replaces the app. */
export interface RefusedWords {
  readonly title: string;
  /** Paragraphs, as plain text. */
  readonly lines: readonly string[];
}

/** Serves one static page on the desk's host: the problem and what to do. It has no buttons. */
export function createRefusedAnswer(words: RefusedWords): Answer {
  const page = standalonePage(
    words.title,
    words.lines.map((line) => `<p>${escapeText(line)}</p>`).join("\n      "),
  );
  return guarded("desk", (request, path) => {
    if (request.method !== "GET") return new Response(null, { status: 405 });
    return path === "/" ? textAnswer("text/html", page) : withLooks(path);
  });
}

/** Serves the style sheet of such a page, at its path. */
export function withLooks(path: string): Response {
  return path === "/refused.css" ? textAnswer("text/css", looks) : new Response(null, { status: 404 });
}

export function textAnswer(type: string, text: string): Response {
  return new Response(text, { headers: { "content-type": `${type}; charset=utf-8` } });
}

/** Makes a self-contained page; `body` and `head` are HTML. */
export function standalonePage(title: string, body: string, head = ""): string {
  return `<!doctype html>
<html lang="${shellLanguage()}" data-ready="true">
  <head>
    <meta charset="utf-8">
    <title>${escapeText(title)}</title>
    <link rel="stylesheet" href="/refused.css">
    ${head}
  </head>
  <body>
    <main>
      <h1>${escapeText(title)}</h1>
      ${body}
    </main>
  </body>
</html>
`;
}

export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}

/** Styles for the self-contained page: when the store can't be opened, the build's own may be missing too. */
const looks = `
body { margin: 0; background: #f6f0e4; color: #1d1a16; font: 20px/1.5 system-ui, sans-serif; }
main { max-width: 48rem; margin: 8vh auto; padding: 0 2rem; }
h1 { font-size: 2rem; line-height: 1.2; }
h2 { margin: 2rem 0 0.5rem; padding-top: 1rem; border-top: 4px solid #1d1a16; font-size: 1.4rem; line-height: 1.2; }
p { margin: 0.5rem 0; overflow-wrap: anywhere; }
ol { margin: 1rem 0; padding: 0; list-style: none; }
li { padding: 0.75rem 0; border-top: 1px solid #b9ad98; }
li form { display: grid; grid-template-columns: 1fr auto; gap: 0.5rem 1.5rem; align-items: center; }
label { grid-row: 2; }
input[type="password"] { min-height: 44px; padding: 0 0.5rem; border: 2px solid #1d1a16; background: #fff; font: inherit; }
button { min-height: 48px; padding: 0 1.25rem; border: 2px solid #1d1a16; background: #fff; color: #1d1a16; font: inherit; font-weight: 600; cursor: pointer; }
button.first { background: #f5c400; }
button:hover { background: #1d1a16; color: #fff; }
:focus-visible { outline: 4px solid #0b57c2; outline-offset: 2px; }
.others { display: flex; flex-wrap: wrap; gap: 0.75rem; margin: 1rem 0; }
.where { font-size: 0.85rem; }
.trouble { padding: 0.75rem 1rem; border-left: 8px solid #a5121b; background: #fff; font-weight: 600; }
.working { font-size: 1.4rem; }
.steps li { display: flex; justify-content: space-between; gap: 1rem; }
.steps .now { font-weight: 600; }
`;
