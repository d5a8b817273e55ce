// What a row of a report lights up. The program counts faces and seams in the order in which
// the page holds them: item by item its faces; item by item the seams within it, and of a
// block those to its right and below it; in the end those beside single patches.

import { closed } from './outline.js';

const aPath = 300; // seams

// counted are the numbers of a list of stretches: pass over so many, take so many, ….
function* counted(list = []) {
  let n = 0;
  for (let i = 0; i < list.length; i += 2) {
    n += list[i];
    for (const end = n + list[i + 1]; n < end; n++) yield n;
  }
}

export class Lights {
  constructor(model) {
    this.model = model;
    this.forget();
  }

  // forget is called when the blocks have changed.
  forget() {
    this.faces = null;
    this.seams = null;
  }

  // facePath is the path data of faces.
  facePath(list) {
    if (!list?.length || !this.model.shown) return '';
    this.faces ??= [...this.allFaces()];
    let d = '';
    for (const n of counted(list)) {
      const [item, face] = this.faces[n];
      d += closed(item.look.template.faces[face], item.x, item.y);
    }
    return d;
  }

  // seamPaths are the path data of seams, a few hundred to a path: one path of very many
  // lines takes the browser many times as long to paint.
  seamPaths(list) {
    if (!list?.length || !this.model.shown) return [];
    this.seams ??= [...this.allSeams()];
    const paths = [];
    let i = 0;
    for (const n of counted(list)) {
      const [x1, y1, x2, y2] = this.seams[n];
      if (i++ % aPath === 0) paths.push('');
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
      if (item.number < model.cells.length) yield* this.meetings(item);
    }
    for (let i = 0; i < s.length; i += 9) yield s.slice(i + 4, i + 8);
  }

  *meetings({ number, look, x, y }) {
    for (const [below, next] of this.model.neighbours(number)) {
      for (const [, , x1, y1, x2, y2] of this.model.joinOf(look, next, below)) yield [x + x1, y + y1, x + x2, y + y2];
    }
  }
}
