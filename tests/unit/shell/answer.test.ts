import { mkdir, mkdtemp, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Role } from "../../../electron/domain/lock/roles.ts";
import { type Answer, createAnswer } from "../../../electron/shell/scheme/answer.ts";
import { listBuildFiles } from "../../../electron/shell/scheme/build-files.ts";

let folder: string;
let answers: { desk: Answer; board: Answer };
const asked: { path: string; who: Role }[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "tapeline-answer-"));
  const build = join(folder, "build");
  await mkdir(join(build, "assets"), { recursive: true });
  await writeFile(join(folder, "secret.txt"), "outside the build");
  await writeFile(join(build, "index.html"), "<!doctype html>page");
  await writeFile(join(build, "assets", "boot.js"), "boot()");
  await writeFile(join(build, "assets", "type.woff2"), "type");
  await symlink(join(folder, "secret.txt"), join(build, "link.txt"));
  const files = await listBuildFiles(build);
  const handle = async (request: Request, who: Role) => {
    asked.push({ path: new URL(request.url).pathname, who });
    if (request.url.endsWith("/broken")) throw new Error("meant to fail");
    return new Response("data", { headers: { "content-type": "application/json" } });
  };
  answers = { desk: createAnswer("desk", files, handle), board: createAnswer("board", files, handle) };
});

afterAll(() => rm(folder, { recursive: true }));

describe("the build's files", () => {
  test.each([
    ["app://desk/", "text/html; charset=utf-8", "<!doctype html>page"],
    ["app://desk/index.html?from=here#part", "text/html; charset=utf-8", "<!doctype html>page"],
    ["app://desk/assets/boot.js", "text/javascript; charset=utf-8", "boot()"],
    ["app://desk/assets/type.woff2", "font/woff2", "type"],
  ])("%s is served", async (url, contentType, body) => {
    const response = await answers.desk(new Request(url));
    expect([response.status, response.headers.get("content-type")]).toEqual([200, contentType]);
    expect(await response.text()).toBe(body);
  });

  test.each([
    "app://desk/nothing.js",
    "app://desk/assets",
    "app://desk/assets/",
    "app://desk//index.html",
    "app://desk/../secret.txt",
    "app://desk/%2e%2e/secret.txt",
    "app://desk/..%2fsecret.txt",
    "app://desk/assets/..%2f..%2fsecret.txt",
    "app://desk/..%5csecret.txt",
    "app://desk/..\\secret.txt",
    "app://desk/index.html%00.js",
    "app://desk/%00",
    "app://desk/%zz",
    "app://desk/link.txt",
    "app://desk/etc/passwd",
    "app://desk/INDEX.HTML",
  ])("%s is not there", async (url) => {
    expect((await answers.desk(new Request(url))).status).toBe(404);
  });

  test.each(["POST", "PUT", "DELETE"])("%s of a file is refused", async (method) => {
    expect((await answers.desk(new Request("app://desk/index.html", { method }))).status).toBe(405);
  });
});

describe("hosts", () => {
  test.each([
    "app://board/index.html",
    "app://other/index.html",
    "app://desk.other/index.html",
    "app://desk:80/index.html",
    "http://desk/index.html",
  ])("%s is not the desk's", async (url) => {
    expect((await answers.desk(new Request(url))).status).toBe(404);
  });

  test("the host alone decides who asks", async () => {
    asked.length = 0;
    await answers.desk(new Request("app://desk/trpc/day.current"));
    await answers.board(new Request("app://board/trpc/day.current?who=organiser"));
    await answers.board(new Request("app://desk/trpc/day.current"));
    await answers.desk(new Request("app://desk/trpcs/day.current"));
    expect(asked).toEqual([
      { path: "/trpc/day.current", who: "organiser" },
      { path: "/trpc/day.current", who: "board" },
    ]);
  });

  test.each(["app://board", "null", "https://desk"])(
    "a request from the origin %s is refused",
    async (origin) => {
      const request = new Request("app://desk/trpc/day.current", { method: "POST" });
      request.headers.set("origin", origin);
      // Node's Request may drop the header in silence; then this would show nothing.
      expect(request.headers.get("origin")).toBe(origin);
      expect((await answers.desk(request)).status).toBe(403);
    },
  );
});

test.each(["app://desk/", "app://desk/trpc/day.current", "app://desk/nothing", "app://other/"])(
  "%s is answered with the security headers",
  async (url) => {
    const { headers } = await answers.desk(new Request(url));
    const policy = headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("cache-control")).toBe("no-store");
  },
);

test("a fault behind the door becomes an answer without its details", async () => {
  const response = await answers.desk(new Request("app://desk/trpc/broken"));
  expect([response.status, await response.text()]).toEqual([500, ""]);
});

test("a folder without a page is no build", async () => {
  await expect(listBuildFiles(join(folder, "build", "assets"))).rejects.toThrow("Build the app first");
});
