// A real git repository in a folder of a test: made with git itself, and with settings that would run programs if anything let
// them. The one place where tests call git.
import { execFileSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { type Folder, folderWith } from "#harness/command.ts";

export interface GitShop extends Folder {
  readonly git: (...args: string[]) => string;
  readonly write: (files: Readonly<Record<string, string>>) => void;
  /** Stages everything and commits it. */
  readonly commit: (message: string) => void;
}

const ENVIRONMENT = {
  ...process.env,
  GIT_CONFIG_GLOBAL: "/dev/null",
  GIT_CONFIG_NOSYSTEM: "1",
  GIT_AUTHOR_NAME: "A",
  GIT_AUTHOR_EMAIL: "a@example.invalid",
  GIT_COMMITTER_NAME: "A",
  GIT_COMMITTER_EMAIL: "a@example.invalid",
};

/** With these files committed. */
export function gitShop(files: Readonly<Record<string, string>>): GitShop {
  const folder = folderWith(files);
  const git = (...args: string[]): string =>
    execFileSync("git", args, {
      cwd: folder.path,
      env: ENVIRONMENT,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "pipe"],
    });
  const shop: GitShop = {
    ...folder,
    git,
    write: (all) => {
      for (const [path, text] of Object.entries(all)) {
        mkdirSync(dirname(join(folder.path, path)), { recursive: true });
        writeFileSync(join(folder.path, path), text);
      }
    },
    commit: (message) => {
      git("add", "--all");
      git("commit", "--quiet", "--message", message);
    },
  };
  git("init", "--quiet", "--initial-branch", "main");
  shop.commit("first");
  return shop;
}

export interface Trap {
  /** Every program that was run. */
  readonly sprung: () => readonly string[];
  /** The settings that were laid. */
  readonly laid: readonly string[];
}

/** Settings, attributes and hooks of a repository that run a program which leaves a file behind. */
export function layTraps(shop: GitShop): Trap {
  const canaries = folderWith().path;
  const laid: string[] = [];
  const program = (name: string): string => {
    const path = join(canaries, `${name}.sh`);
    writeFileSync(path, `#!/bin/sh\ntouch "${join(canaries, name)}"\nexec cat\n`);
    chmodSync(path, 0o755);
    laid.push(name);
    return path;
  };
  const set = (key: string, value: string): void => void shop.git("config", key, value);
  for (const key of ["core.fsmonitor", "core.pager", "core.editor", "core.sshCommand", "core.askPass", "diff.external"])
    set(key, program(key));
  set("diff.shop.textconv", program("textconv"));
  set("diff.shop.command", program("diff-command"));
  for (const name of ["clean", "smudge", "process"]) set(`filter.shop.${name}`, program(`filter-${name}`));
  set("credential.helper", `!${program("credential")}`);
  set("gpg.program", program("gpg"));
  set("uploadpack.packObjectsHook", program("pack-objects"));
  for (const name of ["rev-parse", "ls-tree", "ls-files", "cat-file", "show"]) {
    set(`alias.${name}`, `!${program(`alias-${name}`)}`);
    set(`pager.${name}`, program(`pager-${name}`));
  }
  // A clone that lacks objects asks its source for them; here with a program in place of it.
  set("remote.origin.url", `ext::${program("ext")}`);
  set("remote.origin.uploadpack", program("uploadpack"));
  set("remote.origin.promisor", "true");
  set("extensions.partialClone", "origin");
  set("protocol.ext.allow", "always");
  set("protocol.file.allow", "always");
  const hooks = join(shop.path, ".git", "hooks");
  mkdirSync(hooks, { recursive: true });
  set("core.hooksPath", hooks);
  for (const name of [
    "post-index-change",
    "post-checkout",
    "reference-transaction",
    "pre-auto-gc",
    "fsmonitor-watchman",
  ]) {
    writeFileSync(join(hooks, name), `#!/bin/sh\ntouch "${join(canaries, `hook-${name}`)}"\n`);
    chmodSync(join(hooks, name), 0o755);
    laid.push(`hook-${name}`);
  }
  writeFileSync(join(shop.path, ".git", "info", "attributes"), "*.sprag diff=shop filter=shop\n");
  return { sprung: () => laid.filter((name) => existsSync(join(canaries, name))), laid };
}
