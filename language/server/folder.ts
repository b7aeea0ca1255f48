// One folder of the editor as the façade sees it: a root, the texts below it (those on the screen before those on the
// disk), and a workspace made anew when one of them changed. Knows no connection and no feature.
import { URI, UriUtils } from "langium";
import { openWorkspace, type Workspace } from "#workspace/index.ts";
import type { Files } from "./files.ts";

export interface Folder {
  /** Of the root, without a slash at its end. */
  readonly uri: string;
  /** Files below it that were listed or opened; those that are only used by them are not among them. */
  readonly paths: () => readonly string[];
  /** From the root, with `/`; null where it lies outside. */
  readonly pathOf: (uri: string) => string | null;
  /** As the client spells it where it has opened the file. */
  readonly uriOf: (path: string) => string;
  readonly open: ReadonlyMap<string, OpenText>;
  /** The workspace of the texts known now, without what they still want. */
  readonly workspace: () => Workspace;
  /** The same after all that it wants was read. */
  readonly settled: () => Promise<Workspace>;
  readonly show: (uri: string, text: string, version: number) => void;
  /** The editor has closed it: the disk holds again, or nothing. */
  readonly hide: (uri: string) => Promise<void>;
  /** Lists and reads what is below the root. `told` hears how far it is, and stops it by giving false. */
  readonly readAll: (told: (done: number, of: number) => Promise<boolean>) => Promise<void>;
  /** Whether all that is below the root was listed and read. */
  readonly isWhole: () => boolean;
  /** Files changed, came or went on the disk. Gives the paths whose text is another now, or that were not there before. */
  readonly refresh: (uris: readonly string[]) => Promise<readonly string[]>;
}

export interface OpenText {
  readonly uri: string;
  readonly text: string;
  readonly version: number;
}

/** Texts are asked for so many at a time, so that reading can be stopped and others get a turn. */
const AT_A_TIME = 20;

/** @param listed whether the folder was opened as such; else it is the place of a file opened alone */
export function folderAt(rootUri: string, files: Files, today: () => string): Folder {
  const root = URI.parse(rootUri.replace(/\/+$/, ""));
  const rootPath = root.path.replace(/\/+$/, "");
  const onDisk = new Map<string, string>();
  const own = new Set<string>();
  const present = new Set<string>();
  const absent = new Set<string>();
  const open = new Map<string, OpenText>();
  let workspace: Workspace | null = null;
  let isStale = true;
  let isWhole = false;

  const pathOf = (uri: string): string | null => {
    const { scheme, authority, path } = URI.parse(uri);
    if (scheme !== root.scheme || authority !== root.authority) return null;
    // A text that was never saved has a name and no folder.
    if (rootPath === "" && path !== "" && !path.startsWith("/")) return path;
    return path.startsWith(`${rootPath}/`) ? path.slice(rootPath.length + 1) : null;
  };
  const uriOf = (path: string): string => open.get(path)?.uri ?? UriUtils.joinPath(root, path).toString();
  const texts = (): Map<string, string> => {
    const all = new Map(onDisk);
    for (const [path, { text }] of open) all.set(path, text);
    return all;
  };
  const current = (): Workspace => {
    if (workspace === null || isStale) {
      isStale = false;
      const snapshot = { texts: texts(), present: new Set(present), absent: new Set(absent), today: today() };
      workspace = openWorkspace(snapshot, workspace);
    }
    return workspace;
  };
  const keep = (path: string, text: string | null): void => {
    isStale = true;
    present.delete(path);
    if (text === null) {
      onDisk.delete(path);
      if (open.has(path)) return;
      own.delete(path);
      absent.add(path);
    } else {
      onDisk.set(path, text);
      absent.delete(path);
    }
  };
  const settled = async (): Promise<Workspace> => {
    // Each round reads what the last one found to be wanted; a path is known afterwards, so this ends.
    for (let now = current(); ; now = current()) {
      const { wanted } = now;
      if (wanted.length === 0) return now;
      const forText = wanted.filter(({ need }) => need === "text").map(({ path }) => path);
      const forPresence = wanted.filter(({ need }) => need === "presence").map(({ path }) => path);
      const read = await files.read(forText.map(uriOf));
      const found = await files.present(forPresence.map(uriOf));
      for (const [at, path] of forText.entries()) keep(path, read[at] ?? null);
      for (const [at, path] of forPresence.entries()) (found[at] === true ? present : absent).add(path);
      isStale = true;
    }
  };

  return {
    uri: root.toString(),
    paths: () => [...own].sort(),
    pathOf,
    uriOf,
    open,
    workspace: current,
    settled,
    show: (uri, text, version) => {
      const path = pathOf(uri);
      if (path === null) return;
      open.set(path, { uri, text, version });
      own.add(path);
      absent.delete(path);
      isStale = true;
    },
    hide: async (uri) => {
      const path = pathOf(uri);
      if (path === null) return;
      open.delete(path);
      isStale = true;
      // It may be opened again while the disk is read: what is on the screen holds then.
      const [text] = await files.read([uri]);
      keep(path, text ?? null);
    },
    readAll: async (told) => {
      const uris = await files.list(root.toString());
      const found = uris.flatMap((uri) => {
        const path = pathOf(uri);
        return path === null ? [] : [{ uri, path }];
      });
      for (let at = 0; at < found.length; at += AT_A_TIME) {
        if (!(await told(at, found.length))) return;
        const some = found.slice(at, at + AT_A_TIME);
        const read = await files.read(some.map(({ uri }) => uri));
        some.forEach(({ path }, nth) => {
          const text = read[nth] ?? null;
          if (text !== null) own.add(path);
          keep(path, text);
        });
        // Models too are made in the same small portions, or the first check would have to make them all.
        void (await settled()).loaded.models;
      }
      isWhole = true;
    },
    isWhole: () => isWhole,
    refresh: async (uris) => {
      const inside = uris.flatMap((uri) => pathOf(uri) ?? []);
      const isText = (path: string): boolean => path.endsWith(".sprag") || onDisk.has(path);
      const changed: string[] = [];
      // Of figures and tables it only matters whether they are there: that is asked again.
      for (const path of inside.filter((one) => !isText(one)))
        if (present.delete(path) || absent.delete(path)) {
          isStale = true;
          changed.push(path);
        }
      const asked = uris.filter((uri) => isText(pathOf(uri) ?? ""));
      const read = await files.read(asked);
      asked.forEach((uri, at) => {
        const path = pathOf(uri) as string;
        const text = read[at] ?? null;
        if (text === (onDisk.get(path) ?? null) && !absent.has(path) && !present.has(path)) return;
        keep(path, text);
        if (text !== null && path.endsWith(".sprag")) own.add(path);
        changed.push(path);
      });
      return changed;
    },
  };
}
