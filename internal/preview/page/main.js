// The page: what is shown, and what the hands do to it.

import { Model } from './model.js';
import { closed, roomiest } from './outline.js';
import { Drawing } from './draw.js';
import { Camera } from './camera.js';
import { Link } from './link.js';
import { Hands } from './hands.js';
import { patchAt, outlineOf, middleOf, exists, step, facts } from './point.js';
import { byId, showPatch, showFabrics, showFaults, showTitle, showLine, showKeys, spoken } from './panel.js';
import { views, legend } from './views.js';
import { Lights } from './lights.js';
import { Study } from './studies.js';
import { ReportPanel } from './report.js';

const model = new Model();
const tabs = [...byId('report-tabs').children];
const camera = new Camera();
const shown = { view: 'colour', second: 'value', seams: false, two: false, folded: false, keys: false, report: false, tab: 0, alone: -1 };
let panes = [];
let message = null; // the newest
let line = 'open';
let pointed = null; // patch
let pinned = null; // patch
let changed = { d: '', fabrics: [] }; // by the last save

// remembered over a reload of this tab
const memory = 'eighthturn';
function remember() {
  const { view, second, seams, two, report, tab } = shown;
  try {
    sessionStorage.setItem(memory, JSON.stringify({ view, second, seams, two, report, tab, camera: camera.kept }));
  } catch { /* a browser may keep nothing */ }
}
function recall() {
  try {
    const kept = JSON.parse(sessionStorage.getItem(memory)) ?? {};
    for (const key of ['view', 'second']) if (Object.hasOwn(views, kept[key])) shown[key] = kept[key];
    for (const key of ['seams', 'two', 'report']) shown[key] = kept[key] === true;
    if (kept.tab in tabs) shown.tab = kept.tab;
    camera.kept = kept.camera;
  } catch { /* nothing is remembered, then */ }
}

// ---- the picture

function setPanes() {
  const wanted = shown.two ? 2 : 1;
  while (panes.length > wanted) {
    const gone = panes.pop();
    size.unobserve(gone.box);
    gone.box.remove();
  }
  while (panes.length < wanted) {
    const drawing = new Drawing(model), box = document.createElement('figure');
    const caption = document.createElement('figcaption');
    box.className = 'pane';
    box.tabIndex = 0;
    box.append(drawing.svg, drawing.over, caption);
    byId('panes').append(box);
    panes.push({ drawing, box, caption });
    hands.hold(box);
    size.observe(box);
    drawing.update({ anew: true, regions: new Set(), colours: [] });
  }
  panes.forEach(({ drawing, box, caption }, i) => {
    const view = i === 0 ? shown.view : shown.second;
    drawing.show(view, shown.seams);
    drawing.alone(shown.alone);
    box.setAttribute('aria-label', `Quilt in ${view}. Arrow keys go from patch to patch.`);
  });
  for (const button of document.querySelectorAll('[data-do]')) {
    const name = button.dataset.do;
    const on = Object.hasOwn(views, name) ? shown.view === name : { seams: shown.seams, two: shown.two }[name];
    if (on !== undefined) button.setAttribute('aria-pressed', String(on));
  }
  byId('save').href = `/picture.svg?view=${shown.view}${shown.seams ? '&seams=1' : ''}`;
  byId('save').download = `${(message?.file ?? 'quilt').replace(/\.[^.]*$/, '')}-${shown.view}.svg`;
  showStudies();
  renewStudies();
  aim();
  remember();
}

let aimed = 0;
// aim moves the drawings to where the camera stands, once a frame.
function aim() {
  aimed ||= requestAnimationFrame(aimNow);
}
function aimNow() {
  cancelAnimationFrame(aimed);
  aimed = 0;
  if (!model.shown || !panes.length) return;
  if (printing || !camera.width || !camera.height) return;
  camera.fit(model);
  for (const { drawing } of panes) drawing.place(...camera.offset, camera.scale);
  clearTimeout(settled);
  settled = setTimeout(settle, 120);
}
let settled = 0;
function settle() {
  remember();
  writeLetters();
}

