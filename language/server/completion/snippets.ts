// Longer texts to fill in: a procedure, a task, a hot fit, a bolt circle and the like. Each stands as it is written here until
// the writer changes it, parses, and is laid out as the formatter lays it out.
import { CompletionItemKind } from "vscode-languageserver";
import type { Declaration } from "#model/declarations.ts";
import { type Candidate, GROUP } from "./candidate.ts";
import type { Place } from "./place.ts";
import { type Wish, wished } from "./snippet-names.ts";

export interface Snippet {
  readonly label: string;
  readonly detail: string;
  /** The grammar rules at which a statement may begin with it. */
  readonly blocks: readonly Place["block"][];
  readonly body: (name: (wish: Wish, otherwise: string) => string) => string;
  /** Whether it is likelier wanted than the word it begins with alone. */
  readonly isFirst?: true;
}

/** @param things what is declared in reach, for names to begin with */
export function snippetCandidates(place: Place, things: readonly Declaration[]): readonly Candidate[] {
  if (!place.opensLine || place.text !== null || !mayBegin(place)) return [];
  const name = (wish: Wish, otherwise: string): string => wished(wish, things) ?? otherwise;
  return SNIPPETS.filter(({ blocks }) => blocks.includes(place.block)).map(
    ({ label, detail, body, isFirst }, rank) => ({
      label,
      kind: CompletionItemKind.Snippet,
      snippet: body(name),
      detail,
      group: isFirst ? GROUP.best : GROUP.snippet,
      rank,
    }),
  );
}

/** Whether a statement may begin here, and not only the one before go on. */
function mayBegin({ expected, tokens }: Place): boolean {
  return expected.some(({ within, token }) => STARTERS.has(token) && within.at === tokens.length);
}

const STARTERS: ReadonlySet<string> = new Set(["step", "task", "check", "procedure", "part"]);

export const SNIPPETS: readonly Snippet[] = [
  {
    label: "procedure …",
    detail: "a procedure with its head and a first step",
    blocks: ["file"],
    isFirst: true,
    body: () => `procedure \${1:NewProcedure} "\${2:what it is for}" {
	document "\${3:WI-001}" revision "\${4:A}"

	task "\${5:first part of the work}" {
		step "\${6:What to do.}"$0
	}
}`,
  },
  {
    label: "bolt circle: ring, screws",
    detail: "a ring and the screws that sit in it",
    blocks: ["file", "procedure"],
    body: (name) => `ring \${1:CoverCircle} "\${2:cover bolt circle}" {
	count \${3:8}
	numbered clockwise seen from "\${4:drive end}"
	position 1 at 12 o'clock
}
part \${5:CoverScrew}[1..\${3:8}] "\${6:cover screw}" {
	seats in \${1:CoverCircle} by number
	secures \${7:${name("part", "Cover")}}
	torque \${8:45 ± 2} N·m
}`,
  },
  {
    label: "task …",
    detail: "a task with a first step",
    blocks: ["procedure", "flow"],
    body: () => `task "\${1:what this part of the work is}" {
	step "\${2:What to do.}"$0
}`,
  },
  {
    label: "step { … }",
    detail: "a step of several lines",
    blocks: ["procedure", "flow"],
    body: () => `step {
	do "\${1:what to do}"
	takes \${2:5} min$0
}`,
  },
  {
    label: "hot fit",
    detail: "heat, check, install, wait, check the seat",
    blocks: ["procedure", "flow"],
    body: (name) => `step \${1:HeatPart} {
	heat \${2:${name("part to heat", "Bearing")}} to \${3:100 .. 112} °C with \${4:${name("heater", "Heater")}}
	check "\${5:The part is hot enough all round.}"
}
step {
	install \${2:${name("part to heat", "Bearing")}} over \${6:${name("part it goes over", "Shaft")}}
	within \${7:90} s after \${1:HeatPart}
	takes \${8:40} s
}
step wait until \${2:${name("part to heat", "Bearing")}} is at most \${9:40} °C
step { check "\${10:No gap at the shoulder.}" expect at most \${11:0.03} mm record$0 }`,
  },
  {
    label: "bolt circle: install, tighten",
    detail: "put the screws in, tighten crosswise in stages",
    blocks: ["procedure", "flow"],
    body: (name) => `step install \${1:${name("screws", "CoverScrew")}}[all]
step {
	tighten \${1:${name("screws", "CoverScrew")}}[all] in cross pattern to \${2:30 %, 70 %, 100 %} of \${3:45} N·m with \${4:${name("wrench", "Wrench")}}
	critical$0
}`,
  },
  {
    label: "caution …",
    detail: "for equipment: what can be damaged, and how not to",
    blocks: ["procedure", "flow", "step"],
    body: () => `caution \${1:damage} "\${2:what can be damaged}" avoid "\${3:how to avoid it}"$0`,
  },
  {
    label: "warning …",
    detail: "for people: what can hurt, and how not to be hurt",
    blocks: ["procedure", "flow", "step"],
    body: () => `warning \${1:crush} "\${2:what can hurt}" avoid "\${3:how not to be hurt}"$0`,
  },
  {
    label: "when … otherwise",
    detail: "work that depends on a choice",
    blocks: ["procedure", "flow"],
    body: (name) => `when \${1:${name("option", "Extent")}} is \${2:${name("choice", "yes")}} {
	step "\${3:What to do then.}"
} otherwise {
	step "\${4:What to do else.}"$0
}`,
  },
  {
    label: "repeat … from … to",
    detail: "steps for one number after the other",
    blocks: ["procedure", "flow"],
    body: (name) =>
      `repeat \${1:n} from \${2:1} to \${3:8} { step install \${4:${name("screws", "CoverScrew")}}[\${1:n}]$0 }`,
  },
  {
    label: "check … if it fails",
    detail: "a check with what is done if it fails",
    blocks: ["step"],
    body: () => `check "\${1:what has to be so}" if it fails { stop "\${2:what to do instead}"$0 }`,
  },
];

/** The snippet as it stands before anything is typed into it. */
export function filled(snippet: string): string {
  let text = snippet.replaceAll("$0", "");
  // A place to fill in may hold no other.
  text = text.replace(/\$\{\d+:([^}]*)\}/g, "$1");
  return text;
}
