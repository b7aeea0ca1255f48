// Works in a workbench as a writer does: opens files, types, looks, presses keys, in a Chromium of its own over a fresh copy of
// a folder. Knows the workbench, and nothing of what Sprag should say.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type FrameLocator, type Locator, type Page } from "playwright-core";
import { expect } from "vitest";
import type { Host } from "./workbench-host.ts";

export interface Workbench {
  readonly page: Page;
  /** The folder that is open, on the disk. */
  readonly folder: string;
  /** Requests to anywhere but the workbench's own server. */
  readonly outside: readonly string[];
  readonly open: (path: string) => Promise<void>;
  /** Waits until the server has read the open file, which holds a procedure: its lens is there then. */
  readonly ready: () => Promise<void>;
  /** Lines and columns count from 1, as the workbench shows them. */
  readonly goTo: (line: number, column: number) => Promise<void>;
  readonly type: (text: string) => Promise<void>;
  readonly press: (...keys: string[]) => Promise<void>;
  /** The hover over what the cursor stands in, once it says that. */
  readonly hoverHere: (text: string) => Promise<Locator>;
  /** Runs a command by the title it has in the palette. */
  readonly command: (title: string) => Promise<void>;
  /** Takes the place that the workbench's own save dialog offers; the name is of the file that is to be saved. */
  readonly acceptPlace: (name: string) => Promise<void>;
  /** The rows of the Problems panel, opened where it is not. */
  readonly problems: () => Locator;
  readonly squiggles: (severity: "error" | "warning" | "hint") => Locator;
  readonly notification: (text: string | RegExp) => Locator;
  /** How wide the picture in that page is by itself, in pixels; 0 while it is not there. */
  readonly pictureWidth: () => Promise<number>;
  /** The page in the panel that is shown. */
  readonly webview: () => FrameLocator;
  /** Where the cursor is, as the status bar says it: `Ln 3, Col 5`. */
  readonly cursor: () => Promise<string>;
  /** The text of a file on the disk. */
  readonly onDisk: (path: string) => string;
  /** The text in the editor, as far as it is on the screen. */
  readonly onScreen: () => Promise<string>;
  readonly save: () => Promise<void>;
  /** A picture of the whole window, kept where pictures are wanted (`SPRAG_PICTURES` names a folder). */
  readonly picture: (name: string) => Promise<void>;
  readonly close: () => Promise<void>;
}

const CHROMIUM_FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

/** Where a webview thinks it lies; a worker of the workbench answers for it, and no host is asked. */
const OF_WEBVIEWS = /^https:\/\/[\w.+-]*\.vscode-cdn\.net\//;

/** How long a test waits for what must come; a loaded machine is slow. */
export const PATIENCE = 90_000;

export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: "/usr/bin/chromium", headless: true, args: CHROMIUM_FLAGS });
}

/**
 * @param fill puts into the empty folder what is to be opened; a text is the path of a folder to copy
 * @param language that extensions are told the workbench is shown in. Its own words stay English: those of other languages come
 * from packages that are no part of it.
 * @param label stands behind the name of each picture
 */
