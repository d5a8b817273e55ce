// The card in which another color is tried for a fabric: a plane of all colors of the same value, a ladder of the same hue, the
// layout's other fabrics, and a field. The picture follows at once, what is worked out of it as soon as the hand rests. It is
// taken away by a new save, and keeps nothing.

import { ask } from './transport.js';
import { byId, make, swatch } from './dom.js';
import { copyText } from './copy.js';
import { lchOf, rgbAt, hexAt, reach, grayOf } from './lab.js';

export const rungs = [12, 22, 32, 42, 52, 62, 72, 82, 92]; // values of the ladder
const rest = 120; // milliseconds until a color counts as chosen
const planeSize = { width: 90, height: 32 }; // pixels, of 4 degrees of hue

export class ColorCard {
  // paint gets a fabric's number and how it is to look; choose is called when the hand rests, and a color is to be studied;
  // onClose gets the fabric's number and a word on why, '' for the reader's own wish; isolate shows where a fabric is; onWrite gets
  // a fabric's name and color that are to be written; onCut gets the number of a fabric whose print is to be cut.
  constructor({ model, paint, choose, onClose, isolate, onWrite, onCut }) {
    Object.assign(this, { model, paint, choose, onClose, isolate, onWrite, onCut });
    this.fabric = -1;
    this.lines = []; // of the layout in the color that is tried
    this.build();
  }

  get isOpen() { return this.fabric >= 0; }

  // tried is the color that is tried, as requests name it: '' for none.
  get tried() { return this.isOpen && this.hex !== this.own.colour ? `${this.fabric}-${this.hex.slice(1)}` : ''; }

  build() {
    const card = this.card = byId('color-card');
    const button = (text, attributes, press) => {
      const b = make('button', text, attributes);
      b.addEventListener('click', press);
      return b;
    };
    const head = make('header');
    this.before = swatch('#000');
    this.after = swatch('#000');
    this.name = make('h2');
    this.values = make('p', '', { class: 'values' });
    head.append(this.before, this.after, this.name, this.values, button('×', { 'aria-label': 'Back to the color of the layout', title: 'Back to the color of the layout (Esc)', class: 'close' }, () => this.close()));
    this.plane = make('div', undefined, { class: 'plane', role: 'slider', tabindex: '0', 'aria-label': 'Hue and strength at the same value: arrow keys', 'aria-valuemin': '0', 'aria-valuemax': '359' });
    this.canvas = make('canvas', undefined, { width: planeSize.width, height: planeSize.height, 'aria-hidden': 'true' });
    this.mark = make('i', undefined, { 'aria-hidden': 'true' });
    this.plane.append(this.canvas, this.mark);
    this.ladder = make('div', undefined, { class: 'ladder', role: 'group', 'aria-label': 'The same hue, from dark to light' });
    this.rungs = rungs.map((l) => button('', { title: `value ${l}`, 'aria-label': `value ${l}` }, () => this.set(hexAt(l, this.c, this.h), true)));
    this.ladder.append(...this.rungs);
    this.field = make('input', undefined, { type: 'text', 'aria-label': 'Color, # and six digits', maxlength: '7', spellcheck: 'false', autocomplete: 'off', size: '8' });
    this.others = make('div', undefined, { class: 'others', role: 'group', 'aria-label': 'Colors of the layout’s fabrics' });
    this.where = button('Where it is', { 'aria-pressed': 'false', title: 'Dim all other fabrics' }, () => this.isolate(this.fabric));
    this.line = make('code', '', { title: 'The fabric’s line of the layout with this color' });
    this.buttons = make('div', undefined, { class: 'buttons' });
    this.copy = button('Copy line', { title: 'Copy the fabric’s line with this color' }, () => this.copyLine());
    this.write = button('Save color', { title: 'Save this color in the layout', class: 'main', hidden: '' }, () => this.onWrite(this.own.name, this.hex));
    this.cut = button('Fussy cut', { title: 'Choose the place of the print that pieces are cut from' }, () => this.onCut(this.fabric));
    this.buttons.append(this.where, this.cut, this.copy, this.write);
    const side = make('div', undefined, { class: 'side' }), field = make('label', 'Color ');
    field.append(this.field);
    side.append(field, this.others);
    const foot = make('footer');
    foot.append(this.line, this.buttons);
    card.append(head, this.plane, this.ladder, side, foot);
    this.listen();
  }

