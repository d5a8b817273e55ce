// Faces of one color each as pixels. What stands to the right of an edge is told by where the edge is: what changes there from color to color
// is added, and a sum along each row is the picture. So an edge between two faces is gone along once, and each pixel has of each color the
// exact share that its face covers.

const channels = 3; // red, green, blue

export class Raster {
  // What no face covers has the color of the wall, [red, green, blue].
  constructor(width, height, wall) {
    Object.assign(this, { width, height, wall });
    this.stride = channels * (width + 2);
    this.sums = new Float32Array(this.stride * height);
    this.image = new ImageData(width, height);
    this.pixels = new Uint32Array(this.image.data.buffer);
  }

  // add adds edges, as edgesOf has them; x and y are where they are told from. Most of the time of a picture goes by here.
  add(edges, x, y) {
    const { width, height, stride, sums } = this;
    for (let e = 0; e < edges.length; e += 7) {
      const y0 = y + edges[e + 1], y1 = y + edges[e + 3], slope = (edges[e + 2] - edges[e]) / (edges[e + 3] - edges[e + 1]);
      const red = edges[e + 4], green = edges[e + 5], blue = edges[e + 6], last = y1 < height ? y1 : height;
      let row = y0 | 0, top = y0, along = x + edges[e];
      if (y0 < 0) {
        along -= y0 * slope;
        row = top = 0;
      }
      for (let start = row * stride; row < last; row++, start += stride) {
        const bottom = row + 1 < y1 ? row + 1 : y1, by = bottom - top, next = along + slope * by;
        let from = along < next ? along : next, to = along < next ? next : along;
        top = bottom;
        along = next;
        if (from >= width) continue;
        if (from < 0) from = 0;
        if (to < 0) to = 0;
        if (to > width) to = width;
        let pixel = from | 0, at = start + channels * pixel;
        if (to <= pixel + 1) {
          const after = by * ((from + to) / 2 - pixel), here = by - after; // after: what falls to the pixel that follows
          sums[at] += here * red; sums[at + 1] += here * green; sums[at + 2] += here * blue;
          sums[at + 3] += after * red; sums[at + 4] += after * green; sums[at + 5] += after * blue;
          continue;
        }
        let after = 0;
        for (const each = by / (to - from); pixel < to; pixel++, at += channels) {
          const begin = from > pixel ? from : pixel, end = to < pixel + 1 ? to : pixel + 1, part = each * (end - begin);
          const within = part * (pixel + 1 - (begin + end) / 2), here = within + after;
          sums[at] += here * red; sums[at + 1] += here * green; sums[at + 2] += here * blue;
          after = part - within;
        }
        sums[at] += after * red; sums[at + 1] += after * green; sums[at + 2] += after * blue;
      }
    }
  }

  // finish makes pixels of what was added in a part of the picture, and forgets it.
  finish({ left, top, right, bottom }) {
    const { width, stride, sums, pixels, wall } = this;
    for (let y = top; y < bottom; y++) {
      let red = wall[0] + 0.5, green = wall[1] + 0.5, blue = wall[2] + 0.5; // half for rounding
      const first = y * stride + channels * left, end = y * width + right;
      for (let o = y * width + left, i = first; o < end; o++, i += channels) {
        red += sums[i]; green += sums[i + 1]; blue += sums[i + 2];
        pixels[o] = packed(red, green, blue);
      }
      sums.fill(0, first, first + channels * (right - left + 2));
    }
    return this.image;
  }

  // change makes of pixels in a part of the picture others that differ by what was added, and forgets that. It is as exact as whole numbers are.
  change({ left, top, right, bottom }) {
    const { width, stride, sums, pixels } = this;
    for (let y = top; y < bottom; y++) {
      let red = 0, green = 0, blue = 0;
      const first = y * stride + channels * left, end = y * width + right;
      for (let o = y * width + left, i = first; o < end; o++, i += channels) {
        red += sums[i]; green += sums[i + 1]; blue += sums[i + 2];
        if (Math.abs(red) + Math.abs(green) + Math.abs(blue) < 0.05) continue; // but for what adding up leaves
        const p = pixels[o];
        pixels[o] = packed(clamped((p & 255) + red), clamped((p >> 8 & 255) + green), clamped((p >> 16 & 255) + blue));
      }
      sums.fill(0, first, first + channels * (right - left + 2));
    }
    return this.image;
  }
}

function clamped(v) { return v < 0 ? 0 : v > 255 ? 255 : v + 0.5; }

function packed(red, green, blue) { return 0xff000000 | blue << 16 | green << 8 | red; }

// edgesOf are a look's edges at a scale, one after the other: x and y of its upper end, of its lower end, and what is added to the right of it.
export function edgesOf({ template, fabrics }, colors, wall, scale) {
  const list = [];
  for (const [x0, y0, x1, y1, f, g] of outlinesOf(template)) {
    const a = colors[fabrics[f]], b = g < 0 ? wall : colors[fabrics[g]];
    if (a === b) continue;
    if (y0 < y1) list.push(x0 * scale, y0 * scale, x1 * scale, y1 * scale, ...b.map((v, i) => v - a[i]));
    else list.push(x1 * scale, y1 * scale, x0 * scale, y0 * scale, ...a.map((v, i) => v - b[i]));
  }
  return Float64Array.from(list);
}

// outlinesOf are the edges of a template's faces, each [x0, y0, x1, y1, face, the face on its other side or -1]; level ones have nothing to
// their right.
function outlinesOf(template) {
  if (template.edges) return template.edges;
  const list = [], open = new Map();
  template.faces.forEach((points, face) => {
    for (let i = 0; i < points.length; i += 2) {
      const j = (i + 2) % points.length, [x0, y0, x1, y1] = [points[i], points[i + 1], points[j], points[j + 1]];
      if (y0 === y1) continue;
      const other = open.get(`${x1} ${y1} ${x0} ${y0}`);
      if (other && other[5] < 0) {
        other[5] = face;
        continue;
      }
      const edge = [x0, y0, x1, y1, face, -1];
      open.set(`${x0} ${y0} ${x1} ${y1}`, edge);
      list.push(edge);
    }
  });
  return template.edges = list;
}
