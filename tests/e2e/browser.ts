// Runs the browser bundle in a worker of a real browser, over files that the page's own server hands out. Knows nothing of
// what the results should be.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join, normalize } from "node:path";
import { type Browser, chromium } from "playwright-core";

export interface WorkerHost {
  /**
   * Runs the body of an async function in a worker; `sprag` is the façade, `fileText(path)` and `fileBytes(path)` a file or null,
   * `fonts` the typefaces.
   */
  readonly inWorker: <Result>(body: string, input: unknown) => Promise<Result>;
  /** Requests to anywhere but the page's own server. */
  readonly outside: readonly string[];
  readonly close: () => Promise<void>;
}

const root = join(import.meta.dirname, "..", "..");

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

/** @param folder whose files the worker may ask for */
export async function startWorkerHost(folder: string): Promise<WorkerHost> {
  execFileSync(process.execPath, [join(root, "language", "build.mjs")]);
  const server = await serve(folder);
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const browser: Browser = await chromium.launch({ executablePath: "/usr/bin/chromium", headless: true, args: FLAGS });
  const page = await browser.newPage();
  const outside: string[] = [];
  page.on("request", (request) => {
    if (!request.url().startsWith(address) && !request.url().startsWith("blob:")) outside.push(request.url());
  });
  await page.goto(address);
  return {
    inWorker: (body, input) => page.evaluate(`runInWorker(${JSON.stringify({ body, input })})`),
    outside,
    close: async () => {
      await browser.close();
      await new Promise((done) => server.close(done));
    },
  };
}

/** Program text of the page: what runs there knows nothing of this file. */
const PAGE_SCRIPT = String.raw`
  function runInWorker({ body, input }) {
    const source = [
      "import * as sprag from '" + location.origin + "/sprag-browser.js';",
      "const file = (path) => fetch('" + location.origin + "/files/' + path.split('/').map(encodeURIComponent).join('/'));",
      "const fileText = async (path) => {",
      "  const answer = await file(path);",
      "  return answer.ok ? answer.text() : null;",
      "};",
      "const fileBytes = async (path) => {",
      "  const answer = await file(path);",
      "  return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : null;",
      "};",
      "const asset = async (name) => new Uint8Array(await (await fetch('" + location.origin + "/assets/' + name)).arrayBuffer());",
      "const fonts = async () => ({ regular: await asset('DejaVuSans.ttf'), bold: await asset('DejaVuSans-Bold.ttf') });",
      "const work = async (input) => {" + body + "};",
      "self.onmessage = ({ data }) => work(data).then(",
      "  (result) => self.postMessage({ result }),",
      "  (error) => self.postMessage({ fault: String(error.stack) }),",
      ");",
      "self.postMessage('ready');",
    ].join("\n");
    const worker = new Worker(URL.createObjectURL(new Blob([source], { type: "text/javascript" })), { type: "module" });
    return new Promise((resolve, reject) => {
      worker.onerror = (event) => reject(new Error(event.message));
      worker.onmessage = ({ data }) => {
        if (data === "ready") worker.postMessage(input);
        else if ("fault" in data) reject(new Error(data.fault));
        else resolve(data.result);
      };
    }).finally(() => worker.terminate());
  }`;

async function serve(folder: string): Promise<Server> {
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? "/", "http://localhost").pathname);
    const answer = answerTo(path, folder);
    response.writeHead(answer === null ? 404 : 200, answer === null ? {} : { "content-type": answer.type });
    response.end(answer?.body);
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  return server;
}

function answerTo(path: string, folder: string): { readonly type: string; readonly body: string | Buffer } | null {
  if (path === "/")
    return { type: "text/html", body: `<!doctype html><title>Sprag</title><script>${PAGE_SCRIPT}</script>` };
  const isBundled = /^\/(?:sprag-browser\.js$|parts\/|assets\/)/.test(path);
  if (!isBundled && !path.startsWith("/files/")) return null;
  try {
    if (!isBundled)
      return {
        type: "text/plain; charset=utf-8",
        body: readFileSync(join(folder, normalize(path.slice("/files".length)))),
      };
    const type = path.endsWith(".js") ? "text/javascript" : "font/ttf";
    return { type, body: readFileSync(join(root, "language", "dist", normalize(path))) };
  } catch {
    return null;
  }
}
