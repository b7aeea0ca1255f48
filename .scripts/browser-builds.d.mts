/** Name of a package to the file of its browser build. */
export const browserBuilds: Readonly<Record<string, string>>;