// writeLetters writes the letters of the roles where they are large enough to be read.
function writeLetters() {
  const lined = panes.filter((p) => p.drawing.view === 'line');
  if (!lined.length || !model.shown) return;
  const bySize = new Map(), least = 5 / camera.scale, [x0, y0] = camera.toQuilt(0, 0), [x1, y1] = camera.toQuilt(camera.width, camera.height);
  let room = 6000;
  const write = (item) => {
    const t = item.look.template;
    for (const p of t.patches) {
      p.room ??= roomiest(patchOutlineOf(t, p));
      const size = Math.min(Math.round(p.room.room * 0.9), 8000), x = item.x + p.room.x, y = item.y + p.room.y + size * 0.36;
      if (size < least || x < x0 || x > x1 || y < y0 || y > y1 || room-- <= 0) continue;
      let all = bySize.get(size);
      if (!all) bySize.set(size, all = { letters: [], x: [], y: [] });
      all.letters.push(p.letter);
      all.x.push(Math.round(x));
      all.y.push(Math.round(y));
    }
  };
  model.cells.forEach((look, i) => { if (look >= 0) write(model.item(i)); });
  for (const item of model.looseItems()) write(item);
  for (const { drawing } of lined) drawing.letterText(bySize);
}
function patchOutlineOf(t, p) {
  return p.count === 1 ? t.faces[p.first] : [...t.faces[p.first + p.count - 1].slice(0, 2), ...t.faces[p.first].slice(2, 6)];
}

// The size of a pane is kept, since to ask for it would lay the page out in mid-change.
const size = new ResizeObserver(([e]) => {
  camera.width = e.contentRect.width;
  camera.height = e.contentRect.height;
  aimNow();
});

// ---- the patch under the pointer

function point(at) {
  pointed = at;
  showPointed();
}
function showPointed() {
  if (pinned && !exists(model, pinned)) pinned = null;
  if (pointed && !exists(model, pointed)) pointed = null;
  const at = pinned ?? pointed, outline = (pinned ? outlineOf(model, pinned) : '') + (pointed ? outlineOf(model, pointed) : '');
  for (const { drawing } of panes) drawing.outline(outline);
  showPatch(at ? facts(model, at) : null, pinned !== null);
}
function pin(at) {
  const same = at && pinned && at.item === pinned.item && at.patch === pinned.patch;
  pinned = same ? null : at;
  showPointed();
  if (pinned) say(`held: ${spoken(facts(model, pinned))}`);
}
function walk(dx, dy) {
  if (!model.shown) return;
  const from = pointed ?? pinned;
  const at = from && exists(model, from) ? step(model, from, dx, dy) : patchAt(model, ...camera.toQuilt(camera.width / 2, camera.height / 2)) ?? patchAt(model, 1, 1);
  if (!at) return;
  const middle = middleOf(model, at);
  camera.reveal(...middle);
  aim();
  hands.at = camera.toWindow(...middle);
  point(at);
  say(spoken(facts(model, at)));
}
function say(text) { byId('said').textContent = text; }

// ---- what the program works out of the picture

const lights = new Lights(model);
const studied = { values: null, url: null }; // of the picture that is shown; null for not yet
const sees = (view) => panes.some(({ drawing }) => drawing.view === view);
const panel = new ReportPanel({
  light, say,
  chose: (tab) => { shown.tab = tab; renewStudies(); remember(); },
  opened: () => diagram.renew(),
});

// A report for each tab; the first one has the marks of a view, too.
const reports = tabs.map((_, tab) => {
  const study = new Study(model, `/report?tab=${tab}`, {
    wanted: () => shown.report && shown.tab === tab || tab === 0 && sees('vanishing'),
    read: async (answer) => {
      const letter = await answer.json();
      study.key = letter.key;
      return study.last = letter.report ?? study.last;
    },
    show: (report) => {
      panel.show(tab, report);
      if (tab !== 0) return;
      studied.values = report;
      showStudies();
    },
  });
  return study;
});

