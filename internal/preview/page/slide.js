// The line between two views in one picture: what lies to its right is seen in the second view.

import { byId } from './dom.js';

const step = 2; // percent

export class Slide {
  // onChange gets where the line stands, in percent of the picture's breadth, and whether it has come to rest.
  constructor(onChange) {
    this.onChange = onChange;
    const line = this.line = byId('split');
    line.addEventListener('pointerdown', (e) => { line.setPointerCapture(e.pointerId); this.drag(e); });
    line.addEventListener('pointermove', (e) => { if (line.hasPointerCapture(e.pointerId)) this.drag(e); });
    line.addEventListener('pointerup', () => this.onChange(this.at, true));
    line.addEventListener('keydown', (e) => this.key(e));
  }

  drag(e) {
    const { left, width } = byId('panes').getBoundingClientRect();
    this.move((e.clientX - left) / width * 100, false);
  }

  key(e) {
    const to = { ArrowLeft: this.at - step, ArrowDown: this.at - step, ArrowRight: this.at + step, ArrowUp: this.at + step,
      PageDown: this.at - 5 * step, PageUp: this.at + 5 * step, Home: 0, End: 100 }[e.key];
    if (to === undefined) return;
    this.move(to, true);
    e.preventDefault();
    e.stopPropagation();
  }

  move(to, atRest) {
    this.at = Math.max(0, Math.min(100, to));
    this.onChange(this.at, atRest);
  }

  // show shows the line with the names of the two views beside it, or takes it away.
  show(on, at, left, right) {
    this.at = at;
    this.line.hidden = !on;
    this.line.setAttribute('aria-valuenow', String(Math.round(at)));
    this.line.setAttribute('aria-valuetext', `${left} to the left of ${Math.round(at)}%, ${right} to the right`);
    byId('panes').parentElement.style.setProperty('--split', `${at}%`);
  }
}
