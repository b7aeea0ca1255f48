// One folder of the editor as the façade sees it: a root, the texts below it (those on the screen before those on the
// disk), and a workspace made anew when one of them changed. Knows no connection and no feature.
import { URI, UriUtils } from "langium";
import { figuresWanted, withFigures } from "#workspace/figures.ts";
import { isTable } from "#workspace/load.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";
import type { Files } from "./files.ts";
import { isRulesFile, leftOutByName, listFiles } from "./listing.ts";

export interface Folder {
  /** Of the root, without a slash at its end. */
  readonly uri: string;
  /** Files below it that were listed or opened; those that are only used by them are not among them. */
  readonly paths: () => readonly string[];
  /** Whether a path is among them. */
  readonly holds: (path: string) => boolean;
  /** From the root, with `/`; null where it lies outside. */
  readonly pathOf: (uri: string) => string | null;
  /** As the client spells it where it has opened the file. */
  readonly uriOf: (path: string) => string;
  readonly open: ReadonlyMap<string, OpenText>;
  /** The workspace of the texts known now, without what they still want. */
  readonly workspace: () => Workspace;
  /** The same after all that it wants was read. */
  readonly settled: () => Promise<Workspace>;
  /** And with the pictures that outputs of a file show. `again`: also those that were read before; else only new ones are read. */
  readonly withFigures: (path: string, again: boolean) => Promise<Workspace>;
  readonly show: (uri: string, text: string, version: number) => void;
  /** The editor has closed it: the disk holds again, or nothing. */
  readonly hide: (uri: string) => Promise<void>;
  /** Lists and reads what is below the root, without what `.gitignore` leaves out. `told` hears how far it is, and stops it by giving false. */
  readonly readAll: (told: (done: number, of: number) => Promise<boolean>) => Promise<void>;
  /** Whether all that is below the root was listed and read. */
  readonly isWhole: () => boolean;
  /**
   * Files or whole folders changed, came or went on the disk. Gives the paths whose text is another now, or that were not there before.
   * @param came those that were not there before
   */
  readonly refresh: (uris: readonly string[], came?: readonly string[]) => Promise<readonly string[]>;
}

export interface OpenText {
  readonly uri: string;
  readonly text: string;
  readonly version: number;
}

/** Texts are asked for so many at a time, so that reading can be stopped and others get a turn. */
const AT_A_TIME = 20;

