// The quilt as the page holds it. Blocks that look alike are one "look": a template (outlines
// from the block's upper left corner, in ten-thousandths of an inch) with a fabric for each
// face. Path data are made a look at a time and put together a region of blocks at a time, so
// that a changed block costs its region and no more.

import { pathData, centroid, inscribedCircle } from './geometry.js';
import { colorwayName } from './compare.js';

const blocksPerRegion = 100; // about
const darkFabric = 0x63; // the gray below which seams are drawn light

export class Model {
  constructor() {
    this.colorway = null; // that the reader chose; null for the picture's own
    this.size = null; // likewise; the picture that has it is asked for
    this.shownSize = ''; // that the picture is in
    this.begun = ''; // that it is in where the reader chose none
    this.sizes = []; // { name, own }; none where there is no choice
    this.layoutTitle = '';
    this.revision = 0;
    this.instance = ''; // which run of the program counted the revision
    this.clear();
  }

  clear() {
    this.templates = [];
    this.looks = [];
    this.joins = new Map();
    this.joinPaths = new Map();
    this.joinLines = new Map();
    this.dark = []; // by fabric, for the lines that are made
    this.cells = [];
    this.quilt = null;
    this.fabrics = []; // as they are shown
    this.sent = []; // as the picture has them
    this.colorways = []; // { name, title, fabrics }, the first as the quilt is written; none where there is no choice
    this.worn = ''; // the colorway that the picture is in
    this.grid = { x: [0], y: [0] };
    this.loose = { patches: [], seams: [] };
    this.sources = { rows: [], cells: [], kinds: [] };
    this.regions = []; // paths, by region
    this.lines = []; // likewise
  }

  get shown() { return this.quilt !== null; }

  // apply adds a message to the model and says what has changed: "regions" whose paths differ, or
  // all of them if "anew"; "colours" of fabrics; "cells" with another look, as [cell, old look].
  apply(m) {
    const change = { applied: false, anew: false, regions: new Set(), colours: [], cells: [], fabrics: false };
    const size = m.size ?? '';
    this.sizes = m.sizes ?? [];
    this.begun = m.begun ?? '';
    if (!m.picture || m.picture === this.revision && m.instance === this.instance && size === this.shownSize) return change;
    this.shownSize = size;
    this.layoutTitle = m.plain ?? '';
    if (m.base === 0 || m.base !== this.revision) {
      if (m.base !== 0) throw new Error('the message adds to a picture that is not here');
      const old = this.fabrics;
      this.clear();
      this.fabrics = old;
      change.anew = true;
    }
    change.applied = true;
    this.receive(m, change);
    this.revision = m.picture;
    this.instance = m.instance;
    return change;
  }

  receive(m, change) {
    for (const t of m.templates ?? []) this.templates.push(prepareTemplate(t));
    for (const l of m.looks ?? []) this.looks.push({ template: this.templates[l[0]], number: l[0], fabrics: l.slice(1) });
    for (const j of m.joins ?? []) this.joins.set(`${j.a}/${j.b}/${j.below}`, j.stretches);
    if (m.quilt) this.quilt = m.quilt;
    if (m.sources) this.sources = m.sources;
    if (m.fabrics) this.sent = m.fabrics;
    if (m.colorways) this.colorways = m.colorways;
    this.worn = m.colorway ?? '';
    if (m.fabrics || m.colorways) this.receiveFabrics([...this.fabricsIn(this.colorway)], change);
    if (m.grid) { this.grid = m.grid; change.anew = true; }
    if (m.cells) this.receiveCells(m.cells, change);
    for (let i = 0; i < (m.changed?.length ?? 0); i += 2) this.setCell(m.changed[i], m.changed[i + 1], change);
    if (m.loose) { this.loose = m.loose; change.regions.add(this.looseRegion()); }
    for (const made of [this.regions, this.lines]) {
      if (change.anew) made.length = 0;
      for (const r of change.regions) made[r] = undefined;
    }
  }

  receiveFabrics(list, change) {
    const old = this.fabrics;
    list.forEach((f, i) => {
      if (old[i]?.colour !== f.colour) change.colours.push(i);
    });
    if (old.length !== list.length) change.anew = true;
    this.fabrics = list;
    this.forgetLines();
    change.fabrics = true;
  }

  // found is a colorway of the layout; none for null, or one that the layout lacks.
  found(colorway) { return this.colorways.find((c) => c.name === colorway); }

  // fabricsIn are the fabrics in a colorway, and the picture's own where there is none of that name.
  fabricsIn(colorway) { return (colorway !== this.worn && this.found(colorway)?.fabrics) || this.sent; }

