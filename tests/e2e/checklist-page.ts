// A checklist in Debian's Chromium, opened as the one file that it is. Knows how it is filled in, not what should come of it.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from "playwright-core";

export interface Shelf {
  /** Opens a checklist in a context of its own. */
  readonly open: (html: string, options?: BrowserContextOptions & { readonly script?: string }) => Promise<Sheet>;
  readonly close: () => Promise<void>;
}

export interface Sheet {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors, refusals of the policy, dialogs, and requests other than for the file itself. */
  readonly troubles: readonly string[];
  /** What was said last. */
  readonly said: () => Promise<string>;
  /** The entries that come next. */
  readonly next: () => Promise<readonly string[]>;
  readonly progress: () => Promise<string>;
  /** Ticks a box whatever hides it, as a finger on its label does. */
  readonly tick: (id: string) => Promise<void>;
  readonly read: (id: string, text: string) => Promise<void>;
  readonly sign: (id: string, name: string, badge?: string) => Promise<void>;
  readonly name: (name: string, badge?: string) => Promise<void>;
  readonly press: (text: string) => Promise<void>;
  /** Opens what stands under More, or closes it. */
  readonly more: () => Promise<void>;
}

const FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run"];

export async function openShelf(): Promise<Shelf> {
  const folder = mkdtempSync(join(tmpdir(), "sprag-sheet-"));
  const browser: Browser = await chromium.launch({ executablePath: "/usr/bin/chromium", headless: true, args: FLAGS });
  let sheets = 0;
  return {
    open: async (html, { script, ...options } = {}) => {
      const path = join(folder, `sheet-${++sheets}.html`);
      writeFileSync(path, html);
      const context = await browser.newContext({ viewport: { width: 800, height: 1280 }, ...options });
      if (script !== undefined) await context.addInitScript(script);
      return sheetOf(context, pathToFileURL(path).href);
    },
    close: async () => {
      await browser.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function sheetOf(context: BrowserContext, address: string): Promise<Sheet> {
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") troubles.push(message.text());
  });
  page.on("dialog", (dialog) => {
    troubles.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on("request", (request) => {
    const url = request.url();
    if (url !== address && !/^(?:data|blob):/.test(url)) troubles.push(`asked for ${url}`);
  });
  await page.goto(address);
  const of = (id: string, kind = ""): string => `${kind}[data-of="${id}"]`;
  const text = async (selector: string): Promise<string> => (await page.locator(selector).textContent()) ?? "";
  return {
    page,
    context,
    troubles,
    said: () => text("#say"),
    progress: () => text(".progress"),
    next: () =>
      page.evaluate<string[]>(
        '[...new Set([...document.querySelectorAll(".is-next [data-of], .is-next[data-of]")].filter((one) => one.closest(".tick, .field, .sign, .option").matches(".is-next")).map((one) => one.getAttribute("data-of")))]',
      ),
    tick: (id) => page.locator(of(id, 'input[type="checkbox"]')).click(),
    read: async (id, value) => {
      await page.locator(of(id, 'input[type="text"]')).fill(value);
      await page.locator(`label:has(${of(id, 'input[type="text"]')}) + .reading .main`).click();
    },
    sign: async (id, who, badge = "") => {
      const place = page.locator(of(id, ".sign"));
      await place.locator("input").nth(0).fill(who);
      await place.locator("input").nth(1).fill(badge);
      await place.locator("button").click();
    },
    name: async (who, badge = "") => {
      const row = page.locator("#people .person").first();
      await row.locator("input").nth(0).fill(who);
      await row.locator("input").nth(1).fill(badge);
      await row.locator("button").click();
    },
    more: () => page.locator(".more summary").click(),
    press: (label) => page.getByRole("button", { name: label, exact: true }).click(),
  };
}

/** The bytes of the file that is saved when something is done. */
export async function savedBy(sheet: Sheet, work: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([sheet.page.waitForEvent("download"), work()]);
  return readFileSync(await download.path(), "utf8");
}

/** What an axe run has against a page, WCAG 2.2 AA and good practice. */
export async function violations(sheet: Sheet): Promise<readonly string[]> {
  await sheet.page.evaluate(axe.source);
  return sheet.page.evaluate<string[]>(
    "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => id + ' ' + target + ' ' + failureSummary)))",
  );
}
