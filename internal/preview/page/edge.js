// The edge of the reports: the hand sets how wide the panel beside the picture is, and how high the sheet that takes its
// place in narrow windows. Neither moves the picture, which they lie over.

import { byId } from './dom.js';

const narrow = matchMedia('(max-width: 60rem)'); // as in page.css
const leastWidth = 280, leastHeight = 96; // pixels; a sheet pulled lower than this is closed
const keyStep = 20; // pixels

export class Edge {
  // sizes are { panel, sheet }: a width in pixels and a share of the window's height in percent, 0 for what the page takes by
  // itself. onChange is called when one was set, close when the sheet was pulled down.
  constructor(sizes, { onChange, close }) {
    Object.assign(this, { sizes, onChange, close });
    const edge = this.edge = byId('edge');
    this.aside = edge.parentElement;
    edge.addEventListener('pointerdown', (e) => { edge.setPointerCapture(e.pointerId); this.moved = false; });
    edge.addEventListener('pointermove', (e) => { if (edge.hasPointerCapture(e.pointerId)) this.drag(e); });
    edge.addEventListener('pointerup', () => this.release());
    edge.addEventListener('keydown', (e) => this.key(e));
    narrow.addEventListener('change', () => this.show());
    this.show();
  }

  drag(e) {
    const { right, bottom } = this.aside.getBoundingClientRect();
    this.moved = true;
    if (narrow.matches) this.setSheet(bottom - e.clientY);
    else this.setPanel(right - e.clientX);
  }

  // release closes a sheet that was pulled down, and raises or lowers one that was tapped.
  release() {
    const tall = this.aside.clientHeight > innerHeight * 0.6;
    if (narrow.matches && !this.moved) this.setSheet(innerHeight * (tall ? 0.45 : 0.75));
    if (narrow.matches && this.aside.clientHeight < leastHeight) {
      this.sizes.sheet = 0;
      this.show();
      this.close();
    }
    this.onChange();
  }

  key(e) {
    const by = (narrow.matches ? { ArrowUp: keyStep, ArrowDown: -keyStep } : { ArrowLeft: keyStep, ArrowRight: -keyStep })[e.key];
    if (!by) return;
    if (narrow.matches) this.setSheet(Math.max(leastHeight, this.aside.clientHeight + by));
    else this.setPanel(this.aside.clientWidth + by);
    this.onChange();
    e.preventDefault();
    e.stopPropagation();
  }

  setPanel(width) {
    this.sizes.panel = Math.round(Math.max(leastWidth, Math.min(width, innerWidth * 0.6)));
    this.show();
  }

  setSheet(height) {
    this.sizes.sheet = Math.round(Math.max(0, Math.min(height / innerHeight, 0.85)) * 1000) / 10;
    this.show();
  }

  show() {
    const set = (name, value) => { if (value) document.documentElement.style.setProperty(name, value); else document.documentElement.style.removeProperty(name); };
    set('--panel', this.sizes.panel && `${this.sizes.panel}px`);
    set('--sheet', this.sizes.sheet && `${this.sizes.sheet}vh`);
    this.edge.setAttribute('aria-orientation', narrow.matches ? 'horizontal' : 'vertical');
    this.edge.setAttribute('aria-label', narrow.matches ? 'Height of the reports' : 'Width of the reports');
    this.edge.setAttribute('aria-valuenow', String(Math.round(narrow.matches ? this.sizes.sheet || 50 : (this.sizes.panel || 450) / innerWidth * 100)));
  }

  // reserve is how much of the picture's breadth the reports take when they are open.
  get reserve() { return narrow.matches || document.fullscreenElement ? 0 : this.sizes.panel || Math.min(450, innerWidth * 0.6); }
}

// coverOf is how much of a box the reports lie over: from its right, and from below.
export function coverOf(box) {
  const aside = byId('edge').parentElement.getBoundingClientRect(), b = box.getBoundingClientRect();
  if (!aside.width) return { right: 0, bottom: 0 };
  if (narrow.matches) return { right: 0, bottom: Math.max(0, Math.round(b.bottom - aside.top)) };
  return { right: Math.max(0, Math.round(b.right - aside.left)), bottom: 0 };
}