export async function openWorkbench(
  browser: Browser,
  host: Host,
  fill: string | ((folder: string) => void),
  language?: string,
  label = "",
): Promise<Workbench> {
  const parent = mkdtempSync(join(tmpdir(), "sprag-open-"));
  const folder = join(parent, "shop");
  mkdirSync(folder);
  if (typeof fill === "string") cpSync(fill, folder, { recursive: true });
  else fill(folder);
  const context = await browser.newContext({ viewport: { width: 1280, height: 860 } });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  if (language !== undefined)
    await page.addInitScript(`globalThis._VSCODE_NLS_LANGUAGE = ${JSON.stringify(language)};`);
  const outside: string[] = [];
  page.on("request", (request) => {
    const url = request.url();
    if (/^https?:/.test(url) && !url.startsWith(host.address) && !OF_WEBVIEWS.test(url)) outside.push(url);
  });
  await page.goto(`${host.address}/?folder=${encodeURIComponent(folder)}`);
  // An empty folder has no rows.
  await page.locator(".explorer-folders-view .monaco-list").waitFor();

  const press = async (...keys: string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  const quickInput = page.locator(".quick-input-widget:visible .quick-input-box input");
  const command = async (title: string): Promise<void> => {
    await press("F1");
    await quickInput.waitFor();
    await quickInput.fill(`>${title}`);
    await page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first().click();
  };
  const hoverHere = async (text: string): Promise<Locator> => {
    const hover = page.locator(".monaco-hover:visible", { hasText: text });
    const isShown = async (): Promise<boolean> => {
      await press("Control+k", "Control+i");
      return hover.waitFor({ timeout: 5000 }).then(
        () => true,
        () => false,
      );
    };
    // Asked again where something new on the screen closed it.
    await expect.poll(isShown, { timeout: PATIENCE, interval: 500 }).toBe(true);
    return hover;
  };
  const webview = (): FrameLocator => page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
  const acceptPlace = async (name: string): Promise<void> => {
    const dialog = page.locator(".quick-input-widget:visible", { hasText: "OK" });
    const isGone = async (): Promise<boolean> => {
      // Before it has read the folder it takes no answer, and says nothing of that.
      const place = await quickInput.inputValue({ timeout: 5000 }).catch(() => "");
      if (place.endsWith(name)) await dialog.getByRole("button", { name: "OK", exact: true }).click({ timeout: 5000 });
      return dialog.waitFor({ state: "hidden", timeout: 5000 }).then(
        () => true,
        () => false,
      );
    };
    // What the folder holds stands there once it is read.
    await dialog.locator(".monaco-list-row").first().waitFor();
    await expect.poll(isGone, { timeout: PATIENCE, interval: 500 }).toBe(true);
  };
  return {
    page,
    folder,
    acceptPlace,
    hoverHere,
    outside,
    press,
    command,
    open: async (path) => {
      const name = path.slice(path.lastIndexOf("/") + 1);
      await press("Control+p");
      await quickInput.waitFor();
      // A whole path is found without a search, which the oldest workbench from npm has not.
      await quickInput.fill(join(folder, path));
      await page.locator(".quick-input-list .monaco-list-row.focused", { hasText: name }).waitFor();
      await press("Enter");
      await page.locator(".tab.active", { hasText: name }).waitFor();
      await page.locator(".editor-instance .view-line").first().waitFor();
    },
    ready: () => page.locator(".codelens-decoration").first().waitFor(),
    goTo: async (line, column) => {
      await press("Control+g");
      await quickInput.waitFor();
      await quickInput.fill(`:${line}:${column}`);
      await press("Enter");
      await page.locator(".quick-input-widget").waitFor({ state: "hidden" });
    },
    type: (text) => page.keyboard.type(text, { delay: 15 }),
    problems: () => page.locator(".markers-panel .monaco-list-row"),
    squiggles: (severity) => page.locator(`.monaco-editor .squiggly-${severity}`),
    pictureWidth: () =>
      webview()
        .locator("img")
        .evaluate((image) => (image as ImageLike).naturalWidth),
    webview,
    cursor: async () => (await page.locator(".statusbar-item", { hasText: /Ln \d+/ }).textContent()) ?? "",
    notification: (text) => page.locator(".notification-toast", { hasText: text }),
    onDisk: (path) => readFileSync(join(folder, path), "utf8"),
    onScreen: async () => {
      const lines = await page.locator(".editor-instance .view-line").evaluateAll((found) =>
        found
          .map((line) => ({
            top: Number.parseFloat((line as HTMLElementLike).style.top),
            text: line.textContent ?? "",
          }))
          .sort((a, b) => a.top - b.top)
          .map(({ text }) => text),
      );
      return lines.join("\n").replaceAll("\u00a0", " ");
    },
    save: async () => {
      await press("Control+s");
      await expect.poll(() => page.locator(".tab.active.dirty").count(), { timeout: PATIENCE }).toBe(0);
    },
    picture: async (name) => {
      const where = process.env.SPRAG_PICTURES;
      if (where !== undefined)
        await page.screenshot({ path: join(where, `${`${name} ${label}`.trim().replaceAll(/\W+/g, "-")}.png`) });
    },
    close: async () => {
      await context.close();
      rmSync(parent, { recursive: true, force: true });
    },
  };
}

/** These are of the browser, which the project's own types do not know. */
interface ImageLike {
  readonly naturalWidth: number;
}

interface HTMLElementLike {
  readonly style: { readonly top: string };
}
