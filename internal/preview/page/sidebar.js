// The words beside the picture: the patch that is pointed at, the fabrics, the keys.

import { byId, make, say, swatch } from './dom.js';
import { lineActions, fetchLine } from './line.js';

// showPatch shows the facts of a patch beside a place of the picture; null takes them away. Offer is one more button, as { text, press }.
export function showPatch(facts, pinned, place, offer) {
  const box = byId('patch');
  box.hidden = !facts;
  box.classList.toggle('pinned', pinned);
  if (!facts) {
    box.replaceChildren();
    return;
  }
  const list = make('dl');
  const row = (term, ...content) => {
    const d = make('dd');
    d.append(...content);
    list.append(make('dt', term), d);
    return d;
  };
  const title = make('h2', facts.shape);
  if (pinned) title.append(make('span', 'held', { class: 'held' }));
  for (const f of facts.fabrics) {
    const d = row(facts.fabrics.length > 1 ? 'strip' : 'fabric', swatch(f.colour), f.name + (f.print ? `, ${f.print}` : ''), make('span', ` value ${f.value.toFixed(0)}`, { class: 'value' }));
    d.className = 'wide';
  }
  row('role', facts.role);
  row('finished', facts.finished);
  row('cut', facts.cut);
  if (facts.block) row('block', facts.block);
  row('place', facts.place);
  const lines = row('layout', facts.row && facts.row !== facts.line ? `line ${facts.line}, grid line ${facts.row}` : `line ${facts.line}`);
  lines.className = 'wide';
  box.replaceChildren(title, list);
  if (pinned && facts.line) box.append(lineActions(facts.line, () => fetchLine(facts.line), `Copy line ${facts.line}`, `Line ${facts.line}`));
  if (offer) {
    const button = make('button', offer.text);
    button.addEventListener('click', offer.press);
    box.querySelector('.line-actions')?.append(button);
  }
  const { clientWidth: w, clientHeight: h } = box.parentElement, { offsetWidth, offsetHeight } = box;
  const right = place.x + place.reach + offsetWidth < w - place.right;
  box.style.left = `${Math.max(4, Math.min(w - offsetWidth - 4, right ? place.x + place.reach : place.x - place.reach - offsetWidth))}px`;
  box.style.top = `${Math.max(4, Math.min(h - offsetHeight - 4, place.y))}px`;
}

// spokenFacts is the same in one sentence.
export function spokenFacts(facts) {
  const fabrics = facts.fabrics.map((f) => `${f.name}, value ${f.value.toFixed(0)}`).join('; ');
  return `${facts.shape}, ${fabrics}, ${facts.role}, ${facts.place}, finished ${facts.finished}, line ${facts.line}`;
}

// showFabrics lists the fabrics from dark to light, each as wide as its share of the top. onChoose gets the one that was
// clicked, onPoint the one that the pointer rests on, -1 for none; chosen is the one whose card is open.
export function showFabrics(fabrics, chosen, onChoose, onPoint) {
  const order = fabrics.map((f, i) => ({ ...f, i })).filter((f) => f.share > 0).sort((a, b) => a.value - b.value || a.i - b.i);
  const list = byId('fabrics');
  while (list.children.length > order.length) list.lastElementChild.remove();
  while (list.children.length < order.length) list.append(fabricRow(onChoose, onPoint));
  order.forEach((f, k) => {
    const facts = [f.name, f.print, `value ${f.value.toFixed(0)}`, `${f.share.toFixed(1)}% of the top`, `line ${f.line}`].filter(Boolean).join(', ');
    const item = list.children[k], button = item.firstElementChild;
    item.style.setProperty('--share', f.share.toFixed(2));
    button.setAttribute('aria-pressed', String(f.i === chosen));
    button.dataset.fabric = f.i;
    button.title = `${facts}: try another color`;
    say(button.querySelector('.name'), f.name);
    paintFabric(f.i, f);
  });
}

// fabricRow is a row of the list for whatever fabric it tells.
function fabricRow(onChoose, onPoint) {
  const item = make('li'), button = make('button'), fabric = () => Number(button.dataset.fabric);
  button.append(swatch('', ''), make('span', '', { class: 'name' }));
  button.addEventListener('click', () => onChoose(fabric()));
  button.addEventListener('pointerenter', (e) => { if (e.pointerType === 'mouse') onPoint(fabric()); });
  button.addEventListener('pointerleave', () => onPoint(-1));
  item.append(button);
  return item;
}

// paintFabric shows a fabric of the list in another color, where it stands.
export function paintFabric(i, { colour, grey }) {
  const style = byId('fabrics').querySelector(`[data-fabric="${i}"] .swatch`)?.style;
  style?.setProperty('--fabric', colour);
  style?.setProperty('--gray', grey);
}

// fabricButton is the button of a fabric in the list, null for one that is not listed.
export const fabricButton = (i) => byId('fabrics').querySelector(`[data-fabric="${i}"]`);

const keys = {
  Views: [
    ['C V L', 'color, value, line'], ['U A', 'squint, vanishing seams'], ['P D T', 'for color-blind viewers: protan, deutan, tritan'],
    ['S', 'seam lines'], ['G', 'prints and stripes'], ['O', 'the next colorway'], ['Z', 'the next size'],
  ],
  Compare: [
    ['B', 'two views'], ['M', 'drag to compare; ← → move the line'], ['Shift', 'with a view’s key, or O: the second view'],
    ['N', 'flash what the last save changed'],
  ],
  'The quilt': [
    ['+ −', 'zoom at the pointer'], ['W', 'the whole quilt'], ['X', 'full screen'], ['← ↑ → ↓', 'from patch to patch; with Shift, move the quilt'],
    ['Enter', 'hold the patch'], ['Esc', 'let go'],
  ],
  Panels: [
    ['R', 'reports: ↑ ↓ rows, ← → tabs, Enter holds a row'], ['E', 'type the layout'], ['F', 'fold errors and warnings'], ['[ ]', 'fussy cut: turn the piece; with Shift, by 1 degree'], ['K', 'these keys'],
  ],
};

// showKeys shows what the keys do, or hides it; mayType says whether the layout can be typed.
export function showKeys(on, mayType) {
  const box = byId('keys');
  box.hidden = !on;
  if (!on) return;
  const groups = Object.entries(keys).map(([title, rows]) => {
    const group = make('section'), list = make('dl');
    for (const [names, effect] of rows.filter(([names]) => names !== 'E' || mayType)) {
      const term = make('dt');
      term.append(...names.split(' ').map((name) => make('kbd', name)));
      list.append(term, make('dd', effect));
    }
    group.append(make('h2', title), list);
    return group;
  });
  box.replaceChildren(make('button', '×', { class: 'close', 'data-action': 'keys', 'aria-label': 'Close the list of keys', title: 'Close (K or Esc)' }), ...groups);
}
