// The diagram beneath the rows of a report: an SVG picture that the program has drawn. What
// is pointed at in it is highlighted in the quilt.

import { byId } from './dom.js';

const allowedElements = new Set(['svg', 'g', 'path', 'circle', 'text', 'tspan']);

export class DiagramBox {
  // highlight gets what is to be highlighted, null for what is without the diagram.
  constructor({ highlight, close }) {
    this.highlight = highlight;
    this.shown = null;
    const content = byId('diagram-content');
    content.addEventListener('pointerover', (e) => this.hover(e));
    content.addEventListener('pointerleave', () => this.hover(null));
    byId('diagram-close').addEventListener('click', close);
  }

  // setOpen makes room for a diagram, or takes it away.
  setOpen(on) {
    byId('diagram').hidden = !on;
    document.documentElement.classList.toggle('diagram-open', on);
    if (!on) this.show(null);
  }

  // show shows a diagram as the program sends it, null for nothing yet.
  show(diagram) {
    if (this.hovered) this.hover(null);
    this.shown = diagram;
    const svg = diagram && sanitized(diagram.svg);
    byId('diagram').classList.toggle('stale', !svg);
    if (svg) byId('diagram-content').replaceChildren(svg);
  }

  hover(e) {
    const mark = e?.target.closest('[data-lit]');
    this.hovered = mark !== null && mark !== undefined;
    this.highlight(this.shown?.highlights?.[this.shown.marks[mark?.dataset.lit]] ?? null);
  }
}

// sanitized is a picture of outlines and words, whatever else the text holds.
function sanitized(text) {
  const svg = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  if (svg.localName !== 'svg') return null;
  const name = svg.querySelector('title')?.textContent ?? '', description = svg.querySelector('desc')?.textContent ?? '';
  for (const e of svg.querySelectorAll('*')) {
    if (!allowedElements.has(e.localName)) e.remove();
    for (const { name: attribute } of [...e.attributes]) if (/^on|href|^style$/i.test(attribute)) e.removeAttribute(attribute);
  }
  for (const size of ['width', 'height']) svg.removeAttribute(size);
  svg.setAttribute('aria-label', [name, description].filter(Boolean).join(': '));
  return document.importNode(svg, true);
}
