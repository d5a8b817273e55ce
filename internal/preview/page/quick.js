// A large quilt painted at once. The browser takes a microsecond for each patch that it draws; when colors or blocks change, and while the
// quilt is moved, its pixels are worked out here instead and laid over the drawing, which is drawn up when the hand has come to rest.

import { Raster, edgesOf } from './raster.js';

const manyFaces = 3000; // in sight, from which on this is quicker
const manyPixels = 3_000_000; // beyond which it is not
const rest = 80; // ms
const mostChanges = 12; // of colors, each rounded, before all is painted again

const none = [0, 0, 0];

export class Quick {
  // drawUp draws up what changed.
  constructor(drawing, drawUp) {
    Object.assign(this, { drawing, drawUp });
    this.canvas = document.createElement('canvas');
    this.canvas.className = 'quick';
    this.canvas.hidden = true;
    this.canvas.setAttribute('aria-hidden', 'true');
    this.raster = null;
    this.waiting = null; // what changed since the drawing was drawn up
    this.painted = null; // what the pixels show, null for nothing: { place, colors, changes }
    this.timer = 0;
    this.frame = 0;
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => { this.raster = null; }); // another wall
  }

  // move tells where the quilt stands in the window; true where the drawing need not follow before it is drawn up.
  move(x, y, scale) {
    const moved = this.x !== x || this.y !== y || this.scale !== scale;
    Object.assign(this, { x, y, scale });
    if (moved && this.drawing.model.shown) this.take({});
    if (this.frame) this.paint();
    return this.waiting !== null;
  }

  // fit tells how large the window is, in pixels of the page.
  fit(width, height) {
    const ratio = devicePixelRatio || 1, w = Math.round(width * ratio), h = Math.round(height * ratio);
    if (this.raster?.width === w && this.raster.height === h) return;
    this.raster = null;
    Object.assign(this, { ratio, width: w, height: h });
  }

  // takes says whether a drawing is one to be painted here.
  takes() {
    const { drawing: d } = this, pixels = this.width * this.height;
    return pixels > 0 && pixels <= manyPixels && d.plain() && this.facesInSight() >= manyFaces;
  }

  // take paints a change, and keeps it to be drawn up later; false where it is not one to be painted here. A few blocks are drawn up as
  // quickly.
  take({ anew = false, regions = [], colours = [] }, few = false) {
    if (anew || [...regions].length) this.painted = null;
    if (few && !this.waiting || !this.takes()) {
      this.settle();
      return false;
    }
    this.waiting ??= { anew: false, regions: new Set(), colours: new Set() };
    this.waiting.anew ||= anew;
    for (const r of regions) this.waiting.regions.add(r);
    for (const c of colours) this.waiting.colours.add(c);
    this.frame ||= requestAnimationFrame(() => this.paint());
    return true;
  }

  // paint paints what waits to be painted, now that all of it is known.
  paint() {
    if (!this.frame) return;
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.settle(), rest);
    if (!this.raster) this.start();
    const { raster, ratio, drawing: { model } } = this, s = this.scale * ratio, x = this.x * ratio, y = this.y * ratio;
    const left = Math.max(0, Math.floor(x)), right = Math.min(raster.width, Math.ceil(x + model.quilt.width * s) + 1);
    const top = Math.max(0, Math.floor(y)), bottom = Math.min(raster.height, Math.ceil(y + model.quilt.height * s) + 1);
    const box = around(this.box, this.box = { left, top, right, bottom }); // where it stood before is covered too
    const place = [s, x, y].join(), colors = this.drawing.colours().map(channelsOf), now = this.painted;
    const onlyColors = now?.place === place && now.colors.length === colors.length && now.changes < mostChanges;
    this.add(s, x, y, onlyColors ? differences(colors, now.colors) : colors, onlyColors ? none : raster.wall);
    const image = onlyColors ? raster.change(box) : raster.finish(box);
    this.context.putImageData(image, 0, 0, box.left, box.top, box.right - box.left, box.bottom - box.top);
    this.painted = { place, colors, changes: onlyColors ? now.changes + 1 : 0 };
    this.canvas.hidden = false;
  }

  // start makes all that a window of this size takes.
  start() {
    const { canvas, width, height, ratio } = this;
    const wall = getComputedStyle(canvas).backgroundColor.match(/[\d.]+/g).slice(0, 3).map(Number);
    this.raster = new Raster(width, height, wall);
    Object.assign(canvas, { width, height });
    Object.assign(canvas.style, { width: `${width / ratio}px`, height: `${height / ratio}px` });
    this.context = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
    this.painted = null;
    this.box = { left: 0, top: 0, right: width, bottom: height };
  }

  // add adds the edges of all that is in sight.
  add(s, x, y, colors, wall) {
    const { raster, drawing: { model } } = this;
    const edges = model.looks.map(() => null), edgesFor = (number) => edges[number] ??= edgesOf(model.looks[number], colors, wall, s);
    const { columns, side } = model.quilt, seen = (at, room) => at < room && at + side * s > 0;
    model.cells.forEach((look, i) => {
      const left = x + model.grid.x[i % columns] * s, top = y + model.grid.y[Math.floor(i / columns)] * s;
      if (look >= 0 && left < raster.width && seen(top, raster.height)) raster.add(edgesFor(look), left, top);
    });
    for (const item of model.looseItems()) raster.add(edgesOf(item.look, colors, wall, s), x + item.x * s, y + item.y * s);
  }

  // settle has drawn up what waits, in whose place the pixels stood.
  settle() {
    clearTimeout(this.timer);
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    const { waiting } = this;
    if (!waiting) return;
    this.waiting = null;
    this.drawUp(waiting);
    this.canvas.hidden = true;
  }

  // facesInSight is about how many faces the window shows.
  facesInSight() {
    const { model } = this.drawing, { width, height } = model.quilt, { ratio, scale, x, y } = this;
    const part = (at, size, room) => Math.max(0, Math.min(room, at + size * scale) - Math.max(0, at)) / (size * scale);
    return model.faceCount() * part(x, width, this.width / ratio) * part(y, height, this.height / ratio);
  }
}

// around is the box around two.
function around(a, b) {
  return { left: Math.min(a.left, b.left), top: Math.min(a.top, b.top), right: Math.max(a.right, b.right), bottom: Math.max(a.bottom, b.bottom) };
}

// channelsOf are a color's red, green and blue.
function channelsOf(color) { return [1, 3, 5].map((i) => parseInt(color.slice(i, i + 2), 16)); }

// differences are by what colors differ from others.
function differences(colors, from) { return colors.map((color, i) => color.some((v, c) => v !== from[i][c]) ? color.map((v, c) => v - from[i][c]) : none); }
