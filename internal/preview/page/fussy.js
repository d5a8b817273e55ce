// The window in which a piece is cut from a print: its outline is dragged and turned over the print, and beside it stands the center that
// its like make. The line of the layout follows. What is saved elsewhere is taken over; a place that the hand chose stays.

import { byId, make } from './dom.js';
import { copyText } from './copy.js';
import { Resource } from './resource.js';
import { Print, Round, pointsOf } from './cloth.js';
import { Field, turnStep } from './field.js';

const smallSize = 64; // pixels of a center in the strip
const often = 80; // milliseconds from one question for the line to the next
const keys = ['across', 'down', 'pointing'];
const wrap = (v, length) => ((v % length) + length) % length;
const many = (n, name) => n === 1 ? name : `${n} ${name}s`;

export class FussyCut {
  // onClose gets the fabric's number, and whether the window had the focus; write gets what is to be written, and gives the reply.
  constructor({ model, write, onClose }) {
    Object.assign(this, { model, write, onClose });
    this.fabric = -1; // number
    this.name = ''; // of the fabric, as it is shown
    this.patch = ''; // that the window was opened for, as requests name it
    this.data = this.print = this.bitmap = this.list = null;
    this.motif = ''; // that is moved, '' for a new one
    this.shape = 0; // of those that are cut from it
    this.touched = false; // by the hand, since it was opened or written
    this.place = null; // across and down may lie beyond the repeat
    this.field = new Field({ move: (across, down) => this.put({ ...this.place, across, down }), turn: (pointing) => this.put({ ...this.place, pointing }) });
    this.ask();
    this.build();
  }

  // ask is what the program is asked.
  ask() {
    const { model } = this, wanted = () => this.isOpen, parse = (response) => response.json();
    this.resources = [
      new Resource(model, () => `fussy?fabric=${this.fabric}${this.patch}`, { wanted, parse, onChange: (data) => data && this.receive(data) }),
      new Resource(model, () => `cloth.png?fabric=${this.fabric}`, {
        wanted, parse: async (response) => createImageBitmap(await response.blob()),
        onChange: (bitmap) => bitmap && this.receivePrint(bitmap), discard: (bitmap) => bitmap.close(),
      }),
      new Resource(model, () => `centers?fabric=${this.fabric}`, { wanted, parse, onChange: (list) => list && this.receiveCenters(list) }),
    ];
    this.line = new Resource(model, () => `motif?${new URLSearchParams(this.request)}`, {
      wanted: () => this.isOpen && this.piece !== undefined && this.place !== null, parse, onChange: (moved) => moved && this.showLine(moved),
    });
  }

  get isOpen() { return this.fabric >= 0; }
  get own() { return this.data?.motifs.find((m) => m.name === this.motif); }
  get pieces() { return this.own?.pieces ?? this.data?.pieces ?? []; }
  get piece() { return this.pieces[this.shape] ?? this.pieces[0]; }

  // written is the place as the layout says it: within one repeat, on a mark of the ruler, and on the photo where there is no repeat.
  get written() {
    const { data, place, own } = this;
    if (own && own.across === place.across && own.down === place.down) return place;
    const on = (v, repeat, n) => {
      if (data.seen) return Math.min(Math.floor(data.seen[n] / data.mark) * data.mark, Math.max(0, Math.round(v / data.mark) * data.mark));
      const at = Math.round(wrap(v, repeat) / data.mark) * data.mark;
      return at >= repeat ? 0 : at;
    };
    return { across: on(place.across, data.across, 0), down: on(place.down, data.down, 1), pointing: place.pointing };
  }

  // request is what the program is told of the place.
  get request() {
    if (!this.data || !this.place) return {};
    return { motif: this.motif || this.data.name, of: this.data.fabric, ...this.written };
  }

  // ---- the window