  // shownIn is the name of the colorway that is shown for one that was chosen.
  shownIn(colorway) { return this.found(colorway)?.name ?? this.worn; }

  // title is the quilt's, in the colorway that is shown.
  get title() { return this.found(this.shownIn(this.colorway))?.title ?? this.quilt?.title ?? ''; }

  // plainTitle is the quilt's, whatever its colorway and its size.
  get plainTitle() { return this.layoutTitle || (this.found('')?.title ?? this.quilt?.title ?? ''); }

  // hasSize says whether the layout has a size; it has its own.
  hasSize(name) { return name === '' || this.sizes.some((s) => s.name === name); }

  // sizeName is how the size that is shown is called: '' where it has no name.
  get sizeName() { return this.shownSize || (this.sizes.find((s) => s.own)?.name ?? ''); }

  // have is the revision of the picture that is here, 0 where it is not in the size that is wanted.
  get have() { return (this.size ?? this.begun) === this.shownSize ? this.revision : 0; }

  // sizeQuery is what addresses go on with for the size.
  get sizeQuery() { return this.size === null ? '' : `&size=${encodeURIComponent(this.size)}`; }

  // wear shows the quilt in a colorway, null for the picture's own, and says which fabrics change.
  wear(colorway) {
    this.colorway = colorway;
    const change = { colours: [] };
    this.receiveFabrics([...this.fabricsIn(colorway)], change);
    return { anew: false, regions: new Set(), colours: change.colours };
  }

  // query is what addresses go on with for what is shown.
  get query() { return this.queryIn(this.colorway); }

  // queryIn is the same for another colorway.
  queryIn(colorway) { return this.sizeQuery + (this.shownIn(colorway) === this.worn ? '' : `&colorway=${encodeURIComponent(colorway)}`); }

  // fileSuffix is what names of files go on with for what the reader chose.
  get fileSuffix() { return [this.size, this.shownIn(this.colorway) === this.worn ? '' : colorwayName(this.colorway)].filter(Boolean).map((s) => `-${s}`).join(''); }

  // recolour shows a fabric otherwise, as its color is tried.
  recolour(i, fabric) {
    this.fabrics[i] = fabric;
    this.forgetLines();
  }

  // forgetLines is called when colors have changed, on which it depends how lines are drawn, if others are dark now.
  forgetLines() {
    const dark = this.fabrics.map((f) => parseInt(f.grey.slice(1, 3), 16) < darkFabric);
    if (dark.length === this.dark.length && dark.every((v, i) => v === this.dark[i])) return;
    this.dark = dark;
    this.joinLines.clear();
    for (const look of this.looks) look.lines = undefined;
    this.lines = [];
  }

  receiveCells(cells, change) {
    if (change.anew || cells.length !== this.cells.length) {
      this.cells = cells;
      change.anew = true;
      return;
    }
    for (let i = 0; i < cells.length; i++) if (cells[i] !== this.cells[i]) this.setCell(i, cells[i], change);
  }

  setCell(i, look, change) {
    const { columns } = this.quilt;
    change.cells.push([i, this.cells[i]]);
    this.cells[i] = look;
    change.regions.add(this.region(i));
    if (i % columns > 0) change.regions.add(this.region(i - 1)); // their shared seams are drawn with it
    if (i >= columns) change.regions.add(this.region(i - columns));
  }

  // Regions are squares of blocks; the last one holds what keeps to no block.
  get regionSide() {
    const { columns, rows } = this.quilt;
    return Math.max(4, Math.ceil(Math.sqrt(blocksPerRegion)), Math.ceil(Math.sqrt(columns * rows / 400)));
  }
  get regionsAcross() { return Math.ceil(this.quilt.columns / this.regionSide); }
  looseRegion() { return this.regionsAcross * Math.ceil(this.quilt.rows / this.regionSide); }
  region(cell) {
    const side = this.regionSide, { columns } = this.quilt;
    return Math.floor(Math.floor(cell / columns) / side) * this.regionsAcross + Math.floor(cell % columns / side);
  }

  // paths are the path data of a region: by fabric what shows and what lies beneath the seams.
  paths(region) {
    return this.regions[region] ??= region === this.looseRegion() ? this.loosePaths() : this.blockPaths(region);
  }

  *cellsOf(region) {
    const side = this.regionSide, { columns, rows } = this.quilt;
    const x0 = region % this.regionsAcross * side, y0 = Math.floor(region / this.regionsAcross) * side;
    for (let y = y0; y < Math.min(rows, y0 + side); y++) {
      for (let x = x0; x < Math.min(columns, x0 + side); x++) yield y * columns + x;
    }
  }

