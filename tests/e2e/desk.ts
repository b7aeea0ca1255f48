// What all tests of one `describe` share: a host and a browser, and for each test a window of its own, of which a picture is
// kept where the test failed, and which may ask no other machine for anything. Knows no Sprag.
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { launchBrowser, openWorkbench, type Workbench } from "./workbench.ts";
import { HOST_VERSIONS, type Host, IN_THE_BROWSER, startHost } from "./workbench-host.ts";

export interface Desk {
  /** Opens the window of this test. @see openWorkbench */
  readonly open: (fill: Parameters<typeof openWorkbench>[2], language?: string) => Promise<Workbench>;
  /** The process ids of the language servers that the host runs. */
  readonly servers: Host["servers"];
}

const [newest, oldest] = HOST_VERSIONS;

/** The newest workbench, the oldest that is supported, and the newest with the extension all in the browser. */
export const EVERYWHERE = [
  { name: `VS Code ${newest.vscode}`, version: newest, settings: {} },
  { name: `VS Code ${oldest.vscode}`, version: oldest, settings: {} },
  { name: `VS Code ${newest.vscode}, all in the browser`, version: newest, settings: IN_THE_BROWSER },
] as const;

/**
 * To be called in a `describe`.
 * @param name stands behind the name of each picture
 */
export function deskFor(name: string, version: (typeof HOST_VERSIONS)[number], settings = {}): Desk {
  let host: Host | undefined;
  let browser: Browser | undefined;
  let window: Workbench | undefined;
  beforeAll(async () => {
    [host, browser] = await Promise.all([startHost(version, settings), launchBrowser()]);
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    host?.stop();
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === "fail") await window?.picture(`failed ${task.name.slice(0, 20)}`);
    const outside = window?.outside ?? [];
    await window?.close();
    window = undefined;
    expect(outside).toEqual([]);
  });
  return {
    open: async (fill, language) => {
      if (browser === undefined || host === undefined) throw new Error("no workbench was started");
      window = await openWorkbench(browser, host, fill, language, name);
      return window;
    },
    servers: () => host?.servers() ?? [],
  };
}
