// What the machine says when a file cannot be used, in a fitter's words. Knows no command.

const WORDS: Readonly<Record<string, string>> = {
  ENOENT: "is not there.",
  ENOTDIR: "is not there: part of its path is a file, not a folder.",
  EACCES: "may not be used: no permission. Ask who owns it.",
  EPERM: "may not be used: no permission. Ask who owns it.",
  EISDIR: "is a folder, not a file.",
  EEXIST: "is there already.",
  ELOOP: "is a link that leads in a circle.",
  ENAMETOOLONG: "has a name too long for this machine.",
  ENOSPC: "could not be written: the disk is full.",
  EDQUOT: "could not be written: the disk quota is used up.",
  EROFS: "could not be written: it lies on a read-only disk.",
  EMFILE: "could not be opened: too many files are open.",
  EBUSY: "is in use by another program.",
  ETXTBSY: "is in use by another program.",
};

/** To stand behind the path. */
export function systemWords(error: unknown): string {
  const code = codeOf(error);
  return (
    WORDS[code ?? ""] ?? `could not be used (${code ?? (error instanceof Error ? error.message : String(error))}).`
  );
}

export function codeOf(error: unknown): string | null {
  const code = error instanceof Error && "code" in error ? error.code : null;
  return typeof code === "string" ? code : null;
}
