import { type Answer, guarded } from "./answer.ts";

/** What the page says in place of the app. */
export interface RefusedWords {
  readonly title: string;
  /** Paragraphs, as plain text. */
  readonly lines: readonly string[];
}

/** Serves one static page on the desk's host: what is wrong and what to do. It offers nothing to press. */
export function createRefusedAnswer(words: RefusedWords): Answer {
  const page = pageOf(words);
  return guarded("desk", (request, path) => {
    if (request.method !== "GET") return new Response(null, { status: 405 });
    if (path === "/") return textAnswer("text/html", page);
    return path === "/refused.css" ? textAnswer("text/css", looks) : new Response(null, { status: 404 });
  });
}

function textAnswer(type: string, text: string): Response {
  return new Response(text, { headers: { "content-type": `${type}; charset=utf-8` } });
}

function pageOf({ title, lines }: RefusedWords): string {
  const paragraphs = lines.map((line) => `<p>${escapeText(line)}</p>`).join("\n      ");
  return `<!doctype html>
<html lang="en" data-ready="true">
  <head>
    <meta charset="utf-8">
    <title>${escapeText(title)}</title>
    <link rel="stylesheet" href="/refused.css">
  </head>
  <body>
    <main>
      <h1>${escapeText(title)}</h1>
      ${paragraphs}
    </main>
  </body>
</html>
`;
}

function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}

/** The page stands alone: when the store can't be opened the build's looks may be what is missing. */
const looks = `
body { margin: 0; background: #f6f0e4; color: #1d1a16; font: 20px/1.5 system-ui, sans-serif; }
main { max-width: 44rem; margin: 15vh auto 0; padding: 0 2rem; }
h1 { font-size: 2rem; line-height: 1.2; }
p { overflow-wrap: anywhere; }
`;
