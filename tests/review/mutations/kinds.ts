// All kinds of change, most grave first.
import { itemKinds } from "./items.ts";
import type { Kind } from "./kind.ts";
import { layoutKinds } from "./layout.ts";
import { orderKinds } from "./order.ts";
import { safetyKinds } from "./safety.ts";
import { libraryValueKinds, valueKinds } from "./values.ts";
import { wordKinds } from "./words.ts";

export const kinds: readonly Kind[] = [
  ...safetyKinds,
  ...valueKinds,
  ...libraryValueKinds,
  ...orderKinds,
  ...itemKinds,
  ...wordKinds,
  ...layoutKinds,
];