/** @param crib the path of the shop's crib below the root; empty where there is none */
export function folderAt(rootUri: string, files: Files, today: () => string, crib: () => string = () => ""): Folder {
  const root = URI.parse(rootUri.replace(/\/+$/, ""));
  const rootPath = root.path.replace(/\/+$/, "");
  const onDisk = new Map<string, string>();
  const own = new Set<string>();
  const present = new Set<string>();
  const absent = new Set<string>();
  /** Of the file that they were asked for last, as they were read. */
  const figures = new Map<string, Uint8Array | null>();
  const open = new Map<string, OpenText>();
  let workspace: Workspace | null = null;
  let isStale = true;
  let isWhole = false;
  let leavesOut = leftOutByName;

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
    const named = crib() === "" ? undefined : crib();
    const day = today();
    const isSame = workspace?.snapshot.crib === named && workspace?.snapshot.today === day;
    if (workspace === null || isStale || !isSame) {
      const known = { texts: texts(), present: new Set(present), absent: new Set(absent), today: day };
      const snapshot = named === undefined ? known : { ...known, crib: named };
      workspace = openWorkspace(snapshot, workspace);
      isStale = false;
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
  /** Not ours any more; read again where a file uses it. */
  const drop = (path: string): void => {
    isStale = true;
    own.delete(path);
    onDisk.delete(path);
  };
  /** After other rules: drops what is left out now, and gives what is not any more. */
  const listAgain = async (): Promise<{ readonly dropped: readonly string[]; readonly added: readonly string[] }> => {
    const listing = await listFiles(files, root.toString(), pathOf);
    leavesOut = listing.leavesOut;
    const dropped = [...own].filter((path) => leavesOut(path) && !open.has(path));
    for (const path of dropped) drop(path);
    return { dropped, added: listing.files.filter(({ path }) => !own.has(path)).map(({ uri }) => uri) };
  };
  const isText = (path: string): boolean => path.endsWith(".sprag") || onDisk.has(path);
  /** Editors tell of a folder that went or was moved, and not of what is in it: what is known there, and what is new in those that came. */
  const insideFolders = async (uris: readonly string[], came: readonly string[]): Promise<readonly string[]> => {
    const others = uris.filter((uri) => !isText(pathOf(uri) ?? "") && !isRulesFile(uri));
    if (others.length === 0) return [];
    const folders = new Set(others.map(pathOf));
    const known = [...new Set([...onDisk.keys(), ...present, ...absent])].filter((path) =>
      foldersAround(path).some((folder) => folders.has(folder)),
    );
    const fresh = isWhole ? came.filter((uri) => others.includes(uri) && !leavesOut(pathOf(uri) ?? "")) : [];
    if (fresh.length === 0) return known.map(uriOf);
    const areFiles = await files.present(fresh);
    const listed = await Promise.all(fresh.filter((_, at) => areFiles[at] !== true).map((uri) => files.list(uri)));
    return [...known.map(uriOf), ...listed.flat()];
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
    holds: (path) => own.has(path),
    pathOf,
    uriOf,
    open,
    workspace: current,
    settled,
    withFigures: async (path, again) => {
      const now = await settled();
      const wanted = figuresWanted(now, path).map((one) => one.path);
      for (const one of figures.keys()) if (!wanted.includes(one)) figures.delete(one);
      if (wanted.length === 0) return now;
      const unread = again ? wanted : wanted.filter((one) => !figures.has(one));
      const read = unread.length === 0 ? [] : await files.bytes(unread.map(uriOf));
      for (const [at, one] of unread.entries()) figures.set(one, read[at] ?? null);
      return withFigures(now, new Map(wanted.map((one) => [one, figures.get(one) ?? null])));
    },
    show: (uri, text, version) => {
      const path = pathOf(uri);
      if (path === null) return;
      open.set(path, { uri, text, version });
      if (!isTable(path)) own.add(path);
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
      if (leavesOut(path) && !open.has(path)) drop(path);
    },
    readAll: async (told) => {
      const listing = await listFiles(files, root.toString(), pathOf);
      leavesOut = listing.leavesOut;
      const found = listing.files;
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
    refresh: async (told, came = []) => {
      const uris = [
        ...new Set([
          ...told,
          ...(await insideFolders(
            told.filter((uri) => pathOf(uri) !== null),
            came,
          )),
        ]),
      ];
      const inside = uris.flatMap((uri) => pathOf(uri) ?? []);
      const { dropped, added } = uris.some(isRulesFile) && isWhole ? await listAgain() : { dropped: [], added: [] };
      const changed: string[] = [...dropped];
      // Of figures and tables it only matters whether they are there: that is asked again.
      for (const path of inside.filter((one) => !isText(one))) {
        figures.delete(path);
        if (present.delete(path) || absent.delete(path)) {
          isStale = true;
          changed.push(path);
        }
      }
      const asked = [...new Set([...uris.filter((uri) => isText(pathOf(uri) ?? "")), ...added])];
      const read = await files.read(asked);
      asked.forEach((uri, at) => {
        const path = pathOf(uri) as string;
        const text = read[at] ?? null;
        const isOurs = !leavesOut(path);
        if (!isOurs && !onDisk.has(path) && !absent.has(path)) return;
        if (text === (onDisk.get(path) ?? null) && !absent.has(path) && !present.has(path)) return;
        keep(path, text);
        if (text !== null && isOurs && path.endsWith(".sprag")) own.add(path);
        changed.push(path);
      });
      return changed;
    },
  };
}

/** `a` and `a/b` of `a/b/c.sprag`. */
function foldersAround(path: string): readonly string[] {
  const names = path.split("/").slice(0, -1);
  return names.map((_, at) => names.slice(0, at + 1).join("/"));
}
