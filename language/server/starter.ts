// What a new folder begins with, for clients that offer to make one. Knows no folder.
import { starterFiles } from "#workspace/starter.ts";
import type { Feature } from "./feature.ts";
import { answerOwn } from "./own-requests.ts";

export const starter: Feature = {
  capabilities: () => ({}),
  start: ({ connection }) => {
    answerOwn(connection, "sprag/starter", () => ({
      files: [...starterFiles()].map(([name, text]) => ({ name, text })),
    }));
  },
};