  listen() {
    const at = (e) => {
      const { left, top, width, height } = this.plane.getBoundingClientRect();
      const inside = (v) => Math.min(1, Math.max(0, v));
      this.aim(Math.min(359.9, inside((e.clientX - left) / width) * 360), 1 - inside((e.clientY - top) / height));
    };
    this.plane.addEventListener('pointerdown', (e) => { if (e.button === 0) { this.plane.setPointerCapture(e.pointerId); at(e); } });
    this.plane.addEventListener('pointermove', (e) => { if (this.plane.hasPointerCapture(e.pointerId)) at(e); });
    this.plane.addEventListener('keydown', (e) => {
      const by = { ArrowLeft: [-4, 0], ArrowRight: [4, 0], ArrowUp: [0, 0.05], ArrowDown: [0, -0.05] }[e.key];
      if (!by) return;
      e.preventDefault();
      e.stopPropagation();
      this.aim((this.h + by[0] + 360) % 360, Math.min(1, Math.max(0, this.strength + by[1])));
    });
    this.field.addEventListener('input', () => { if (/^#?[0-9a-f]{6}$/i.test(this.field.value)) this.set(`#${this.field.value.slice(-6).toLowerCase()}`, true); });
    this.field.addEventListener('change', () => { this.field.value = this.hex; });
    this.card.addEventListener('keydown', (e) => { if (e.key === 'Escape') { e.stopPropagation(); this.close(); } });
  }

  open(fabric) {
    if (this.isOpen) this.close();
    this.fabric = fabric;
    this.own = this.model.fabrics[fabric];
    this.name.textContent = this.own.name;
    this.cut.hidden = !this.own.patterned;
    this.before.style.setProperty('--fabric', this.own.colour);
    this.lines = [];
    this.line.textContent = '';
    byId('note').hidden = true; // it would lie over the card
    this.others.replaceChildren(...this.otherColors());
    this.card.hidden = false;
    this.set(this.own.colour, true);
    this.plane.focus({ preventScroll: true });
  }

  // otherColors are buttons of the colors of the layout's fabrics, those of its palettes too, from dark to light.
  otherColors() {
    const seen = new Map();
    for (const f of this.model.fabrics) if (!seen.has(f.colour)) seen.set(f.colour, f);
    return [...seen.values()].sort((a, b) => a.value - b.value).map((f) => {
      const b = make('button', undefined, { title: `${f.name}, value ${f.value.toFixed(0)}`, 'aria-label': f.name });
      b.append(swatch(f.colour));
      b.addEventListener('click', () => this.set(f.colour, true));
      return b;
    });
  }

  // close gives the fabric its own color again.
  close(why = '') {
    if (!this.isOpen) return;
    const { fabric } = this, hadFocus = this.card.contains(document.activeElement);
    clearTimeout(this.timer);
    this.asked?.abort();
    const tried = this.tried;
    this.fabric = -1;
    this.card.hidden = true;
    if (tried) this.paint(fabric, this.own);
    this.onClose(fabric, why, { tried, hadFocus });
  }

  // aim takes the color of the same value at a hue, and at a strength from 0, gray, to 1, the strongest.
  aim(hue, strength) {
    this.h = hue;
    this.strength = strength;
    this.c = reach(this.l, hue) * strength;
    this.set(hexAt(this.l, this.c, hue), false);
  }

  // set tries a color; anew says that hue and value come from it.
  set(hex, anew) {
    this.hex = hex;
    if (anew) this.take(hex);
    const gray = grayOf(hex), value = lchOf(hex).l;
    this.paint(this.fabric, hex === this.own.colour ? this.own : { ...this.own, colour: hex, grey: gray, value });
    this.show(value);
    this.copy.disabled = this.write.disabled = true;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.settle(), rest);
  }

  take(hex) {
    const { l, c, h } = lchOf(hex), most = reach(l, c < 0.5 ? this.h ?? 0 : h);
    this.l = l;
    if (c >= 0.5) this.h = h; // a gray has no hue, and keeps the last one
    this.h ??= 0;
    this.c = c;
    this.strength = most > 0.5 ? Math.min(1, c / most) : 0;
    this.paintPlane();
  }

  show(value) {
    this.after.style.setProperty('--fabric', this.hex);
    if (document.activeElement !== this.field) this.field.value = this.hex;
    const before = this.own.value.toFixed(0), now = value.toFixed(0);
    this.values.textContent = before === now ? `value ${now}` : `value ${before} → ${now}`;
    this.mark.style.left = `${this.h / 3.6}%`;
    this.mark.style.top = `${(1 - this.strength) * 100}%`;
    this.plane.setAttribute('aria-valuenow', String(Math.round(this.h)));
    this.plane.setAttribute('aria-valuetext', `hue ${Math.round(this.h)} degrees, strength ${Math.round(this.strength * 100)} percent, ${this.hex}`);
    rungs.forEach((l, i) => {
      this.rungs[i].style.setProperty('--fabric', hexAt(l, this.c, this.h));
      this.rungs[i].setAttribute('aria-pressed', String(Math.abs(l - value) < 1));
    });
  }

  // paintPlane paints all colors of the value, hues from left to right, the strongest above.
  paintPlane() {
    const { width, height } = planeSize, image = new ImageData(width, height);
    for (let x = 0; x < width; x++) {
      const hue = x / width * 360, most = reach(this.l, hue);
      for (let y = 0; y < height; y++) {
        image.data.set([...rgbAt(this.l, most * (1 - y / (height - 1)), hue), 255], (y * width + x) * 4);
      }
    }
    this.canvas.getContext('2d').putImageData(image, 0, 0);
  }

  // settle asks what the color comes to, once the hand rests.
  async settle() {
    this.asked?.abort();
    const { fabric, hex } = this, asked = this.asked = new AbortController();
    this.choose();
    try {
      const response = await ask(`color?instance=${this.model.instance}&picture=${this.model.revision}&try=${fabric}-${hex.slice(1)}${this.model.query}`, { signal: asked.signal });
      if (!response.ok || this.fabric !== fabric || this.hex !== hex) return;
      const { seen, lines } = await response.json();
      if (this.fabric !== fabric || this.hex !== hex) return;
      this.paint(fabric, { ...this.model.fabrics[fabric], seen });
      this.lines = lines;
      this.line.textContent = lines.map((l) => l.text).join('\n');
      this.copy.disabled = lines.length === 0;
      this.write.disabled = lines.length === 0 || hex === this.own.colour;
    } catch (e) {
      if (e.name !== 'AbortError' && !(e instanceof TypeError)) throw e;
    }
  }

  copyLine() { copyText(this.lines.map((l) => l.text).join('\n'), 'Line'); }

  // mayWrite shows or takes away the button that writes the line.
  mayWrite(on) { this.write.hidden = !on; }
}
