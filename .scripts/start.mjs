// `npm start`: installs, builds, checks the sample shop and writes one checklist from it.
import { mkdirSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { prepare, root, run } from "./install.mjs";

const procedure = join("samples", "hot-bearing-fit.sprag");
const crib = join("samples", "shop", "crib.sprag");
const checklist = join("samples", "out", "hot-bearing-fit.html");
const command = join("language", "dist", "sprag.js");

prepare();
// `faulty` holds one mistake in each file on purpose.
const shop = readdirSync(join(root, "samples"), { withFileTypes: true })
  .filter((entry) => (entry.isDirectory() ? entry.name !== "faulty" && holdsSprag(entry.name) : isSprag(entry.name)))
  .map((entry) => join("samples", entry.name))
  .sort();
run("Checking the sample shop", process.execPath, [command, "check", ...shop]);
mkdirSync(join(root, "samples", "out"), { recursive: true });
run("Writing a checklist", process.execPath, [
  command,
  ...["export", procedure, "--as", "checklist", "--format", "html", "--crib", crib, "--out", checklist],
]);

process.stdout.write(`
The checklist is here; open it in a browser:
  ${join(root, checklist)}

What to do next:
  see a mistake being found     npx sprag check ${join("samples", "faulty", "order.enclosed.sprag")}
  read about a finding          npx sprag explain order.enclosed
  start a procedure of your own npx sprag new my-shop
  learn the language            ${join("language", "GUIDE.md")}
`);

function holdsSprag(folder) {
  return readdirSync(join(root, "samples", folder)).some(isSprag);
}

function isSprag(name) {
  return name.endsWith(".sprag");
}
