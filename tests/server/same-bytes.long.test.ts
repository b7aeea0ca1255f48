// The editor gets the bytes that the command writes, in each format of each output.
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { withEditor } from "#harness/editor.ts";
import type { ExportAnswer } from "#server/protocol.ts";
import { outputFormats } from "#workspace/index.ts";
import { COVER } from "../outputs/procedures.ts";

test("every output in every format", { timeout: 120_000 }, () =>
  withEditor({ files: { "a.sprag": COVER } }, async (editor) => {
    const { uri } = await editor.open("a.sprag");
    const folder = folderWith({ "a.sprag": COVER });
    let compared = 0;
    for (const { as, formats } of outputFormats())
      for (const format of formats) {
        const call = ["export", "a.sprag", "--as", as, "--format", format, "--on", "2026-05-04"];
        const { out, bytes } = await folder.spragLater(...call);
        const params = { uri, as, format, units: "both", repeats: "compact", draft: false };
        const answer = await editor.connection.sendRequest<ExportAnswer>("sprag/export", params);
        if (answer.kind !== "done") throw new Error(`${as} as ${format}: ${answer.kind}`);
        const got = Buffer.from(answer.content, answer.encoding === "base64" ? "base64" : "utf8");
        const wanted = out === "" ? Buffer.from(bytes) : Buffer.from(out);
        expect(Buffer.compare(got, wanted), `${as} as ${format}`).toBe(0);
        expect(wanted.length).toBeGreaterThan(100);
        compared++;
      }
    expect(compared).toBeGreaterThan(15);
  }),
);
