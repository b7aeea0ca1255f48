// Once before all tests that want a browser.
import { prepareHosts } from "./workbench-host.ts";

export default function setup(): void {
  prepareHosts();
}
