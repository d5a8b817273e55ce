// Which patch lies at a place, found from the outlines and not from the document; what is found of it.

import { patchOutline } from './model.js';
import { pathData } from './geometry.js';

// patchAt is the patch at a place of the quilt, in units, or null.
export function patchAt(model, x, y) {
  if (!model.shown) return null;
  const { columns, rows } = model.quilt;
  const cx = interval(model.grid.x, x), cy = interval(model.grid.y, y);
  if (cx >= 0 && cy >= 0 && cx < columns && cy < rows && model.cells[cy * columns + cx] >= 0) {
    const found = patchOfItem(model.item(cy * columns + cx), x, y);
    if (found) return found;
  }
  for (const item of model.looseItems()) {
    const found = patchOfItem(item, x, y);
    if (found) return found;
  }
  return null;
}

// interval is the number of the gap between grid lines that holds v, -1 for none.
function interval(lines, v) {
  const last = lines.length - 1;
  if (v < lines[0] || v > lines[last]) return -1;
  const guess = Math.min(last - 1, Math.floor((v - lines[0]) / (lines[last] - lines[0]) * last));
  if (v < lines[guess]) return guess - 1;
  if (v > lines[guess + 1]) return guess + 1;
  return guess;
}

function patchOfItem(item, x, y) {
  const t = item.look.template;
  for (let n = 0; n < t.patches.length; n++) {
    if (contains(patchOutline(t, t.patches[n]), x - item.x, y - item.y)) return { item: item.number, patch: n };
  }
  return null;
}

// contains says whether a place lies in a convex outline, clockwise on screen, or on its edge;
// a unit off counts as on it, since outlines are rounded to units.
function contains(p, x, y) {
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length;
    const dx = p[j] - p[i], dy = p[j + 1] - p[i + 1];
    if (dx * (y - p[i + 1]) - dy * (x - p[i]) < -(Math.abs(dx) + Math.abs(dy))) return false;
  }
  return true;
}

// outlineOf is the path data of a patch.
export function outlineOf(model, at) {
  const item = model.item(at.item), t = item.look.template;
  return pathData(patchOutline(t, t.patches[at.patch]), item.x, item.y);
}

// centerOf is a place inside a patch.
export function centerOf(model, at) {
  const item = model.item(at.item), t = item.look.template, p = patchOutline(t, t.patches[at.patch]);
  let x = 0, y = 0;
  for (let i = 0; i < p.length; i += 2) { x += p[i]; y += p[i + 1]; }
  return [item.x + x / (p.length / 2), item.y + y / (p.length / 2)];
}

// exists says whether a patch that was pointed at is still there.
export function exists(model, at) {
  if (!at || !model.shown || at.item >= model.cells.length + model.looseCount()) return false;
  if (at.item < model.cells.length && model.cells[at.item] < 0) return false;
  return at.patch < model.item(at.item).look.template.patches.length;
}

// neighborOf is the next patch in a direction, or the patch itself where there is none.
export function neighborOf(model, at, dx, dy) {
  const [x, y] = centerOf(model, at), by = model.side() / 40;
  const reach = Math.hypot(model.quilt.width, model.quilt.height) / by;
  for (let n = 1; n < reach; n++) {
    const next = patchAt(model, x + dx * by * n, y + dy * by * n);
    if (next && (next.item !== at.item || next.patch !== at.patch)) return next;
  }
  return at;
}

// factsOf is what the page shows of a patch.
export function factsOf(model, at) {
  const item = model.item(at.item), t = item.look.template, p = t.patches[at.patch];
  const fabrics = item.look.fabrics.slice(p.first, p.first + p.count).map((f) => model.fabrics[f]);
  const facts = { fabrics, number: p.count > 1 ? -1 : item.look.fabrics[p.first], shape: p.shape, role: p.role, finished: p.finished, cut: p.cut, line: item.line, label: '', border: item.border };
  if (item.cell >= 0) {
    const { columns } = model.quilt, row = Math.floor(item.cell / columns);
    const kind = model.sources.kinds[model.sources.cells[item.cell]];
    facts.place = `row ${row + 1}, column ${item.cell % columns + 1}`;
    if (kind) Object.assign(facts, { block: `${kind.label}, ${kind.kind}`, label: kind.label });
    if (item.number < model.cells.length) facts.line = kind?.lines[at.patch] ?? 0;
    facts.row = model.sources.rows[row] ?? 0;
  } else {
    facts.place = item.border < 0 ? 'between the blocks' : model.borderCount() > 1 ? `border ${item.border + 1}, from the inside out` : 'border';
  }
  return facts;
}