const diagram = new Study(model, () => panel.diagramPath, {
  wanted: () => shown.report && panel.wantsDiagram,
  read: (answer) => answer.json(),
  show: (drawn) => panel.showDiagram(drawn),
});

const squint = new Study(model, '/squint.png', {
  wanted: () => sees('squint'),
  read: async (answer) => {
    const url = URL.createObjectURL(await answer.blob()), image = new Image();
    image.src = url;
    await image.decode();
    return url;
  },
  show: (url) => {
    const old = studied.url;
    studied.url = url;
    showStudies();
    if (old) URL.revokeObjectURL(old);
  },
  drop: (url) => URL.revokeObjectURL(url),
});

function renewStudies() {
  for (const study of [...reports, diagram, squint]) study.renew();
}

// showStudies lays over the drawings what was worked out for their views.
function showStudies() {
  const marks = studied.values && (studied.values.marks ?? []).map((m) => ({ ...m, seams: studied.values.lit?.[m.lit]?.seams }));
  for (const { drawing, caption } of panes) {
    drawing.squinted(studied.url);
    drawing.marked(drawing.view === 'vanishing' && marks ? marks.map(({ heavy, seams }) => ({ heavy, paths: lights.seamPaths(seams) })) : []);
    caption.replaceChildren(...legend(drawing.view, { sheet: model.sheet, marks, squinted: studied.url !== null, alone: !shown.two }));
  }
}

function light(lit) {
  const faces = lights.facePath(lit?.faces), seams = lights.seamPaths(lit?.seams);
  for (const { drawing } of panes) drawing.light(faces, seams);
}

function showReport() {
  byId('report').hidden = !shown.report;
  document.documentElement.classList.toggle('reporting', shown.report);
  document.querySelector('[data-do=report]').setAttribute('aria-expanded', String(shown.report));
  if (!shown.report) panel.letGo();
  renewStudies();
  remember();
}

// ---- what buttons and keys do

const zoomed = 1.25;
const deeds = {
  ...Object.fromEntries(Object.keys(views).map((view) => [view, () => { shown.view = view; setPanes(); }])),
  report: () => { shown.report = !shown.report; showReport(); },
  seams: () => { shown.seams = !shown.seams; setPanes(); },
  two: () => { shown.two = !shown.two; setPanes(); },
  nearer: () => zoom(zoomed),
  farther: () => zoom(1 / zoomed),
  whole: () => { if (model.shown) camera.whole(); aim(); },
  changes: flash,
  faults: () => { shown.folded = !shown.folded; if (message) showFaults(message, shown.folded); },
  keys: () => {
    shown.keys = !shown.keys;
    showKeys(shown.keys);
    document.querySelector('[data-do=keys]').setAttribute('aria-expanded', String(shown.keys));
  },
};
function zoom(factor) {
  if (!model.shown) return;
  const [x, y] = hands.at ?? [camera.width / 2, camera.height / 2];
  camera.nearer(factor, x, y);
  aim();
}
function second(view) {
  shown.second = view;
  shown.two = true;
  setPanes();
}
function flash() {
  for (const { drawing } of panes) drawing.pulse(changed.d, changed.fabrics);
}
function alone(fabric) {
  shown.alone = shown.alone === fabric ? -1 : fabric;
  for (const { drawing } of panes) drawing.alone(shown.alone);
  showFabrics(model.fabrics, shown.alone, alone);
}

