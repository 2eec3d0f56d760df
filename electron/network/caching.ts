/** A file of the build with the hash of its content in its name, as Vite writes it: another content is another name. */
const namedByContent = /^\/assets\/[\w.-]+-[\w-]{8}\.(?:css|js|svg|woff2)$/;

/** For a year without asking again (RFC 8246), in that browser alone. */
const kept = "private, max-age=31536000, immutable";

/**
 * Lets a browser keep an answer that can never change: a file named by its content. Pages and data keep `no-store`, with
 * which `answer` comes. Returns the same answer.
 */
export function allowKeeping(path: string, answer: Response): Response {
  if (answer.status === 200 && namedByContent.test(path)) answer.headers.set("cache-control", kept);
  return answer;
}
