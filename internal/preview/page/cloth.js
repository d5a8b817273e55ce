// A print as pieces are cut from it: drawn over and over, and what like pieces make that are cut from one place of it. Lengths are
// nanometers; a piece is two outlines, x, y, x, y …, from its middle, as it lies on the print at 0 degrees.

const finest = 1.4; // pixels of the picture for one that is drawn, from which on a smaller copy looks better

// Print is one repeat of a cloth, as a bitmap in a few sizes.
export class Print {
  constructor(bitmap, { across, down }) {
    Object.assign(this, { bitmap, across, down });
    this.smaller = new Map(); // by width
  }

  // prepare makes the size that is drawn at so many pixels for a nanometer, and says whether there is one that was not there.
  async prepare(scale) {
    const wide = Math.max(1, Math.round(this.across * scale)), high = Math.max(1, Math.round(this.down * scale)), { bitmap } = this;
    if (wide * finest > bitmap.width || this.smaller.has(wide)) return false;
    this.smaller.set(wide, null); // it is on its way
    const made = await createImageBitmap(bitmap, { resizeWidth: wide, resizeHeight: high, resizeQuality: 'high' });
    if (this.closed) made.close();
    else this.smaller.set(wide, made);
    return !this.closed;
  }

  // at is the size for so many pixels for a nanometer: the smallest that has as many, or as many as there are.
  at(scale) {
    let best = this.bitmap;
    for (const b of this.smaller.values()) if (b && b.width < best.width && b.width * 1.02 >= this.across * scale) best = b;
    return best;
  }

  // pattern fills with the print where it lies by a matrix, which goes from the cloth to the canvas.
  pattern(context, matrix, scale) {
    const bitmap = this.at(scale), pattern = context.createPattern(bitmap, 'repeat');
    pattern.setTransform(matrix.scale(this.across / bitmap.width, this.down / bitmap.height));
    return pattern;
  }

  close() {
    this.closed = true;
    for (const b of [this.bitmap, ...this.smaller.values()]) b?.close();
  }
}

// pointsOf are an outline's places.
export function pointsOf(outline) {
  const list = [];
  for (let i = 0; i < outline.length; i += 2) list.push([outline[i], outline[i + 1]]);
  return list;
}

// reachOf is how far an outline reaches from a place.
export function reachOf(outline, [x, y] = [0, 0]) {
  return Math.max(...pointsOf(outline).map(([px, py]) => Math.hypot(px - x, py - y)));
}

// Round is how like pieces lie on a square canvas of so many pixels: all round one of their corners, the first one upward, or one alone.
export class Round {
  constructor(piece, size) {
    const [tip] = pointsOf(piece.finished), whole = piece.round > 1;
    this.piece = piece;
    this.size = size;
    this.from = whole ? tip : [0, 0]; // of the piece, in the middle of the canvas
    this.scale = (size / 2 - 1) / reachOf(piece.finished, this.from);
    this.first = whole ? -90 - Math.atan2(-tip[1], -tip[0]) * 180 / Math.PI : 0;
  }

  // matrix goes from the piece, as it lies at 0 degrees, to the canvas.
  matrix(n) {
    const { size, scale, from: [x, y] } = this;
    return new DOMMatrix().translate(size / 2, size / 2).scale(scale).rotate(this.first + n * 360 / this.piece.round).translate(-x, -y);
  }

  // outline is a piece's path.
  outline(matrix) {
    const path = new Path2D(), { a, b, c, d, e, f } = matrix;
    pointsOf(this.piece.finished).forEach(([x, y], i) => path[i ? 'lineTo' : 'moveTo'](a * x + c * y + e, b * x + d * y + f));
    path.closePath();
    return path;
  }

  // draw draws the pieces cut from a place of a print. What lies beneath their edges is drawn first, so that nothing shines through.
  draw(context, print, { across, down, pointing }) {
    const pieces = Array.from({ length: this.piece.round }, (_, n) => {
      const matrix = this.matrix(n);
      return { path: this.outline(matrix), fill: print.pattern(context, matrix.rotate(-pointing).translate(-across, -down), this.scale) };
    });
    context.clearRect(0, 0, this.size, this.size);
    context.lineWidth = 1.5;
    for (const { path, fill } of pieces) {
      context.strokeStyle = fill;
      context.stroke(path);
    }
    for (const { path, fill } of pieces) {
      context.fillStyle = fill;
      context.fill(path);
    }
  }
}