  blockPaths(region) {
    const faces = [], beneath = [];
    const { columns, rows } = this.quilt, side = this.regionSide;
    for (const i of this.cellsOf(region)) {
      const look = this.cells[i];
      if (look < 0) continue;
      const cx = i % columns, cy = Math.floor(i / columns), at = this.corner(cx, cy);
      const made = this.lookPaths(this.looks[look]);
      append(faces, made.faces, at);
      append(beneath, made.beneath, at);
      if (cx + 1 < columns) append(beneath, this.pathsUnderJoin(look, this.cells[i + 1], 0, (cx + 1) % side === 0), at);
      if (cy + 1 < rows) append(beneath, this.pathsUnderJoin(look, this.cells[i + columns], 1, (cy + 1) % side === 0), at);
    }
    return { faces: joined(faces), beneath: joined(beneath) };
  }

  // corner is path data that goes to the upper left corner of a block.
  corner(cx, cy) { return `M${this.grid.x[cx]} ${this.grid.y[cy]}`; }

  // lookPaths are a look's paths from its own corner, made once.
  lookPaths(look) {
    if (look.paths) return look.paths;
    const { template: t, fabrics } = look, faces = new Path(), beneath = new Path();
    t.faces.forEach((face, n) => faces.add(fabrics[n], face));
    for (const [a, b, x1, y1, x2, y2] of t.inner) {
      if (fabrics[a] !== fabrics[b]) beneath.add(Math.max(fabrics[a], fabrics[b]), [x1, y1, ...t.centroids[b], x2, y2, ...t.centroids[a]]);
    }
    return look.paths = { faces: faces.list(), beneath: beneath.list() };
  }

  // pathsUnderJoin is what lies beneath the seams between two neighbors. At the edge of a region the
  // same fabric on both sides is two paths, and needs something beneath as well.
  pathsUnderJoin(a, b, below, edge) {
    if (b < 0) return [];
    const key = joinKey(a, b, below) * 2 + edge;
    let made = this.joinPaths.get(key);
    if (made) return made;
    const one = this.looks[a], other = this.looks[b], path = new Path();
    const dx = below ? 0 : this.side(), dy = below ? this.side() : 0;
    for (const [fa, fb, x1, y1, x2, y2] of this.joins.get(`${one.number}/${other.number}/${below}`) ?? []) {
      const f = one.fabrics[fa], g = other.fabrics[fb];
      if (f === g && !edge) continue;
      const [mx, my] = other.template.centroids[fb];
      path.add(Math.max(f, g), [x1, y1, mx + dx, my + dy, x2, y2, ...one.template.centroids[fa]]);
    }
    made = path.list();
    this.joinPaths.set(key, made);
    return made;
  }

  side() { return this.quilt.side; }

  loosePaths() {
    const faces = [], beneath = [];
    for (const item of this.looseItems()) {
      const made = this.lookPaths(item.look), at = `M${item.x} ${item.y}`;
      append(faces, made.faces, at);
      append(beneath, made.beneath, at);
    }
    const s = this.loose.seams;
    for (let i = 0; i < s.length; i += 9) {
      const a = this.item(s[i]), b = this.item(s[i + 2]), ends = s.slice(i + 4, i + 8), path = new Path();
      const f = a.look.fabrics[s[i + 1]], g = b.look.fabrics[s[i + 3]];
      if (f === g && Math.min(a.number, b.number) >= this.cells.length) continue; // one path: nothing shows between
      path.add(Math.max(f, g), [ends[0], ends[1], ...this.reach(b, s[i + 3], ends), ends[2], ends[3], ...this.reach(a, s[i + 1], ends)]);
      append(beneath, path.list(), 'M0 0');
    }
    return { faces: joined(faces), beneath: joined(beneath) };
  }

  // reach is how far into a face the shape under a seam goes: to the middle of a block's, and
  // straight in from the seam's middle where a face may be a long strip.
  reach(item, face, [x1, y1, x2, y2]) {
    const t = item.look.template, [mx, my] = t.centroids[face];
    if (item.number < this.cells.length) return [item.x + mx, item.y + my];
    const radius = (t.radii ??= t.faces.map((f) => inscribedCircle(f).radius))[face];
    const x = (x1 + x2) / 2, y = (y1 + y2) / 2, length = Math.hypot(x2 - x1, y2 - y1), by = Math.min(radius, length / 2) / length;
    const inwards = Math.sign((x2 - x1) * (item.y + my - y) - (y2 - y1) * (item.x + mx - x));
    return [Math.round(x - inwards * (y2 - y1) * by), Math.round(y + inwards * (x2 - x1) * by)];
  }

