// The diagram beneath the rows of a report: an SVG picture that the program has drawn. What
// is pointed at in it lights up in the quilt.

import { byId } from './panel.js';

const allowed = new Set(['svg', 'g', 'path', 'circle', 'text', 'tspan']);

export class DiagramBox {
  // light is told what to light up, null for what is lit up without the diagram.
  constructor({ light, close }) {
    this.light = light;
    this.drawn = null;
    const sheet = byId('diagram-sheet');
    sheet.addEventListener('pointerover', (e) => this.point(e));
    sheet.addEventListener('pointerleave', () => this.point(null));
    byId('diagram-close').addEventListener('click', close);
  }

  // open makes room for a diagram, or takes it away.
  open(on) {
    byId('diagram').hidden = !on;
    document.documentElement.classList.toggle('drawing', on);
    if (!on) this.show(null);
  }

  // show shows what was drawn, null for nothing yet.
  show(drawn) {
    if (this.pointed) this.point(null);
    this.drawn = drawn;
    const svg = drawn && safe(drawn.svg);
    byId('diagram').classList.toggle('old', !svg);
    if (svg) byId('diagram-sheet').replaceChildren(svg);
  }

  point(e) {
    const mark = e?.target.closest('[data-lit]');
    this.pointed = mark !== null && mark !== undefined;
    this.light(this.drawn?.lit?.[this.drawn.by[mark?.dataset.lit]] ?? null);
  }
}

// safe is a picture of outlines and words, whatever else the text holds.
function safe(text) {
  const svg = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  if (svg.localName !== 'svg') return null;
  const name = svg.querySelector('title')?.textContent ?? '', says = svg.querySelector('desc')?.textContent ?? '';
  for (const e of svg.querySelectorAll('*')) {
    if (!allowed.has(e.localName)) e.remove();
    for (const { name: attribute } of [...e.attributes]) if (/^on|href|^style$/i.test(attribute)) e.removeAttribute(attribute);
  }
  for (const size of ['width', 'height']) svg.removeAttribute(size);
  svg.setAttribute('aria-label', [name, says].filter(Boolean).join(': '));
  return document.importNode(svg, true);
}