  build() {
    this.box = byId('fussy');
    const button = (text, attributes, press) => {
      const b = make('button', text, attributes);
      b.addEventListener('click', press);
      return b;
    };
    const head = make('header');
    this.heading = make('h2', 'Fussy cut');
    this.label = make('label', 'Motif ');
    this.select = make('select');
    this.label.append(this.select);
    this.shapes = make('div', undefined, { class: 'segmented', role: 'group', 'aria-label': 'Piece', hidden: '' });
    head.append(this.heading, this.label, this.shapes, button('×', { 'aria-label': 'Close', title: 'Close (Esc)', class: 'close' }, () => this.close()));
    const side = make('div', undefined, { class: 'center' });
    this.center = make('canvas', undefined, { role: 'img' });
    this.caption = make('p');
    this.hint = make('p', '', { class: 'hint' });
    side.append(this.center, this.caption, this.hint);
    this.strip = make('div', undefined, { class: 'centers', role: 'group', 'aria-label': 'Places whose centers look unlike one another' });
    this.why = make('p', '', { class: 'why', hidden: '' });
    this.code = make('code', '', { title: 'The motif’s line of the layout' });
    const foot = make('footer'), buttons = make('div', undefined, { class: 'buttons' });
    this.copy = button('Copy line', { title: 'Copy the motif’s line' }, () => copyText(this.code.textContent, 'Line'));
    this.save = button('Write line', { class: 'main', title: 'Write this place into the layout', hidden: '' }, () => this.writeLine());
    const turns = [[-turnStep, '↺', 'left', '['], [turnStep, '↻', 'right', ']']].map(([by, sign, way, key]) => button(sign, {
      'aria-label': `Turn ${way} by ${turnStep} degrees`, title: `Turn ${way} by ${turnStep} degrees: ${key}`, class: 'turn',
    }, () => this.place && this.put({ ...this.place, pointing: this.place.pointing + by })));
    buttons.append(...turns, this.copy, this.save);
    foot.append(this.code, buttons);
    this.box.append(head, this.field.box, side, this.strip, this.why, foot);
    this.select.addEventListener('change', () => this.choose(this.select.value));
    this.select.addEventListener('keydown', (e) => { if (e.key !== 'Escape') e.stopPropagation(); }); // letters choose an option
    this.box.addEventListener('keydown', (e) => {
      if (e.key !== 'Escape') return;
      e.stopPropagation();
      this.close();
    });
    const sizes = new ResizeObserver(() => { if (this.isOpen) this.show(true); });
    for (const e of [this.field.box, this.center]) sizes.observe(e);
  }

  open(fabric, patch = '') {
    if (this.fabric !== fabric || this.patch !== patch) this.forget();
    this.fabric = fabric;
    this.name = this.model.fabrics[fabric].name;
    this.patch = patch;
    this.heading.textContent = `Fussy cut ${this.name}`;
    byId('note').hidden = true; // it would lie over the window
    this.box.hidden = false;
    this.refresh();
    this.field.box.focus({ preventScroll: true });
  }

  forget() {
    this.print?.close();
    this.bitmap?.close();
    this.data = this.print = this.bitmap = this.list = this.place = null;
    this.touched = false;
    this.motif = this.code.textContent = this.caption.textContent = '';
    this.shape = 0;
    this.strip.replaceChildren();
    this.why.hidden = this.shapes.hidden = true;
    this.field.place = null;
    this.field.show(null, undefined, null);
    this.center.width = 0;
    for (const r of [...this.resources, this.line]) r.loadedURL = '';
  }

  close() {
    if (!this.isOpen) return;
    const { fabric } = this, hadFocus = this.box.contains(document.activeElement);
    this.box.hidden = true;
    this.fabric = -1;
    this.forget();
    this.onClose(fabric, hadFocus);
  }

  // refresh asks for what belongs to the picture that is shown now.
  refresh() {
    if (!this.isOpen) return;
    for (const r of this.resources) r.refresh(true);
    if (this.data) this.line.refresh(true);
  }

