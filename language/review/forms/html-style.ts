// The look of a review on the screen, light and dark, and on paper. Each text stands out from its ground by at least 4.5 to 1.

export const STYLE = `
:root { color-scheme: light dark; --ink: #16181c; --ground: #fff; --soft: #f3f4f6; --rule: #c5c9d0; --quiet: #555b66; --link: #0a3d91;
  --safety: #a3121b; --values: #8a4b00; --order: #0a5296; --items: #14663a; --words: #5b3a8c; --layout: #555b66;
  --del: #ffe1e1; --del-ink: #7d0d14; --ins: #d9f5e2; --ins-ink: #0d5229; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e8eaee; --ground: #15171b; --soft: #1f2228; --rule: #3d434d; --quiet: #a8afbb; --link: #93b8ff;
    --safety: #ff8f8f; --values: #f3b562; --order: #86bdf5; --items: #7fd6a2; --words: #c7a9f2; --layout: #a8afbb;
    --del: #4a1d20; --del-ink: #ffb9b9; --ins: #163d26; --ins-ink: #a5ecc0; }
}
@media print { :root { color-scheme: light; } article { break-inside: avoid; } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 72rem; padding: 1.5rem 1rem 4rem; color: var(--ink); background: var(--ground);
  font: 1rem/1.5 system-ui, sans-serif; }
h1 { margin: 0 0 .25rem; font-size: 1.6rem; }
h2 { margin: 2rem 0 .75rem; font-size: 1.2rem; padding-bottom: .25rem; border-bottom: 2px solid var(--group); color: var(--group); }
h3 { margin: 0; font-size: 1rem; }
p, ul { margin: .35rem 0; }
ul { padding-inline-start: 1.25rem; }
code { margin-inline-start: .5rem; font: .8rem ui-monospace, monospace; font-weight: 400; color: var(--quiet); }
a { color: var(--link); }
.summary { color: var(--quiet); }
.count { font-weight: 400; }
.safety { --group: var(--safety); } .values { --group: var(--values); } .order { --group: var(--order); }
.items { --group: var(--items); } .words { --group: var(--words); } .layout { --group: var(--layout); }
article { margin: 0 0 .9rem; padding: .7rem .9rem; border: 1px solid var(--rule); border-inline-start: 5px solid var(--group); border-radius: 4px; }
.sides { display: grid; grid-template-columns: 1fr 1fr; gap: .6rem; margin-top: .5rem; }
.sides > div { padding: .4rem .6rem; background: var(--soft); border-radius: 3px; overflow-wrap: anywhere; min-width: 0; }
.sides p { white-space: pre-wrap; }
.side { display: inline-block; min-width: 2.6rem; font-weight: 600; color: var(--quiet); }
.none { color: var(--quiet); }
del { background: var(--del); color: var(--del-ink); }
ins { background: var(--ins); color: var(--ins-ink); text-decoration: none; font-weight: 600; }
@media (max-width: 40rem) { .sides { grid-template-columns: 1fr; } }
`;
