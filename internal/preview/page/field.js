// The field in which a piece lies on its print: one repeat and what is around it, the piece's outlines where it is and where the same place
// comes again, and a handle that turns it. It is moved by pointer and by keys. Lengths are nanometers.

import { make } from './dom.js';
import { pointsOf, reachOf } from './cloth.js';

const fullTurn = 360;
export const turnStep = 15; // degrees
const sticky = 2.5; // degrees from a whole step within which a turn by hand ends on it
const handleAway = 24, handleReach = 22; // pixels
const copiesFrom = 1.6; // reaches of a piece that a repeat has, from which on copies of it are drawn

const shape = (name, attributes, parent) => {
  const e = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
  parent.append(e);
  return e;
};
const dataOf = (outline) => `M${pointsOf(outline).map((p) => p.join(' ')).join('L')}Z`;

export class Field {
  // move gets where the piece is dragged to, turn how it is to point.
  constructor({ move, turn }) {
    Object.assign(this, { move, turn, place: null, view: null });
    this.box = make('div', undefined, { class: 'field', role: 'slider', tabindex: '0', 'aria-valuemin': '0', 'aria-valuemax': String(fullTurn - 1) });
    this.ground = make('canvas', undefined, { 'aria-hidden': 'true' });
    this.box.append(this.ground);
    this.overlay = shape('svg', { 'aria-hidden': 'true' }, this.box);
    this.copies = shape('g', { class: 'copies' }, this.overlay);
    this.main = shape('g', {}, this.overlay);
    this.outlines = ['halo', 'cut-line', 'finished halo', 'finished'].map((name) => shape('path', { class: name }, this.main));
    this.stem = shape('path', { class: 'stem' }, this.overlay);
    this.handle = shape('circle', { class: 'handle', r: '8' }, this.overlay);
    this.listen();
  }

  listen() {
    const { box } = this;
    box.addEventListener('keydown', (e) => {
      if ((e.ctrlKey || e.altKey) && !e.getModifierState('AltGraph') || e.metaKey || !this.key(e.key, e.shiftKey)) return;
      e.preventDefault();
      e.stopPropagation();
    });
    box.addEventListener('pointerdown', (e) => { if (e.button === 0 && this.view) this.press(e); });
    box.addEventListener('pointermove', (e) => { if (box.hasPointerCapture(e.pointerId)) this.drag?.(...this.pixelOf(e)); });
    box.addEventListener('lostpointercapture', () => { this.drag = null; });
  }

  // show takes what is shown, null for nothing: a print, the piece that is cut from it, and what the program tells of both.
  show(print, piece, data) {
    this.print = print;
    this.piece = piece;
    this.data = data;
    this.overlay.style.visibility = print && piece ? '' : 'hidden';
    if (piece) for (const path of this.outlines) path.setAttribute('d', dataOf(path.matches('.finished') ? piece.finished : piece.cut));
    this.fit();
  }

  // fit draws the print as large as there is room.
  fit() {
    const { clientWidth: width, clientHeight: height } = this.box, { print, piece, data } = this, ratio = devicePixelRatio || 1;
    this.view = null;
    this.ground.width = Math.round(width * ratio);
    this.ground.height = Math.round(height * ratio);
    if (!print || !piece || !width || !height) return;
    const [across, down] = data.seen ?? [data.across, data.down], reach = reachOf(piece.cut);
    const scale = Math.min(width / Math.max(across + 1.6 * reach, 3.2 * reach), height / Math.max(down + 1.6 * reach, 3.2 * reach));
    this.view = { width, height, scale, x: width / 2 - across / 2 * scale, y: height / 2 - down / 2 * scale, ratio, across, down, reach };
    this.drawGround();
    print.prepare(scale * ratio).then((made) => { if (made && this.print === print) this.drawGround(); });
    if (this.place) this.put(this.place);
  }

