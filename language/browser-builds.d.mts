export const browserBuilds: Readonly<Record<string, string>>;
