// The paths of what a row of a report highlights. The program numbers faces and seams in the order
// in which the page holds them: item by item its faces; item by item the seams within it, and of a
// block those to its right and below it; in the end those beside single patches.

import { pathData } from './geometry.js';

const seamsPerPath = 300;

// expanded are the numbers of a run-length list: how many to skip, how many to take, and so on.
function* expanded(runs = []) {
  let n = 0;
  for (let i = 0; i < runs.length; i += 2) {
    n += runs[i];
    for (const end = n + runs[i + 1]; n < end; n++) yield n;
  }
}

export class Highlight {
  constructor(model) {
    this.model = model;
    this.reset();
  }

  // reset is called when the blocks have changed.
  reset() {
    this.faces = null;
    this.seams = null;
  }

  // facePath is the path data of faces.
  facePath(runs) {
    if (!runs?.length || !this.model.shown) return '';
    this.faces ??= [...this.allFaces()];
    let d = '';
    for (const n of expanded(runs)) {
      const [item, face] = this.faces[n];
      d += pathData(item.look.template.faces[face], item.x, item.y);
    }
    return d;
  }

  // seamPaths are the path data of seams, a few hundred to a path: one path of very many
  // lines takes the browser many times as long to paint.
  seamPaths(runs) {
    if (!runs?.length || !this.model.shown) return [];
    this.seams ??= [...this.allSeams()];
    const paths = [];
    let i = 0;
    for (const n of expanded(runs)) {
      const [x1, y1, x2, y2] = this.seams[n];
      if (i++ % seamsPerPath === 0) paths.push('');
      paths[paths.length - 1] += `M${x1} ${y1}L${x2} ${y2}`;
    }
    return paths;
  }

  *items() {
    const { model } = this;
    for (let i = 0; i < model.cells.length; i++) if (model.cells[i] >= 0) yield model.item(i);
    yield* model.looseItems();
  }

  *allFaces() {
    for (const item of this.items()) for (let f = 0; f < item.look.template.faces.length; f++) yield [item, f];
  }

  *allSeams() {
    const { model } = this, s = model.loose.seams;
    for (const item of this.items()) {
      for (const [, , x1, y1, x2, y2] of item.look.template.inner) yield [item.x + x1, item.y + y1, item.x + x2, item.y + y2];
      if (item.number < model.cells.length) yield* this.seamsToNeighbors(item);
    }
    for (let i = 0; i < s.length; i += 9) yield s.slice(i + 4, i + 8);
  }

  *seamsToNeighbors({ number, look, x, y }) {
    for (const [below, next] of this.model.neighbors(number)) {
      for (const [, , x1, y1, x2, y2] of this.model.joinOf(look, next, below)) yield [x + x1, y + y1, x + x2, y + y2];
    }
  }
}
