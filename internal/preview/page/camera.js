// Where the window stands before the quilt. It is kept in blocks, not in inches: whatever a
// save changes, the block in the middle of the window stays there at its size on the screen.

const most = 4000; // pixels that a block may grow to

export class Camera {
  constructor() {
    this.free = false; // the whole quilt, whatever its size
    this.u = 0; // blocks, across
    this.v = 0; // blocks, down
    this.block = 1; // pixels
    this.width = 0; // pixels of the window
    this.height = 0;
  }

  // fit is what the model is seen through: it is asked before each use.
  fit(model) {
    const { x, y } = model.grid, { columns, rows, width, height } = model.sheet;
    this.sideX = (x[columns] - x[0]) / columns;
    this.sideY = (y[rows] - y[0]) / rows;
    this.x0 = x[0];
    this.y0 = y[0];
    this.sheetWidth = width;
    this.sheetHeight = height;
    this.least = Math.min(this.width / width, this.height / height) * this.sideX * 0.94;
    if (!this.free) this.whole();
    this.clamp();
  }

  whole() {
    this.free = false;
    this.block = this.least;
    this.u = (this.sheetWidth / 2 - this.x0) / this.sideX;
    this.v = (this.sheetHeight / 2 - this.y0) / this.sideY;
  }

  clamp() {
    this.block = Math.min(most, Math.max(this.least / 2, this.block));
    const within = (v, from, to) => Math.min(to, Math.max(from, v));
    this.u = within(this.u, -this.x0 / this.sideX, (this.sheetWidth - this.x0) / this.sideX);
    this.v = within(this.v, -this.y0 / this.sideY, (this.sheetHeight - this.y0) / this.sideY);
  }

  get scale() { return this.block / this.sideX; } // pixels a unit

  // offset is where the quilt's corner stands in the window.
  get offset() {
    const s = this.scale;
    return [this.width / 2 - (this.x0 + this.u * this.sideX) * s, this.height / 2 - (this.y0 + this.v * this.sideY) * s];
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

  // nearer zooms by a factor so that the pixel keeps its place on the quilt.
  nearer(factor, px, py) {
    const [x, y] = this.toQuilt(px, py);
    this.free = true;
    this.block = Math.min(most, Math.max(this.least / 2, this.block * factor));
    const [nx, ny] = this.toWindow(x, y);
    this.move(px - nx, py - ny);
  }

  // move drags the quilt by so many pixels.
  move(dx, dy) {
    this.free = true;
    this.u -= dx / this.block;
    this.v -= dy / (this.scale * this.sideY);
    this.clamp();
  }

  // reveal brings a place of the quilt into the window.
  reveal(x, y) {
    const [px, py] = this.toWindow(x, y), margin = Math.min(60, this.width / 4, this.height / 4);
    const by = (p, size) => p < margin ? margin - p : p > size - margin ? size - margin - p : 0;
    const dx = by(px, this.width), dy = by(py, this.height);
    if (this.free && (dx || dy)) this.move(dx, dy);
  }

  // kept is what is remembered over a reload of the page.
  get kept() { return this.free ? { u: this.u, v: this.v, block: this.block } : null; }
  set kept(k) {
    if (!k || ![k.u, k.v, k.block].every(Number.isFinite)) return;
    Object.assign(this, { u: k.u, v: k.v, block: k.block, free: true });
  }
}