  // follow goes with the fabric into another picture, in which it may have another number, and ends where it is no print any longer.
  follow() {
    const at = this.model.fabrics.findIndex((f) => f.name === this.name && f.patterned);
    if (this.isOpen && at < 0) this.close();
    else if (this.isOpen) this.fabric = at;
  }

  // dress goes with the fabric into another colorway.
  dress() {
    const fabric = this.model.fabrics[this.fabric];
    if (this.isOpen && !fabric?.patterned) this.close();
    else if (this.isOpen) this.heading.textContent = `Fussy cut ${this.name = fabric.name}`;
  }

  mayWrite(on) { this.save.hidden = !on; }

  // ---- what the program knows

  receive(data) {
    const first = this.data === null, before = this.own;
    this.data = data;
    if (first) this.motif = data.motifs[Math.max(0, data.opened)]?.name ?? '';
    const { own } = this;
    if (!own && !first && before) this.motif = '';
    if (own && (!this.touched || before && keys.some((key) => own[key] !== before[key]))) this.settle(own);
    this.begin();
  }

  receivePrint(bitmap) {
    this.bitmap?.close();
    this.bitmap = bitmap;
    this.begin();
  }

  receiveCenters(list) {
    this.list = list;
    this.begin();
  }

  // begin shows what is there so far.
  begin() {
    const { data, list } = this;
    if (!data) return;
    if (this.bitmap) {
      this.print?.close();
      this.print = new Print(this.bitmap, data);
      this.bitmap = null;
    }
    if (!this.own && !this.touched && list?.centers.length) this.settle(list.centers[0]);
    this.place ??= { across: (data.seen?.[0] ?? data.across) / 2, down: (data.seen?.[1] ?? data.down) / 2, pointing: 0 };
    this.why.textContent = data.why ?? list?.why ?? '';
    this.why.hidden = this.why.textContent === '';
    this.showChoices();
    this.showStrip();
    this.show(true);
    this.line.refresh(true);
  }

  // ---- what is chosen

  // settle takes a place that was not chosen by the hand.
  settle({ across, down, pointing }) {
    this.place = { across, down, pointing };
    this.touched = false;
  }

  choose(motif) {
    this.motif = motif;
    this.shape = 0;
    const from = this.own ?? this.list?.centers[0];
    if (from) this.settle(from);
    this.showChoices();
    this.show(true);
    this.askForLine();
  }

  // put takes a place that was chosen by the hand.
  put(place) {
    if (!this.data || !this.piece) return;
    const { mark, seen } = this.data, on = (v, n) => {
      const at = Math.round(v / mark) * mark;
      return seen ? Math.min(Math.floor(seen[n] / mark) * mark, Math.max(0, at)) : at;
    };
    const moved = place.across !== this.place.across || place.down !== this.place.down;
    if (moved) Object.assign(place, this.field.within({ across: on(place.across, 0), down: on(place.down, 1), pointing: place.pointing }));
    this.place = this.field.place = { ...place, pointing: wrap(place.pointing, 360) }; // which the next key goes on from
    this.touched = true;
    this.copy.disabled = this.save.disabled = true;
    this.frame ||= requestAnimationFrame(() => this.show());
    this.askForLine();
  }

  askForLine() { this.timer ||= setTimeout(() => { this.timer = 0; this.line.refresh(true); }, often); }

  // ---- what is seen

  showChoices() {
    const option = (value, text) => make('option', text, { value });
    this.select.replaceChildren(...this.data.motifs.map((m) => option(m.name, m.name)), option('', `${this.data.name} (new)`));
    this.select.value = this.own ? this.motif : '';
    this.shapes.hidden = this.pieces.length < 2;
    this.shapes.replaceChildren(...this.pieces.map((piece, i) => {
      const b = make('button', piece.shape, { 'aria-pressed': String(piece === this.piece) });
      b.addEventListener('click', () => { this.shape = i; this.showChoices(); this.show(true); });
      return b;
    }));
  }

