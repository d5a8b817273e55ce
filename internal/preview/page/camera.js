// Where the window stands before the quilt. It is kept in blocks, not in inches: whatever a
// save changes, the block in the middle of the window stays there at its size on the screen.

const maxBlock = 4000; // pixels that a block may grow to
const slack = 0.3; // of the window, that the quilt may be moved beyond its middle
const margin = 16; // pixels beside the whole quilt

export class Camera {
  constructor() {
    this.fitted = true; // the whole quilt, whatever its size
    this.u = 0; // blocks, across
    this.v = 0; // blocks, down
    this.block = 1; // pixels
    this.width = 0; // pixels of the window
    this.height = 0;
    this.cover = { right: 0, bottom: 0 }; // pixels of the window that something lies over
    this.reserve = 0; // pixels from the right that something would lie over if it were opened
    this.avoided = this.cover; // what lay over the window when the whole quilt was last fitted into it
    this.wantedZoom = 0; // times the whole quilt's; 0 for none
  }

  // update reads the model's measures: it is called before each use.
  update(model) {
    const { x, y } = model.grid, { columns, rows, width, height } = model.quilt;
    this.sideX = (x[columns] - x[0]) / columns;
    this.sideY = (y[rows] - y[0]) / rows;
    this.x0 = x[0];
    this.y0 = y[0];
    this.quiltWidth = width;
    this.quiltHeight = height;
    const fitting = (w, h) => Math.min(w / width, h / height) * this.sideX * 0.94;
    this.fittedBlock = fitting(this.width - this.avoided.right, this.height - this.avoided.bottom);
    this.plainBlock = fitting(this.width, this.height);
    if (this.wantedZoom) this.block = this.plainBlock * this.wantedZoom;
    this.wantedZoom = 0;
    if (this.fitted) this.fit();
    else this.clamp();
  }

  // avoid says what lies over the window from now on, for the whole quilt to be fitted beside.
  avoid(cover) { this.avoided = { ...cover }; }

  // fit shows the whole quilt.
  fit() {
    this.fitted = true;
    this.block = this.fittedBlock;
    const s = this.scale, [x, y] = this.fittedMiddle(this.quiltWidth * s);
    this.u = (this.quiltWidth / 2 - this.x0 - (x - this.width / 2) / s) / this.sideX;
    this.v = (this.quiltHeight / 2 - this.y0 - (y - this.height / 2) / s) / this.sideY;
  }

  // fittedMiddle is where the middle of the whole quilt stands in the window, so many pixels broad: in the middle of what is
  // free. Where there is room beside what may be opened, it stands off it already, so that it need not move then.
  fittedMiddle(breadth) {
    const { right, bottom } = this.avoided, room = this.width - this.reserve - breadth, middle = (this.width - right) / 2;
    const beside = this.width - this.reserve - breadth / 2 - Math.max(margin, room / 4);
    return [right === 0 && room >= 2 * margin ? Math.min(middle, beside) : middle, (this.height - bottom) / 2];
  }

  clamp() {
    this.block = Math.min(maxBlock, Math.max(this.fittedBlock / 2, this.block));
    const clamped = (v, from, to) => Math.min(to, Math.max(from, v));
    const slackX = this.width * slack / this.block, slackY = this.height * slack / this.block;
    this.u = clamped(this.u, -this.x0 / this.sideX - slackX, (this.quiltWidth - this.x0) / this.sideX + slackX);
    this.v = clamped(this.v, -this.y0 / this.sideY - slackY, (this.quiltHeight - this.y0) / this.sideY + slackY);
  }

  get scale() { return this.block / this.sideX; } // pixels a unit

  // offset is where the quilt's corner stands in the window.
  get offset() {
    const s = this.scale;
    return [this.width / 2 - (this.x0 + this.u * this.sideX) * s, this.height / 2 - (this.y0 + this.v * this.sideY) * s];
  }

  // middle is where the quilt's middle stands, in whole percent of the window's breadth.
  get middle() {
    const [x] = this.toWindow(this.quiltWidth / 2, 0);
    return this.width ? Math.min(90, Math.max(10, Math.round(x / this.width * 100))) : 50;
  }

  // toQuilt is the place on the quilt, in units, of a pixel of the window.
  toQuilt(px, py) {
    const [x, y] = this.offset;
    return [(px - x) / this.scale, (py - y) / this.scale];
  }

  toWindow(x, y) {
    const [ox, oy] = this.offset;
    return [ox + x * this.scale, oy + y * this.scale];
  }

  // zoom zooms by a factor so that the pixel keeps its place on the quilt.
  zoom(factor, px, py) {
    const [x, y] = this.toQuilt(px, py);
    this.fitted = false;
    this.block = Math.min(maxBlock, Math.max(this.fittedBlock / 2, this.block * factor));
    const [nx, ny] = this.toWindow(x, y);
    this.pan(px - nx, py - ny);
  }

  // pan moves the quilt by so many pixels.
  pan(dx, dy) {
    this.fitted = false;
    this.u -= dx / this.block;
    this.v -= dy / (this.scale * this.sideY);
    this.clamp();
  }

  // reveal brings a place of the quilt into the window.
  reveal(x, y) {
    const [px, py] = this.toWindow(x, y), margin = Math.min(60, this.width / 4, this.height / 4);
    const by = (p, size) => p < margin ? margin - p : p > size - margin ? size - margin - p : 0;
    const dx = by(px, this.width - this.cover.right), dy = by(py, this.height - this.cover.bottom);
    if (!this.fitted && (dx || dy)) this.pan(dx, dy);
  }

  // saved is what is remembered over a reload of the page; null for the whole quilt.
  get saved() { return this.fitted ? null : { u: this.u, v: this.v, block: this.block }; }
  set saved(s) {
    if (!s || ![s.u, s.v, s.block].every(Number.isFinite)) return;
    Object.assign(this, { u: s.u, v: s.v, block: s.block, wantedZoom: 0, fitted: false });
  }

  // linked is the same for a window of any size: the zoom is that of the whole quilt in all of the window, times so much.
  get linked() { return this.fitted || !this.plainBlock ? null : { u: this.u, v: this.v, zoom: this.block / this.plainBlock }; }
  set linked(s) {
    this.fitted = !s;
    if (s) Object.assign(this, { u: s.u, v: s.v, wantedZoom: s.zoom });
  }
}
