// How the preview's bar looks, in the editor's colours, and what the page adds to the output, in the output's own colours.

export const barStyle = `
:host { display: block; font: 13px/1.4 var(--vscode-font-family, sans-serif); color: var(--vscode-foreground); background: var(--vscode-editor-background); border-bottom: 1px solid var(--vscode-panel-border, #8888); padding: 6px 10px; }
form { display: flex; flex-wrap: wrap; gap: 6px 14px; align-items: center; margin: 0; }
label { display: inline-flex; gap: 5px; align-items: center; max-width: 100%; }
[hidden] { display: none; }
select, button { font: inherit; min-height: 24px; min-width: 0; color: var(--vscode-dropdown-foreground, inherit); background: var(--vscode-dropdown-background, Field); border: 1px solid var(--vscode-dropdown-border, currentColor); border-radius: 2px; }
button { padding: 1px 10px; color: var(--vscode-button-foreground, inherit); background: var(--vscode-button-background, ButtonFace); border-color: var(--vscode-button-border, transparent); cursor: pointer; }
button:hover { background: var(--vscode-button-hoverBackground, ButtonFace); }
:focus-visible { outline: 1px solid var(--vscode-focusBorder, Highlight); outline-offset: 1px; }
/* Two choices to a line also beside a narrow text, in any language. */
@media (max-width: 35rem) {
  form { display: grid; grid-template-columns: 1fr 1fr; align-items: end; }
  label { flex-direction: column; align-items: stretch; gap: 1px; min-width: 0; }
  select { width: 100%; text-overflow: ellipsis; }
  details[open] { grid-column: 1 / -1; }
  button { justify-self: start; }
}
summary { cursor: pointer; }
#options { display: flex; flex-wrap: wrap; gap: 6px 14px; padding: 4px 0; }
p:empty { display: none; }
p { margin: 4px 0 0; padding: 2px 6px; color: var(--vscode-inputValidation-warningForeground, var(--vscode-foreground)); background: var(--vscode-inputValidation-warningBackground, transparent); border: 1px solid var(--vscode-inputValidation-warningBorder, currentColor); }
`;

export const sheetStyle = `
html { overflow-anchor: none; background: var(--ground, #fff); padding: 0; }
body { max-width: none; padding: 0; background: none; }
#preview-bar { position: sticky; top: 0; inset-inline: 0; z-index: 2; }
#preview-sheet { max-width: 60rem; margin: 0 auto; padding: .5rem 1rem 40vh; color: var(--ink, #111); }
.picture #preview-sheet { max-width: none; }
/* The diagram itself has the colours of paper only. */
html[data-theme=dark]:has(svg.order) { --ground: #16181c; --soft: #2a2d33; --ink: #eee; --link: #8ab4f8; }
html[data-theme=dark] #preview-sheet:has(svg.order) dt { color: inherit; }
html[data-theme=dark] svg.order { background: none; color: #eee; }
html[data-theme=dark] svg.order :where(rect, path.box) { fill: #1f2228; stroke: #b9bec8; }
html[data-theme=dark] svg.order .frame { fill: #ffffff0d; stroke: #8a909b; }
html[data-theme=dark] svg.order text { fill: #eee; }
html[data-theme=dark] svg.order .heading rect { fill: none; stroke: none; }
html[data-theme=dark] svg.order .hold rect { fill: #e8eaee; }
html[data-theme=dark] svg.order .hold text { fill: #111; }
html[data-theme=dark] svg.order .stop rect { stroke: #ff8f8f; }
html[data-theme=dark] svg.order .way { stroke: #b9bec8; }
html[data-theme=dark] svg.order .back { stroke: #ff8f8f; }
html[data-theme=dark] svg.order .label text { stroke: #16181c; }
html[data-theme=dark] svg.order .draft { fill: #ff8f8f; }
html[data-theme=dark] svg.order marker path { fill: #b9bec8; }
html[data-theme=dark] .key i { border-color: #b9bec8; }
html[data-theme=dark] .key .hold { background: #e8eaee; }
html[data-theme=dark] .key .back { border-color: #ff8f8f; }
#preview-sheet.stale { filter: grayscale(1); background: var(--soft, #e6e6e6); }
#preview-sheet :is(.step, [data-step]) { cursor: pointer; }
#preview-sheet :is(input, select, textarea, button):disabled { opacity: 1; color: inherit; }
#preview-sheet .step.at-cursor { outline: 3px solid var(--link, #0a3d91); outline-offset: 2px; }
#preview-sheet [data-step].at-cursor { outline: 3px solid var(--link, #0a3d91); outline-offset: 3px; }
#preview-sheet [tabindex]:focus-visible { outline: 3px solid var(--link, #0a3d91); outline-offset: 2px; }
`;
