// Makes one tree of elements like another and touches only what differs, so that a page of a thousand steps is not laid out anew
// for a letter. Knows no output.

/** @param next is taken apart */
export function merge(old: Element, next: Element): void {
  const [was, is] = [[...old.childNodes], [...next.childNodes]];
  const same = (a: number, b: number): boolean => was[a]?.isEqualNode(is[b] ?? null) === true;
  let start = 0;
  while (start < Math.min(was.length, is.length) && same(start, start)) start++;
  let end = 0;
  while (end < Math.min(was.length, is.length) - start && same(was.length - 1 - end, is.length - 1 - end)) end++;
  const left = was.slice(start, was.length - end);
  const wanted = is.slice(start, is.length - end);
  if (left.length === wanted.length)
    wanted.forEach((node, at) => {
      mergeOne(left[at] as ChildNode, node);
    });
  else {
    const behind = was[was.length - end] ?? null;
    for (const node of left) node.remove();
    for (const node of wanted) old.insertBefore(node, behind);
  }
}

function mergeOne(old: ChildNode, next: ChildNode): void {
  if (old.isEqualNode(next)) return;
  if (!(old instanceof Element) || !(next instanceof Element) || old.tagName !== next.tagName) {
    old.replaceWith(next);
    return;
  }
  for (const { name } of [...old.attributes]) if (!next.hasAttribute(name)) old.removeAttribute(name);
  for (const { name, value } of next.attributes)
    if (old.getAttribute(name) !== value) {
      if (name !== "style") old.setAttribute(name, value);
      else if (old instanceof HTMLElement || old instanceof SVGElement) old.style.cssText = value;
    }
  merge(old, next);
}
