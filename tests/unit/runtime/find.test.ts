import { describe, expect, it } from "vitest";
import { electronArguments, waysInOrder } from "../../../electron/runtime/find.ts";
import { registryFits } from "../../../electron/runtime/registry.ts";

describe("the order of the ways to a runtime", () => {
  it("takes what is there before the network, and the official one before the registry one", () => {
    expect(waysInOrder(undefined, true)).toEqual(["installed", "kept", "downloaded", "registry"]);
  });

  it("knows only the official ways where no registry runtime exists", () => {
    expect(waysInOrder(undefined, false)).toEqual(["installed", "downloaded"]);
    expect(registryFits("linux", "x64")).toBe(true);
    expect(registryFits("linux", "arm64")).toBe(false);
    expect(registryFits("darwin", "x64")).toBe(false);
    expect(registryFits("win32", "x64")).toBe(false);
  });

  it("takes an empty variable for an unset one", () => {
    expect(waysInOrder("", true)).toEqual(waysInOrder(undefined, true));
  });

  it("can be forced to one side", () => {
    expect(waysInOrder("official", true)).toEqual(["installed", "downloaded"]);
    expect(waysInOrder("registry", true)).toEqual(["kept", "registry"]);
  });

  it("says what to do about a choice it can't follow", () => {
    expect(() => waysInOrder("registry", false)).toThrow(/Linux x64 only\. Unset it/);
    expect(() => waysInOrder("mirror", true)).toThrow(/"mirror"\. Set it to "official" or "registry"/);
  });
});

describe("the arguments of Electron", () => {
  it("gives up the sandbox for root alone", () => {
    expect(electronArguments(true)).toEqual(["--no-sandbox"]);
    expect(electronArguments(false)).toEqual([]);
  });

  it("names the app last, so that switches before it are Electron's own", () => {
    expect(electronArguments(true, "/home/mira/tapeline")).toEqual(["--no-sandbox", "/home/mira/tapeline"]);
    expect(electronArguments(false, "/home/mira/tapeline")).toEqual(["/home/mira/tapeline"]);
  });
});
