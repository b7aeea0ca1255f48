// Properties run on the same examples each time, so that a red run can be repeated; `SPRAG_SEED=random npm test` looks further.
import fc from "fast-check";

const given = process.env.SPRAG_SEED;
if (given !== "random") fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(given ?? 7) });
