// What the extension starts as its server process.
import { serveAsChild } from "./node.ts";

serveAsChild();
