// The look of a checklist while it is filled in: what comes next, what is done, buttons for gloves, the bar at the foot. Colours are
// the variables of html-style.ts. Knows no blocks.

/** On the screen. Nothing to be pressed is lower than 56 px. */
export const FILLING = `
[hidden] { display: none !important; }
body.filling { padding-bottom: 11rem; }
button, summary { min-height: 56px; padding: .4rem 1.1rem; font: inherit; font-weight: 600; color: var(--ink); background: var(--soft); border: 2px solid var(--ink); border-radius: .4rem; cursor: pointer; }
:is(#bar > .main, .is-next > .main, .is-next + .reading .main, .round .main) { color: var(--ground); background: var(--next); border-color: var(--next); }
button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
button[aria-pressed="true"] { color: var(--ground); background: var(--ink); }
.filling .tick { min-height: 60px; }
.filling .tick input { width: 52px; height: 52px; }
.filling .field input, .filling .entry input { min-height: 56px; }
.filling .small { padding-inline-end: .9rem; }
.step { scroll-margin-block: 1rem 11rem; }
.step.is-next { border-color: var(--next); border-width: 3px; border-inline-start-width: 12px; background: var(--next-ground); }
.step.is-done { border-inline-start-color: var(--good); }
.step.is-left-out { border-style: dotted; color: var(--quiet); }
.state { display: block; max-width: 3.4rem; font-size: .8rem; line-height: 1.2; font-weight: 700; color: var(--quiet); }
.is-next > * > .state { color: var(--next); }
.is-done > * > .state { color: var(--good); }
.tick.is-next input { border: 4px solid var(--next); }
.tick.is-next .text { font-weight: 700; }
.tick.is-bad input:checked { border-color: var(--bad); }
.tick.is-bad input:checked::before { background: var(--bad); clip-path: polygon(15% 0, 50% 35%, 85% 0, 100% 15%, 65% 50%, 100% 85%, 85% 100%, 50% 65%, 15% 100%, 0 85%, 35% 50%, 0 15%); }
.tick.is-left-out { color: var(--quiet); text-decoration: line-through; }
.field.is-next input { border: 3px solid var(--next); }
.sign.is-next { outline: 3px solid var(--next); outline-offset: 3px; }
.hold .sign.is-next { background: var(--ground); padding: .5rem; }
#people { border: 2px solid var(--rule); padding: .5rem .8rem .7rem; margin: .6rem 0; }
#people:empty { display: none; }
#people.is-next { border-color: var(--next); border-width: 3px; background: var(--next-ground); }
.option { display: flex; flex-wrap: wrap; gap: .5rem .75rem; align-items: center; margin: .5rem 0; padding: .3rem; }
.option .text { flex: 1 1 12rem; }
.option .text::first-letter { text-transform: uppercase; }
.option.is-next { outline: 3px solid var(--next); }
.choices, .reading, .units { display: flex; flex-wrap: wrap; gap: .5rem .75rem; align-items: center; margin: .35rem 0; }
.units { gap: 0; margin: 0; }
.units button { border-radius: 0; min-width: 4.5rem; }
.units button + button { border-inline-start: 0; }
.told { font-weight: 600; margin: .2rem 0; }
.told.bad { color: var(--bad); background: var(--bad-ground); border: 2px solid var(--bad); padding: .25rem .6rem; }
.earlier { font-size: .92rem; color: var(--quiet); }
.computed { font-weight: 700; border-inline-start: 4px solid var(--next); padding-inline-start: .6rem; }
.computed:empty, .told:empty, .earlier:empty { display: none; }
.filling .failing:not(.is-open) { color: var(--quiet); font-size: .95rem; }
.filling .failing:not(.is-open) :is(.step, .tick, .choices, .reading, .sign, .hold) { border-color: var(--rule); }
.failing.is-open { border-inline-start: 6px solid var(--bad); background: var(--bad-ground); padding-block: .3rem; }
.places .turn circle { stroke: var(--next); stroke-width: 5; }
.places .turn { cursor: pointer; }
.places .turned circle { fill: currentColor !important; }
.places .turned text:first-of-type { fill: Canvas; }
.picture { margin: .5rem 0; }
.picture img { display: block; max-width: 100%; max-height: 24rem; background: #fff; }
#bar { position: fixed; inset-inline: 0; inset-block-end: 0; z-index: 3; display: flex; flex-wrap: wrap; gap: .5rem .75rem; align-items: center; justify-content: center; padding: .5rem .75rem; background: var(--soft); border-block-start: 2px solid var(--ink); }
.timer { display: flex; flex-wrap: wrap; gap: .5rem .75rem; align-items: center; margin: .35rem 0; font-variant-numeric: tabular-nums; }
.running { display: flex; flex-wrap: wrap; flex-basis: 100%; gap: .2rem 1.2rem; justify-content: center; margin: 0; font-weight: 700; font-variant-numeric: tabular-nums; }
.running .bad { color: var(--bad); }
.progress { font-variant-numeric: tabular-nums; font-weight: 600; }
.more summary { display: flex; align-items: center; list-style: none; }
.more > div { position: absolute; inset-block-end: calc(100% + .5rem); inset-inline: 0; display: grid; gap: .5rem; width: 18rem; max-width: 94vw; margin: 0 auto; padding: .75rem; background: var(--ground); border: 2px solid var(--ink); }
#say { position: fixed; inset-inline: 0; inset-block-end: calc(5.2rem + var(--running, 0px)); z-index: 2; width: fit-content; max-width: min(56rem, 94vw); margin: 0 auto; padding: .7rem 1rem; font-weight: 600; color: var(--ground); background: var(--ink); border-radius: .4rem; }
#say:empty { display: none; }
@media (max-width: 34rem) {
  body { padding: .6rem; }
  .step, .step.deep { padding: .3rem .6rem; }
  .step > :is(h3, h4, h5, h6) { position: static; display: flex; gap: .6rem; align-items: baseline; }
  .state { max-width: none; }
  .step > .hold, .step.deep > .hold { margin-inline: 0; }
  .entry { flex-basis: 100%; }
  .rounds { width: 100%; }
  .tick ~ .circle { margin-inline-start: 0; }
  #bar { gap: .4rem; padding: .4rem; }
  #bar > button, .more summary { padding-inline: .7rem; }
  .progress { flex-basis: 100%; text-align: center; }
  #say { inset-block-end: calc(7rem + var(--running, 0px)); }
}
`;

/** On paper what is filled in stands there, and nothing to be pressed; who has not signed yet signs by hand. */
export const FILLING_PRINT = `@media screen { .filling .pen { display: none; } }
@media print {
  #say, #people, .choices, button, .more, .typed, .units, .timer:not(:has(.bad)), .running { display: none !important; }
  .option .choice { display: inline-block !important; min-height: 0; padding: 0 .6rem; border-width: 1px; background: none; color: inherit; }
  .option .choice[aria-pressed="true"] { border-width: 3px; }
  #bar { position: static; padding: 0; border: 0; background: none; justify-content: start; }
  body.filling { padding-bottom: 0; }
  .filling .tick { min-height: 0; }
  .filling .tick input { width: 6mm; height: 6mm; }
  .filling .field input, .filling .entry input { min-height: 7mm; }
  .step.is-next { border-width: 1px; border-inline-start-width: 6px; border-color: var(--rule); background: none; }
  .picture { break-inside: avoid; }
  .picture img { max-height: 9cm; }
  .told, .told.bad { font-weight: 600; border: 0; padding: 0; background: none; color: #111; }
  .state { display: none; }
  .sign.is-next, .tick.is-next input, .field.is-next input { outline: 0; border-width: 1px; }
}
`;