  // faceCount is how many faces the quilt has.
  faceCount() {
    if (this.counted?.of !== this.revision) {
      let count = 0;
      for (const look of this.cells) if (look >= 0) count += this.looks[look].fabrics.length;
      for (const item of this.looseItems()) count += item.look.fabrics.length;
      this.counted = { of: this.revision, count };
    }
    return this.counted.count;
  }

  looseCount() { return this.loose.patches.length / 6; }

  // borderCount is how many borders the quilt has.
  borderCount() {
    let count = 0;
    for (let i = 4; i < this.loose.patches.length; i += 6) count = Math.max(count, this.loose.patches[i] + 1);
    return count;
  }

  // item is a cell, or, behind the last cell, a patch that stands for itself.
  item(number) {
    const { columns } = this.quilt, cells = this.cells.length;
    if (number < cells) {
      const cx = number % columns, cy = Math.floor(number / columns);
      return { number, look: this.looks[this.cells[number]], x: this.grid.x[cx], y: this.grid.y[cy], cell: number, border: -1, line: 0 };
    }
    const p = this.loose.patches, i = (number - cells) * 6;
    return { number, x: p[i], y: p[i + 1], look: this.looks[p[i + 2]], cell: p[i + 3], border: p[i + 4], line: p[i + 5] };
  }

  *looseItems() {
    for (let i = 0; i < this.looseCount(); i++) yield this.item(this.cells.length + i);
  }

  // seamPaths are all seams as lines, those of strip sets apart, and of both apart those between
  // two dark fabrics; made when they are asked for, and anew for other colors.
  seamPaths(region) {
    const made = this.lines[region];
    if (made) return made;
    const lists = [];
    if (region === this.looseRegion()) {
      const s = this.loose.seams, lines = new Lines(this.dark);
      for (let i = 0; i < s.length; i += 9) {
        const f = this.item(s[i]).look.fabrics[s[i + 1]], g = this.item(s[i + 2]).look.fabrics[s[i + 3]];
        lines.add(s[i + 8], f, g, s[i + 4], s[i + 5], s[i + 6], s[i + 7]);
      }
      append(lists, lines.list(), 'M0 0');
      for (const item of this.looseItems()) append(lists, this.lookLines(item.look), `M${item.x} ${item.y}`);
    } else {
      this.blockSeams(region, lists);
    }
    const [seams = '', strips = '', darkSeams = '', darkStrips = ''] = joined(lists);
    return this.lines[region] = { seams, strips, darkSeams, darkStrips };
  }

  // lookLines are the seams within a look, from its own corner.
  lookLines(look) {
    if (look.lines) return look.lines;
    const lines = new Lines(this.dark);
    for (const [a, b, x1, y1, x2, y2, strip] of look.template.inner) lines.add(strip, look.fabrics[a], look.fabrics[b], x1, y1, x2, y2);
    return look.lines = lines.list();
  }

  // linesOfJoin are the seams between two neighbors, from the corner of the first.
  linesOfJoin(a, b, below) {
    const key = joinKey(a, b, below);
    let made = this.joinLines.get(key);
    if (made) return made;
    const one = this.looks[a], other = this.looks[b], lines = new Lines(this.dark);
    for (const [fa, fb, x1, y1, x2, y2] of this.joins.get(`${one.number}/${other.number}/${below}`) ?? []) lines.add(0, one.fabrics[fa], other.fabrics[fb], x1, y1, x2, y2);
    made = lines.list();
    this.joinLines.set(key, made);
    return made;
  }

  blockSeams(region, lists) {
    const { columns } = this.quilt;
    for (const i of this.cellsOf(region)) {
      if (this.cells[i] < 0) continue;
      const at = this.corner(i % columns, Math.floor(i / columns));
      append(lists, this.lookLines(this.looks[this.cells[i]]), at);
      for (const [below, next] of this.neighbors(i)) append(lists, this.linesOfJoin(this.cells[i], this.cells[next], below), at);
    }
  }

  // neighbors are the blocks to the right of a block and below it: 0 or 1 for below, and the
  // cell.
  neighbors(cell) {
    const { columns } = this.quilt, list = [];
    if (cell % columns + 1 < columns && this.cells[cell + 1] >= 0) list.push([0, cell + 1]);
    if (this.cells[cell + columns] >= 0) list.push([1, cell + columns]);
    return list;
  }