  drawGround() {
    const { print, data, view: { width, height, scale, x, y, ratio, across, down } } = this, context = this.ground.getContext('2d');
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, this.ground.width, this.ground.height);
    context.fillStyle = print.pattern(context, new DOMMatrix().scale(ratio).translate(x, y).scale(scale), scale * ratio);
    const [left, upper, right, lower] = data.seen ? [x, y, x + across * scale, y + down * scale] : [0, 0, width, height];
    context.fillRect(left * ratio, upper * ratio, (right - left) * ratio, (lower - upper) * ratio);
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    for (const [color, offset] of [['#fff', 0], ['#000', 4]]) { // where the print comes again, or the photo ends
      Object.assign(context, { strokeStyle: color, lineDashOffset: offset, lineWidth: 1, globalAlpha: 0.7 });
      context.setLineDash([4, 4]);
      context.strokeRect(x, y, across * scale, down * scale);
    }
    context.globalAlpha = 1;
  }

  // put shows the piece at a place; off says that it reaches beyond what is known of the print.
  put(place, off = this.off) {
    this.place = place;
    this.off = off;
    if (!this.view) return;
    const { view: { scale, x, y, width, height, reach } } = this, [px, py] = [x + place.across * scale, y + place.down * scale];
    const at = (dx, dy) => `translate(${px + dx} ${py + dy}) rotate(${place.pointing}) scale(${scale})`;
    this.main.setAttribute('transform', at(0, 0));
    this.overlay.classList.toggle('off', off);
    const copies = [];
    for (const [dx, dy] of this.copiesAt()) if (px + dx > -reach * scale && px + dx < width + reach * scale && py + dy > -reach * scale && py + dy < height + reach * scale) copies.push(at(dx, dy));
    while (this.copies.children.length > copies.length) this.copies.lastChild.remove();
    while (this.copies.children.length < copies.length) shape('path', {}, this.copies);
    copies.forEach((transform, i) => {
      this.copies.children[i].setAttribute('d', dataOf(this.piece.finished));
      this.copies.children[i].setAttribute('transform', transform);
    });
    this.putHandle(px, py);
  }

  // copiesAt is how many pixels from the piece the same place of the print comes again in sight.
  copiesAt() {
    const { data, view: { scale, width, height, reach } } = this, list = [];
    if (data.seen || Math.min(data.across, data.down) < copiesFrom * reach) return list;
    const [dx, dy] = [data.across * scale, data.down * scale], nx = Math.ceil(width / dx), ny = Math.ceil(height / dy);
    for (let i = -nx; i <= nx; i++) for (let j = -ny; j <= ny; j++) if (i || j) list.push([i * dx, j * dy]);
    return list;
  }

  // putHandle puts the handle beyond the end that the piece points with, or beyond the other where that is out of sight.
  putHandle(px, py) {
    const { piece, place, view: { scale, width, height } } = this, angle = place.pointing * Math.PI / 180, ends = pointsOf(piece.cut).map(([, y]) => y * scale);
    const along = (far) => [px - Math.sin(angle) * far, py + Math.cos(angle) * far], inside = ([hx, hy]) => hx > 10 && hx < width - 10 && hy > 10 && hy < height - 10;
    const [ahead, behind] = [Math.min(...ends), Math.max(...ends)];
    this.behind = !inside(along(ahead - handleAway)) && inside(along(behind + handleAway));
    const from = along(this.behind ? behind : ahead), to = along(this.behind ? behind + handleAway : ahead - handleAway);
    this.handleAt = to;
    this.stem.setAttribute('d', `M${from.join(' ')}L${to.join(' ')}`);
    this.handle.setAttribute('cx', to[0]);
    this.handle.setAttribute('cy', to[1]);
  }

  pixelOf(e) {
    const { left, top } = this.ground.getBoundingClientRect();
    return [e.clientX - left, e.clientY - top];
  }

  // press takes hold of the handle, of the piece or of a copy; elsewhere the piece comes to the pointer.
  press(e) {
    const [px, py] = this.pixelOf(e), { view: { scale, x, y, reach } } = this;
    this.box.setPointerCapture(e.pointerId);
    if (Math.hypot(px - this.handleAt[0], py - this.handleAt[1]) <= handleReach) {
      this.drag = (ax, ay) => this.turnTo(ax, ay);
      return;
    }
    let { across, down } = this.place;
    const near = ([dx, dy]) => Math.hypot(px - x - across * scale - dx, py - y - down * scale - dy) < reach * scale;
    const held = [[0, 0], ...this.copiesAt()].find(near);
    [across, down] = held ? [across + held[0] / scale, down + held[1] / scale] : [(px - x) / scale, (py - y) / scale];
    this.drag = (ax, ay) => this.move(across + (ax - px) / scale, down + (ay - py) / scale);
    this.drag(px, py);
  }

  // turnTo lets the handle point to the pointer.
  turnTo(ax, ay) {
    const { place, view: { scale, x, y } } = this;
    let degrees = Math.atan2(ax - x - place.across * scale, y + place.down * scale - ay) * 180 / Math.PI + (this.behind ? 180 : 0);
    const whole = Math.round(degrees / turnStep) * turnStep;
    if (Math.abs(degrees - whole) <= sticky) degrees = whole;
    this.turn(Math.round(degrees));
  }

  // key does what a key does, and says whether it does anything.
  key(key, shift) {
    if (!this.view || !this.place) return false;
    const { place: { across, down, pointing }, data } = this, step = shift ? data.mark : data.step;
    const by = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[key], turned = { '[': -turnStep, ']': turnStep, '{': -1, '}': 1 }[key];
    if (by) this.move(across + by[0] * step, down + by[1] * step);
    else if (turned) this.turn(pointing + turned);
    return Boolean(by || turned);
  }

  // within is a place that is in sight and shows the same: on the photo, where nobody knows how it goes on.
  within({ across, down, pointing }) {
    const { data, view } = this, at = (v, repeat, from, room) => {
      if (data.seen) return v;
      const pixel = from + v * view.scale;
      return pixel >= 0 && pixel <= room ? v : v - Math.floor(v / repeat) * repeat;
    };
    if (!view) return { across, down, pointing };
    return { across: at(across, data.across, view.x, view.width), down: at(down, data.down, view.y, view.height), pointing };
  }
}