const keyDeeds = {
  ...Object.fromEntries(Object.entries(views).flatMap(([view, key]) => [[key, deeds[view]], [key.toUpperCase(), () => second(view)]])),
  r: deeds.report, s: deeds.seams, b: deeds.two, w: deeds.whole, 0: deeds.whole,
  '+': deeds.nearer, '=': deeds.nearer, '-': deeds.farther, '−': deeds.farther, n: deeds.changes, f: deeds.faults, k: deeds.keys, '?': deeds.keys,
  Escape: () => { panel.letGo(); pinned = pointed = null; shown.alone = -1; if (shown.keys) deeds.keys(); if (model.shown) { alone(-1); showPointed(); } },
};
const ways = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
document.addEventListener('keydown', (e) => {
  if (e.ctrlKey || e.metaKey || e.altKey || e.target.closest('input, textarea')) return;
  const way = ways[e.key], onPicture = !e.target.closest('button, a, #faults-list, aside');
  if (way && onPicture) {
    if (e.shiftKey) { if (model.shown) camera.move(-way[0] * 60, -way[1] * 60); aim(); } else walk(...way);
  } else if (e.key === 'Enter' && onPicture) {
    if (pointed ?? pinned) pin(pointed ?? pinned);
  } else if (keyDeeds[e.key]) {
    keyDeeds[e.key]();
  } else {
    return;
  }
  e.preventDefault();
});
document.addEventListener('click', (e) => deeds[e.target.closest('[data-do]')?.dataset.do]?.());

const hands = new Hands({
  hover: (p) => point(p && patchAt(model, ...camera.toQuilt(...p))),
  click: (p) => pin(patchAt(model, ...camera.toQuilt(...p))),
  drag: (dx, dy) => { if (model.shown) camera.move(dx, dy); aim(); },
  zoom: (factor, p) => { if (model.shown) camera.nearer(factor, ...p); aim(); },
});

// ---- paper

let printing = false;
function print(on) {
  printing = on;
  for (const { drawing } of panes) drawing.whole(on);
  if (!on) aim();
}
addEventListener('beforeprint', () => print(true));
addEventListener('afterprint', () => print(false));

// ---- the file's news

function take(m, times) {
  if (message && m.layout !== message.layout) {
    link.leave();
    setLine(`This address now shows another layout, ${m.file}. Load the page again to see it.`);
    return;
  }
  if (message && m.assets !== message.assets) {
    remember();
    location.reload();
    return;
  }
  const first = !model.shown, change = model.apply(m);
  message = m;
  if (change.applied) {
    if (!first) changed = whatChanged(change);
    if (change.anew || change.regions.size) lights.forget();
    renewStudies(); // nothing of an older picture stays beside the new one
    for (const { drawing } of panes) drawing.update(change);
    if (change.anew) shown.alone = -1;
    if (change.fabrics || change.anew) showFabrics(model.fabrics, shown.alone, alone);
    if (change.anew) setPanes();
    aimNow(); // in this very frame, so that nothing jumps
    if (pinned || pointed) showPointed();
  }
  byId('waiting').hidden = model.shown || m.revision > 0;
  showFaults(m, shown.folded);
  showTitle(m, model.sheet, line);
  document.dispatchEvent(new CustomEvent('shown', { detail: { revision: m.revision, ...times, done: performance.now() } }));
}

// whatChanged is the path of the faces that changed, and the fabrics whose colour did.
function whatChanged(change) {
  if (change.anew) return { d: model.ground(), fabrics: [] };
  let d = '';
  for (const [cell, old] of change.cells) {
    if (model.cells[cell] < 0) continue;
    const { look, x, y } = model.item(cell), was = model.looks[old];
    look.template.faces.forEach((face, n) => {
      if (was?.template !== look.template || was.fabrics[n] !== look.fabrics[n]) d += closed(face, x, y);
    });
  }
  return { d, fabrics: change.colours };
}

function setLine(now) {
  line = now;
  showLine(line);
  document.documentElement.classList.toggle('away', line !== 'open');
  if (message) showTitle(message, model.sheet, line);
  if (line === 'open') renewStudies();
}

const link = new Link({ have: () => model.revision, take, tell: (now) => { if (now !== line) setLine(now); } });

recall();
panel.choose(shown.tab);
setPanes();
showReport();
showPatch(null, false);
link.check();
link.join();