  joinOf(look, next, below) {
    return this.joins.get(`${look.number}/${this.looks[this.cells[next]].number}/${below}`) ?? [];
  }

  // outlinePath is the outline of every patch of a region, for the line view.
  outlinePath(region) {
    const made = this.paths(region);
    if (made.outlines !== undefined) return made.outlines;
    const list = [];
    const add = ({ look, x, y }) => {
      look.template.outlines ??= outlinesOfPatches(look.template);
      append(list, look.template.outlines, `M${x} ${y}`);
    };
    if (region === this.looseRegion()) for (const item of this.looseItems()) add(item);
    else for (const i of this.cellsOf(region)) if (this.cells[i] >= 0) add(this.item(i));
    return made.outlines = joined(list)[0] ?? '';
  }

  // ground is one shape of everything that is there.
  ground() {
    const rect = (x, y, u, v) => `M${x} ${y}H${u}V${v}H${x}Z`;
    const { width, height, holes, columns, side } = this.quilt, { x, y } = this.grid;
    if (!holes) return rect(0, 0, width, height);
    let d = '';
    this.cells.forEach((look, i) => {
      const cx = i % columns, cy = Math.floor(i / columns);
      if (look >= 0) d += rect(x[cx], y[cy], x[cx] + side, y[cy] + side);
    });
    for (const item of this.looseItems()) for (const face of item.look.template.faces) d += pathData(face, item.x, item.y);
    return d;
  }

  // mainFabric is the fabric that covers most of the top.
  mainFabric() {
    let best = 0;
    this.fabrics.forEach((f, i) => { if (f.share > this.fabrics[best].share) best = i; });
    return best;
  }
}

// Path data are put together of parts by fabric, each told from the corner of its block. They are kept in lists until a region is
// whole: texts that grow part by part would take the browser as much time to clear away as all else.

// append adds parts, [fabric, path data], that begin at a corner.
function append(lists, parts, at) {
  for (const [fabric, data] of parts) (lists[fabric] ??= []).push(at, data);
}

function joined(lists) { return lists.map((list) => list.join('')); }

// joinKey is a number for two looks side by side, or one above the other.
function joinKey(a, b, below) { return (a * 0x1000000 + b) * 2 + below; }

// Path gathers outlines by fabric, each told from where the one before it began.
class Path {
  constructor() { this.of = new Map(); }

  add(fabric, points) {
    let p = this.of.get(fabric);
    if (!p) this.of.set(fabric, p = { data: '', x: 0, y: 0 });
    p.data += `m${points[0] - p.x} ${points[1] - p.y}`;
    [p.x, p.y] = points;
    for (let i = 2; i < points.length; i += 2) p.data += `l${points[i] - points[i - 2]} ${points[i + 1] - points[i - 1]}`;
    p.data += 'z';
  }

  list() { return [...this.of].map(([fabric, p]) => [fabric, p.data]); }
}

// Lines gathers seams by how they are drawn: 1 more for those of strip sets, 2 for those between two dark fabrics.
class Lines {
  constructor(dark) {
    this.dark = dark;
    this.of = new Map();
  }

  add(strip, f, g, x1, y1, x2, y2) {
    const how = strip + (this.dark[f] && this.dark[g] ? 2 : 0);
    let p = this.of.get(how);
    if (!p) this.of.set(how, p = { data: '', x: 0, y: 0 });
    p.data += `m${x1 - p.x} ${y1 - p.y}l${x2 - x1} ${y2 - y1}`;
    [p.x, p.y] = [x2, y2];
  }

  list() { return [...this.of].map(([how, p]) => [how, p.data]); }
}

// prepareTemplate adds to a template what the page works out: centroids of faces, and each patch's
// faces.
function prepareTemplate(t) {
  t.inner ??= [];
  t.centroids = t.faces.map(centroid);
  let first = 0;
  for (const p of t.patches) {
    p.first = first;
    first += p.count;
  }
  return t;
}

// outlinesOfPatches is a template's patches without the seams of strip sets.
function outlinesOfPatches(t) {
  const path = new Path();
  for (const p of t.patches) path.add(0, patchOutline(t, p));
  return path.list();
}

// patchOutline is a patch's own outline: of a strip-set wedge, the tip of its last band and
// the wide end of its first.
export function patchOutline(t, p) {
  if (p.count === 1) return t.faces[p.first];
  const wide = t.faces[p.first], tip = t.faces[p.first + p.count - 1];
  return [tip[0], tip[1], wide[2], wide[3], wide[4], wide[5]];
}
