// The sub-commands that write documents, or compare what is in them; with what several of them need (see on-files.ts).
export { defineExport } from "./export.ts";
export { defineReview } from "./review.ts";
export { defineVerify } from "./verify.ts";