  // show shows the place; anew where the print, the piece or the window's size may be others.
  show(anew = false) {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    if (!this.isOpen || !this.data || !this.print || !this.place) return;
    const { piece, field, place, data } = this;
    if (anew) field.show(this.print, piece, data);
    if (!piece) return;
    const off = this.isOff();
    field.put(place, off);
    this.drawCenter(anew);
    const made = piece.round > 1 ? `${many(piece.round, piece.shape)} cut alike` : piece.shape;
    this.caption.textContent = off ? `The ${piece.shape} reaches beyond the photo here.` : made;
    this.caption.classList.toggle('off', off);
    this.center.setAttribute('aria-label', made);
    this.hint.textContent = `Drag the ${piece.shape}, or use the arrow keys. Turn it by its handle, or with [\u00a0and\u00a0].`;
    const { pointing } = place;
    field.box.setAttribute('aria-label', `The ${piece.shape} on the print: arrow keys move it, with Shift by less; brackets turn it, with Shift by 1 degree`);
    field.box.setAttribute('aria-valuenow', String(pointing));
    for (const [i, b] of [...this.strip.children].entries()) b.setAttribute('aria-pressed', String(keys.every((key) => this.list.centers[i][key] === this.written[key])));
  }

  // isOff says whether the piece reaches beyond a photo of which nobody knows how it goes on.
  isOff() {
    const { data: { seen }, piece, place: { across, down, pointing } } = this;
    if (!seen) return false;
    const on = new DOMMatrix().translate(across, down).rotate(pointing);
    return pointsOf(piece.cut).some(([x, y]) => {
      const p = on.transformPoint({ x, y });
      return p.x < 0 || p.y < 0 || p.x > seen[0] || p.y > seen[1];
    });
  }

  drawCenter(anew) {
    const { center, print, piece } = this, size = Math.round(center.clientWidth * (devicePixelRatio || 1));
    if (!size) return;
    if (center.width !== size) center.width = center.height = size;
    if (anew || this.round?.piece !== piece || this.round.size !== size) this.round = new Round(piece, size);
    this.round.draw(center.getContext('2d'), print, this.written);
    if (anew) print.prepare(this.round.scale).then((made) => { if (made && this.print === print) this.drawCenter(false); });
  }

  showStrip() {
    const { list, print, data } = this, [piece] = data.pieces, at = (document.activeElement?.parentElement === this.strip) ? [...this.strip.children].indexOf(document.activeElement) : -1;
    if (!list || !print || !piece) return;
    const size = Math.round(smallSize * (devicePixelRatio || 1)), round = new Round(piece, size), canvases = list.centers.map(() => make('canvas', undefined, { width: size, height: size, 'aria-hidden': 'true' }));
    const draw = () => list.centers.forEach((c, i) => round.draw(canvases[i].getContext('2d'), print, c));
    this.strip.replaceChildren(...list.centers.map((c, i) => {
      const b = make('button', undefined, { 'aria-pressed': 'false', 'aria-label': `Center ${c.number}: ${c.says}`, title: `${c.number}. ${c.says}` });
      b.append(canvases[i]);
      b.addEventListener('click', () => { this.put({ across: c.across, down: c.down, pointing: c.pointing }); });
      return b;
    }));
    if (at >= 0) this.strip.children[at]?.focus({ preventScroll: true });
    draw();
    print.prepare(round.scale).then((made) => { if (made && this.print === print) draw(); });
  }

  // ---- the line

  showLine({ line, moved }) {
    this.code.textContent = line;
    this.copy.disabled = false;
    this.save.disabled = !moved;
    this.field.box.setAttribute('aria-valuetext', line);
  }

  async writeLine() {
    const { motif, of: fabric, ...place } = this.request, isNew = !this.own;
    this.motif = motif;
    this.touched = false; // what is written comes back as the layout's own
    const reply = await this.write({ fabric, motif, ...place }, isNew);
    if (!reply.why) return;
    this.touched = true;
    if (isNew) this.motif = '';
  }
}
