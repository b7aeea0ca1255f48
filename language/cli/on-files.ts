// The sub-commands that read files and judge or lay them out. What several of them need is in one part of the bundle with them: many
// small parts take longer to find than to load.
export { defineArrange } from "./arrange.ts";
export { defineCheck } from "./check.ts";
export { checkInThread } from "./check-threads.ts";
export { defineExplain } from "./explain.ts";
export { defineFormat } from "./format.ts";
export { defineMerge } from "./merge.ts";
export { defineOutline } from "./outline.ts";
