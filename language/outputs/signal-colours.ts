// The colours of signal words, those of ANSI Z535.6 / ISO 3864-2, each with a colour of text of at least 4.5 to 1. Knows no format.
import type { Signal } from "./document.ts";

export const signalColours: Readonly<Record<Signal, { readonly panel: string; readonly text: string }>> = {
  danger: { panel: "#b3141d", text: "#ffffff" },
  warning: { panel: "#f58220", text: "#000000" },
  caution: { panel: "#0a5296", text: "#ffffff" },
  note: { panel: "#ffffff", text: "#111111" },
};
