// The page: what is shown, and what pointer, buttons and keys do to it.

import { Model, patchOutline } from './model.js';
import { pathData, inscribedCircle } from './geometry.js';
import { Drawing } from './drawing.js';
import { Camera } from './camera.js';
import { Connection } from './connection.js';
import { Pointer } from './pointer.js';
import { patchAt, outlineOf, centerOf, exists, neighborOf, factsOf } from './patch.js';
import { byId } from './dom.js';
import { showPatch, spokenFacts, showFabrics, showKeys, paintFabric, fabricButton } from './sidebar.js';
import { ColorCard } from './color.js';
import { Prints, printedAs } from './prints.js';
import { Audition, untried } from './audition.js';
import { Laid } from './laid.js';
import { FussyCut } from './fussy.js';
import { Sizes } from './sizes.js';
import { Editing } from './edit.js';
import { TextPane } from './text.js';
import { isBlocking, showFaults, showTitle, showConnection } from './status.js';
import { views, viewName, titleOf, captionOf } from './views.js';
import { Highlight } from './highlight.js';
import { Resource, pictureCame } from './resource.js';
import { ReportPanel } from './report.js';
import { encode, decode, unlinked, History } from './link.js';
import { Slide } from './slide.js';
import { Edge, coverOf } from './edge.js';
import { copyText, showNote } from './copy.js';
import { followLines } from './line.js';
import { listenToFullScreen, toggleFullScreen, leaveFullScreen, isFullScreen } from './fullscreen.js';
import { showCompareMenu, showColorways, colorwayName } from './compare.js';
import { listenToSwitcher } from './switcher.js';
import { place, share } from './transport.js';

const model = new Model();
const tabs = [...byId('report-tabs').children];
const camera = new Camera();
const settings = { view: 'colour', secondView: 'value', seamsIn: ['colour'], prints: true, colorway: null, secondColorway: null, size: null, two: false, slide: false, split: 50, faultsFolded: null, keys: false, report: false, text: false, tab: 0, isolated: -1, panel: 0, sheet: 0 };
let panes = [];
let message = null; // the newest
let status = 'open'; // of the connection
let hovered = null; // patch
let pinned = null; // patch
let wasBlocked = false; // by errors
let lastChange = { d: '', fabrics: [] }; // what the last save changed

// remembered over a reload of this tab, and said in the address
const storageKey = `eighthturn${place}`;
function remember() {
  if (!begun) return;
  const { view, secondView, seamsIn, prints, colorway, secondColorway, size, two, slide, split, report, tab, panel, sheet } = settings, place = camera.saved;
  const compare = two ? slide ? 'slide' : 'beside' : '';
  address.write(encode({ view, secondView, seamsIn, colorway, secondColorway, size, compare, split, tab: report ? tab : -1, place: camera.linked, audition: auditionOpen() ? audition.state : untried() }, tabs));
  try {
    sessionStorage.setItem(storageKey, JSON.stringify({ view, secondView, seamsIn, prints, colorway, secondColorway, size, two, slide, split, report, tab, panel, sheet, camera: place, address: address.text }));
  } catch { /* a browser may keep nothing */ }
}
function restore() {
  if (address.text) adopt(decode(address.text, tabs));
  try {
    const saved = JSON.parse(sessionStorage.getItem(storageKey)) ?? {};
    for (const key of ['panel', 'sheet']) if (Number.isFinite(saved[key]) && saved[key] > 0) settings[key] = saved[key];
    if (address.text && saved.address !== address.text) return; // the page was opened by a link
    for (const key of ['view', 'secondView']) if (Object.hasOwn(views, saved[key])) settings[key] = saved[key];
    for (const key of ['colorway', 'secondColorway', 'size']) if (typeof saved[key] === 'string') settings[key] = saved[key];
    if (Array.isArray(saved.seamsIn)) settings.seamsIn = saved.seamsIn.filter((view) => Object.hasOwn(views, view));
    settings.prints = saved.prints !== false;
    for (const key of ['two', 'slide', 'report']) settings[key] = saved[key] === true;
    if (saved.split >= 0 && saved.split <= 100) settings.split = saved.split;
    if (saved.tab in tabs) settings.tab = saved.tab;
    camera.saved = saved.camera;
  } catch { /* nothing is remembered, then */ }
}
// adopt takes over what an address says.
function adopt({ view, secondView, seamsIn, colorway, secondColorway, size, compare, split, tab, place, audition: auditioned }) {
  Object.assign(settings, { view, secondView, seamsIn, colorway, secondColorway, size, split, two: compare !== '', slide: compare === 'slide', report: tab >= 0 });
  if (tab >= 0) settings.tab = tab;
  camera.linked = place;
  audition.letGo();
  Object.assign(audition.state, auditioned);
}
const address = new History((text) => {
  adopt(decode(text, tabs));
  panel.select(settings.tab);
  audition.showChoice();
  showReport();
  updatePanes();
  if (model.size !== settings.size) sizes.choose(settings.size);
});
let begun = false; // the page has been made up of what was remembered

// ---- the picture

function updatePanes() {
  const wanted = settings.two ? 2 : 1;
  while (panes.length > wanted) {
    const removed = panes.pop();
    sizeObserver.unobserve(removed.box);
    removed.box.remove();
  }
  while (panes.length < wanted) {
    const drawing = new Drawing(model), box = document.createElement('figure');
    const caption = document.createElement('figcaption');
    box.className = 'pane';
    box.tabIndex = 0;
    box.append(drawing.svg, drawing.quick.canvas, drawing.overlay, caption);
    byId('panes').append(box);
    panes.push({ drawing, box, caption });
    pointer.listen(box);
    sizeObserver.observe(box);
    drawing.update({ anew: true, regions: new Set(), colours: [] });
  }
  wear();
  panes.forEach(({ drawing, box, caption }, i) => {
    const view = i === 0 ? settings.view : secondShown();
    drawing.show(view, settings.seamsIn.includes(view));
    drawing.isolate(settings.isolated);
    box.setAttribute('aria-label', `Quilt in ${viewName(view)}. Arrow keys go from patch to patch.`);
  });
  for (const button of document.querySelectorAll('[data-action]')) {
    const name = button.dataset.action;
    const on = Object.hasOwn(views, name) ? settings.view === name : { seams: seamsShown(), prints: settings.prints, two: settings.two && !settings.slide, slide: settings.two && settings.slide }[name];
    if (on !== undefined) button.setAttribute('aria-pressed', String(on));
  }
  byId('view-name').textContent = titleOf(settings.view);
  for (const menu of document.querySelectorAll('.menu')) menu.classList.toggle('chosen', menu.querySelector('[aria-pressed=true]') !== null);
  showColorwayMenus();
  slide.show(settings.two && settings.slide, settings.split, viewName(settings.view), viewName(settings.secondView));
  arrangePanes();
  byId('save-picture').href = `picture.svg?view=${settings.view}${seamsShown() ? '&seams=1' : ''}${printsShown() && printedAs(settings.view) ? '&prints=1' : ''}${model.query}`;
  byId('save-picture').download = `${(message?.file ?? 'quilt').replace(/\.[^.]*$/, '')}${model.fileSuffix}-${viewName(settings.view)}.svg`;
  showResources();
  refreshResources();
  moveCamera();
  remember();
}

// wear shows the colorways that were chosen, in the first view and in the second.
function wear() {
  if (model.colorway !== settings.colorway) {
    card.close();
    audition.release();
    const change = model.wear(settings.colorway);
    fussy.dress();
    for (const { drawing } of panes) drawing.update(change);
    listFabrics();
    if (message) showTitle(message, model, status);
  }
  panes.forEach(({ drawing }, i) => drawing.wear(i === 1 && secondDiffers() ? model.fabricsIn(settings.secondColorway) : null));
}
// secondDiffers says whether the second view is in another colorway; what is worked out of the quilt for some views is not there for it.
function secondDiffers() { return settings.secondColorway !== null && model.shownIn(settings.secondColorway) !== model.shownIn(settings.colorway); }
function secondShown() { return secondDiffers() && ['squint', 'vanishing'].includes(settings.secondView) ? 'colour' : settings.secondView; }
function showColorwayMenus() {
  const shown = model.shownIn(settings.colorway);
  byId('colorways').hidden = model.colorways.length === 0;
  byId('colorway-name').textContent = colorwayName(shown);
  byId('colorway-name').parentElement.setAttribute('aria-label', `Colorway: ${colorwayName(shown)}`);
  showColorways(byId('colorway-items'), model.colorways, shown, (name) => showIn('colorway', name), colorwayName, 'Show the quilt in this colorway (O for the next)');
  sizes.showMenu();
  showCompareMenu(settings, showSecond, model.colorways, (name) => showIn('secondColorway', name));
}
// showIn shows the first view or the second in a colorway.
function showIn(which, name) {
  settings[which] = name;
  if (which === 'secondColorway') Object.assign(settings, { two: true, secondView: settings.view });
  openMenu(null);
  updatePanes();
}
// nextIn goes on to the next colorway.
function nextIn(which) {
  const names = model.colorways.map((c) => c.name);
  if (!names.length) return;
  const next = names[(names.indexOf(model.shownIn(settings[which] ?? settings.colorway)) + 1) % names.length];
  showIn(which, next);
  announce(`in ${colorwayName(next)}`);
}

// arrangePanes puts two views beside or above each other, whichever shows the quilt larger, or one over the other.
function arrangePanes() {
  byId('panes').classList.toggle('slide', settings.two && settings.slide);
  panes[1]?.box.setAttribute('tabindex', settings.slide ? '-1' : '0');
  byId('panes').classList.toggle('beside', settings.two && !settings.slide);
  const { width: w, height: h } = room, { width, height } = model.quilt ?? { width: 1, height: 1 };
  const stacked = panes.length > 1 && !settings.slide && Math.min(w / width, h / 2 / height) > Math.min(w / 2 / width, h / height);
  byId('panes').classList.toggle('stacked', stacked);
}

let cameraFrame = 0;
// moveCamera moves the drawings to where the camera stands, once a frame.
function moveCamera() {
  cameraFrame ||= requestAnimationFrame(moveCameraNow);
}
function moveCameraNow() {
  cancelAnimationFrame(cameraFrame);
  cameraFrame = 0;
  if (!model.shown || !panes.length) return;
  if (printing || !camera.width || !camera.height) return;
  camera.update(model);
  for (const { drawing } of panes) drawing.place(...camera.offset, camera.scale);
  clearTimeout(idleTimer);
  idleTimer = setTimeout(onIdle, 120);
}
let idleTimer = 0;
function onIdle() {
  remember();
  for (const p of prints.all) p.refresh(true); // as finely as it is looked at now
  writeLetters();
}

// writeLetters writes the letters of the roles where they are large enough to be read.
function writeLetters() {
  const lineDrawings = panes.filter((p) => p.drawing.view === 'line');
  if (!lineDrawings.length || !model.shown) return;
  const bySize = new Map(), minSize = 5 / camera.scale, [x0, y0] = camera.toQuilt(0, 0), [x1, y1] = camera.toQuilt(camera.width, camera.height);
  let budget = 6000; // letters
  const write = (item) => {
    const t = item.look.template;
    for (const p of t.patches) {
      p.circle ??= inscribedCircle(patchOutline(t, p));
      const size = Math.min(Math.round(p.circle.radius * 0.9), 8000), x = item.x + p.circle.x, y = item.y + p.circle.y + size * 0.36;
      if (size < minSize || x < x0 || x > x1 || y < y0 || y > y1 || budget-- <= 0) continue;
      let text = bySize.get(size);
      if (!text) bySize.set(size, text = { letters: [], x: [], y: [] });
      text.letters.push(p.letter);
      text.x.push(Math.round(x));
      text.y.push(Math.round(y));
    }
  };
  model.cells.forEach((look, i) => { if (look >= 0) write(model.item(i)); });
  for (const item of model.looseItems()) write(item);
  for (const { drawing } of lineDrawings) drawing.showLetters(bySize);
}

// The sizes of a pane and of the room for panes are kept, since to ask for them would lay the page out in mid-change.
const room = { width: 0, height: 0 };
new ResizeObserver(([{ contentRect: { width, height } }]) => {
  Object.assign(room, { width, height });
  arrangePanes();
}).observe(byId('panes'));
const sizeObserver = new ResizeObserver(([e]) => {
  const { width, height } = e.contentRect, other = width !== camera.width || height !== camera.height;
  camera.width = width;
  camera.height = height;
  for (const { drawing } of panes) drawing.quick.fit(width, height);
  coverPanes();
  if (other) camera.avoid(camera.cover);
  moveCameraNow();
});

// coverPanes tells how much of the picture the reports lie over, and where they would. Two views make room for them instead.
function coverPanes() {
  const beside = settings.two && !settings.slide, cover = coverOf(byId('panes').parentElement), style = byId('panes').parentElement.style;
  for (const side of ['right', 'bottom']) style.setProperty(`--cover-${side}`, `${cover[side]}px`);
  camera.cover = beside ? { right: 0, bottom: 0 } : cover;
  camera.reserve = beside ? 0 : edge.reserve;
}

// ---- the patch under the pointer

function hover(at) {
  hovered = at;
  showCurrentPatch();
}
function showCurrentPatch() {
  if (pinned && !exists(model, pinned)) pinned = null;
  if (hovered && !exists(model, hovered)) hovered = null;
  const at = pinned ?? hovered, cutFrom = pinned && factsOf(model, pinned).number, held = pinned, outline = (pinned ? outlineOf(model, pinned) : '') + (hovered ? outlineOf(model, hovered) : '');
  for (const { drawing } of panes) drawing.showOutline(outline);
  showPatch(at ? factsOf(model, at) : null, pinned !== null, at && placeBeside(at), model.fabrics[cutFrom]?.patterned && { text: 'Fussy cut', press: () => cut(cutFrom, held) });
}

// placeBeside is where the card of a patch stands in the picture: off its middle, so that the patch is seen.
function placeBeside(at) {
  const [x, y] = camera.toWindow(...centerOf(model, at)), reach = 18 + model.side() * camera.scale / 4;
  return { x, y, reach: Math.min(reach, 90), right: camera.cover.right };
}
function pin(at) {
  const same = at && pinned && at.item === pinned.item && at.patch === pinned.patch;
  pinned = same ? null : at;
  showCurrentPatch();
  if (pinned) announce(`held: ${spokenFacts(factsOf(model, pinned))}`);
  if (pinned && auditionOpen()) audition.choosePatch(factsOf(model, pinned));
}
function walk(dx, dy) {
  if (!model.shown) return;
  const from = hovered ?? pinned;
  const at = from && exists(model, from) ? neighborOf(model, from, dx, dy) : patchAt(model, ...camera.toQuilt(camera.width / 2, camera.height / 2)) ?? patchAt(model, 1, 1);
  if (!at) return;
  const center = centerOf(model, at);
  camera.reveal(...center);
  moveCamera();
  pointer.position = camera.toWindow(...center);
  hover(at);
  announce(spokenFacts(factsOf(model, at)));
}
function announce(text) { byId('announcement').textContent = text; }

// ---- a color that is tried

// paint shows a fabric in another color.
function paint(i, fabric) {
  model.recolour(i, fabric);
  for (const { drawing } of panes) drawing.fillFabrics();
  paintFabric(i, fabric);
  for (const p of [prints.own, prints.byValue.own]) if (p.url) p.refresh(true); // which cover the color that is tried
}
// painted is called when that is to be studied: seams are light between dark fabrics.
function painted(i) {
  for (const { drawing } of panes) drawing.update({ anew: false, regions: new Set(), colours: [i] });
  refreshResources(true);
}

const card = new ColorCard({
  model, paint,
  choose: () => painted(card.fabric),
  onClose: (fabric, why, { tried, hadFocus }) => {
    if (settings.isolated >= 0) isolate(-1);
    listFabrics();
    if (tried) painted(fabric);
    if (hadFocus) fabricButton(fabric)?.focus({ preventScroll: true });
    if (why) showNote(why);
  },
  isolate: (fabric) => isolate(fabric),
  onWrite: (fabric, color) => editing.act({ do: 'color', fabric, color, colorway: model.shownIn(model.colorway) }, ({ line }) => `Saved in line ${line}.`), // the picture that has it closes the card
  onCut: (fabric) => cut(fabric),
});

// ---- pieces that are cut from a print

const fussy = new FussyCut({
  model,
  write: (what, isNew) => editing.act({ do: 'motif', ...what }, ({ line }) => `Saved in line ${line}.${isNew ? ` Write ${what.motif} for the wedges of a block.` : ''}`),
  onClose: (fabric, hadFocus) => { if (hadFocus) fabricButton(fabric)?.focus({ preventScroll: true }); },
});
// cut opens the window on a fabric's print; patch is the one that is held, null for none.
function cut(fabric, patch = null) {
  card.close();
  pinned = null;
  showCurrentPatch();
  fussy.open(fabric, patch && patch.item < model.cells.length ? `&cell=${patch.item}&patch=${patch.patch}` : '');
}

// ---- writing to the file

const editing = new Editing();
const textPane = new TextPane({ editing, announce: showNote, fixOf, fileName: () => message.file });
editing.onWritten = (mark) => textPane.receive(mark);
// applyFix writes what the hint of a fault says to type.
function fixing() { return editing.allowed ? applyFix : null; }
function applyFix(fault) { editing.act({ do: 'hint', fault }, ({ line }) => `Line ${line} is fixed.`); }
// fixOf is what applies the hint of a fault in a line, null where there is none.
function fixOf(line) {
  const fault = message?.faults.findIndex((f) => f.line === line && f.fix) ?? -1;
  return fault >= 0 && fixing() ? () => applyFix(fault) : null;
}

// ---- alternatives that are auditioned

const audition = new Audition({
  model, announce, isOpen: auditionOpen, changed: remember,
  listed: (list) => panel.setReport(tabs.findIndex((tab) => 'own' in tab.dataset), list && { sections: [] }),
  show: (a, before) => {
    if (a) card.close();
    const of = a ?? before;
    if (of.try) paint(of.number, a ? { ...of.own, ...of.fabric } : of.own);
    if (of.try) painted(of.number);
    laid.refresh();
    showResources();
  },
  write: async (what) => {
    const reply = await editing.act({ do: 'audition', ...what, colorway: model.shownIn(model.colorway) }, ({ line }) => `Saved in line ${line}.`);
    if (!reply.why) audition.state.large = null; // the picture that has it lets it go
  },
});
function auditionOpen() { return settings.report && !settings.text && 'own' in (tabs[settings.tab]?.dataset ?? {}); }
const laid = new Laid(model, { panes: () => secondDiffers() ? panes.slice(0, 1) : panes, query: () => audition.laid });
// withTry adds to an address the color that is tried, where what is asked for depends on it.
function withTry(path, depends) {
  const tried = card.tried || audition.tried;
  return depends && tried ? `${path}&try=${tried}` : path;
}

function listFabrics() {
  showFabrics(model.fabrics, card.fabric, chooseFabric, pointAtFabric);
}
function chooseFabric(i) {
  if (card.fabric === i) {
    card.close();
    return;
  }
  pointAtFabric(-1);
  audition.letGo();
  fussy.close();
  card.open(i);
  listFabrics();
}
let pointTimer = 0;
// pointAtFabric shows where a fabric is while the pointer rests on it.
function pointAtFabric(i) {
  clearTimeout(pointTimer);
  if (card.isOpen) return;
  pointTimer = setTimeout(() => { for (const { drawing } of panes) drawing.isolate(i >= 0 ? i : settings.isolated); }, i >= 0 ? 180 : 0);
}

// ---- what the program works out of the picture

const highlight = new Highlight(model);
const loaded = { marked: null, squintURL: null }; // the report with marks and the squint of the picture that is shown; null for not yet
const isShown = (view) => panes.some(({ drawing }) => drawing.view === view);
const panel = new ReportPanel({
  highlight: showHighlight, announce,
  onSelect: (tab) => { settings.tab = tab; refreshResources(); remember(); },
  onDiagram: () => diagram.refresh(),
  savedAs: (address) => address.startsWith('save/picture') && printsShown() ? `${address}${address.includes('?') ? '&' : '?'}prints=1` : address,
});

// A report for each tab; one has the marks of a view, too.
const reports = tabs.map((button, tab) => {
  if ('own' in button.dataset) return audition.places;
  const hasMarks = 'marks' in button.dataset;
  const resource = new Resource(model, () => withTry(`report?tab=${tab}`, hasMarks), {
    wanted: () => settings.report && !settings.text && settings.tab === tab || hasMarks && isShown('vanishing'),
    parse: async (response) => {
      const reply = await response.json();
      resource.key = reply.key;
      return resource.last = reply.report ?? resource.last;
    },
    onChange: (report) => {
      panel.setReport(tab, report);
      if (!hasMarks) return;
      loaded.marked = report;
      showResources();
    },
  });
  return resource;
});

const diagram = new Resource(model, () => withTry(panel.diagramPath, 'marks' in (tabs[settings.tab]?.dataset ?? {})), {
  wanted: () => settings.report && !settings.text && panel.wantsDiagram,
  parse: (response) => response.json(),
  onChange: (content) => panel.showDiagram(content),
});

const squint = new Resource(model, () => withTry('squint.png?', true), {
  wanted: () => isShown('squint'),
  parse: async (response) => {
    const url = URL.createObjectURL(await response.blob()), image = new Image();
    image.src = url;
    await image.decode();
    return url;
  },
  onChange: (url) => {
    const old = loaded.squintURL;
    loaded.squintURL = url;
    showResources();
    if (old) URL.revokeObjectURL(old);
  },
  discard: (url) => URL.revokeObjectURL(url),
});

// Prints of the colorway that is shown, and of that in which the second view is where it is in one of its own.
const printsAs = (as) => ({
  own: new Prints(model, { as, panes: () => panes.map(({ drawing }) => drawing).filter((d) => !d.fabrics), on: () => settings.prints && !audition.laid && !card.tried, colorway: () => settings.colorway, camera }),
  second: new Prints(model, { as, panes: () => panes.map(({ drawing }) => drawing).filter((d) => d.fabrics), on: () => settings.prints, colorway: () => settings.secondColorway, camera }),
});
const prints = {
  ...printsAs('colour'), byValue: printsAs('value'),
  get all() { return [this.own, this.second, this.byValue.own, this.byValue.second]; },
  on(drawing) { return this.all.find((p) => p.wearing().includes(drawing))?.url ?? null; },
};
function printsShown() { return prints.own.there && settings.prints; }

function refreshResources(gently) {
  document.querySelector('[data-action=prints]').hidden = !prints.all.some((p) => p.there);
  for (const p of prints.all) p.refresh(gently);
  for (const resource of [...reports, diagram, squint, audition.studies]) resource.refresh(gently);
  laid.refresh();
  fussy.refresh();
}

// showResources lays over the drawings what was worked out for their views.
function showResources() {
  const marks = loaded.marked && (loaded.marked.marks ?? []).map((m) => ({ ...m, seams: loaded.marked.highlights?.[m.highlight]?.seams }));
  for (const { drawing, caption } of panes) {
    drawing.showSquint(loaded.squintURL);
    drawing.showPrints(prints.on(drawing));
    drawing.markSeams(drawing.view === 'vanishing' && marks && !audition.laid ? marks.map(({ heavy, seams }) => ({ heavy, paths: highlight.seamPaths(seams) })) : []);
    caption.replaceChildren(...captionOf(drawing.view, { quilt: model.quilt, marks, alternative: audition.large?.name, hasSquint: loaded.squintURL !== null, single: !settings.two, colorway: secondDiffers() ? colorwayName(model.shownIn(drawing.fabrics ? settings.secondColorway : settings.colorway)) : '' }));
  }
}

function showHighlight(what) {
  const faces = highlight.facePath(what?.faces), seams = highlight.seamPaths(what?.seams);
  for (const { drawing } of panes) drawing.highlight(faces, seams);
}

function showReport() {
  byId('report').hidden = !settings.report || settings.text;
  byId('text-pane').hidden = !settings.report || !settings.text;
  document.documentElement.classList.toggle('reports-open', settings.report);
  document.querySelector('[data-action=report]').setAttribute('aria-expanded', String(settings.report && !settings.text));
  document.querySelector('[data-action=text]').setAttribute('aria-expanded', String(settings.report && settings.text));
  if (!settings.report || settings.text) panel.reset();
  else if (innerWidth < 704) { // the reports take their place on a phone
    card.close();
    fussy.close();
  }
  coverPanes();
  if (isFullScreen() && camera.fitted) actions.whole(); // where nothing was kept free for them
  if (message) showFaults(message, foldsFaults(), model.shown, fixing());
  refreshResources();
  remember();
}

const edge = new Edge(settings, {
  onChange: () => { coverPanes(); remember(); },
  close: () => { if (settings.report) (settings.text ? actions.text : actions.report)(); },
});

const sizes = new Sizes({
  model, settings, announce,
  changed: () => {
    openMenu(null);
    card.close();
    audition.release();
    remember();
    connection.update();
  },
});

const slide = new Slide((at, atRest) => {
  settings.split = at;
  slide.show(true, at, viewName(settings.view), viewName(settings.secondView));
  if (atRest) remember();
});

// ---- what buttons and keys do

// seamsShown says whether the first view has its seams drawn; each view has its own choice.
function seamsShown() { return settings.seamsIn.includes(settings.view); }
function toggleSeams() {
  settings.seamsIn = seamsShown() ? settings.seamsIn.filter((view) => view !== settings.view) : [...settings.seamsIn, settings.view];
}

// togglePanel opens the panel for the text or for the reports, turns it to them, or closes it.
function togglePanel(text) {
  settings.report = !settings.report || settings.text !== text;
  settings.text = text;
  showReport();
}

async function copyLink() {
  remember();
  const { address: link, warning } = await share();
  await copyText(link, 'Link', warning);
}

const zoomStep = 1.25;
const actions = {
  ...Object.fromEntries(Object.keys(views).map((view) => [view, () => showFirst(view)])),
  report: () => { togglePanel(false); },
  text: () => { if (!editing.allowed) return; togglePanel(true); if (textPane.isOpen) textPane.open(); },
  seams: () => { toggleSeams(); updatePanes(); },
  prints: () => { settings.prints = !settings.prints; updatePanes(); },
  two: () => compare(!(settings.two && !settings.slide), false),
  slide: () => compare(!(settings.two && settings.slide), true),
  link: copyLink,
  fullscreen: toggleFullScreen,
  nearer: () => zoom(zoomStep),
  farther: () => zoom(1 / zoomStep),
  whole: () => { camera.avoid(camera.cover); if (model.shown) camera.fit(); moveCamera(); },
  changes: flash,
  colorway: () => nextIn('colorway'),
  faults: () => { settings.faultsFolded = !foldsFaults(); if (message) showFaults(message, foldsFaults(), model.shown, fixing()); },
  keys: () => {
    settings.keys = !settings.keys;
    const opener = document.querySelector('[data-action=keys]');
    if (!settings.keys && byId('keys').contains(document.activeElement)) opener.focus();
    showKeys(settings.keys, editing.allowed);
    opener.setAttribute('aria-expanded', String(settings.keys));
  },
};
// foldsFaults says whether errors and warnings are folded to a line: as was chosen, and else where there are warnings alone, or where
// the pane that the layout is typed in tells of them.
function foldsFaults() { return settings.faultsFolded ?? (!wasBlocked || settings.report && settings.text && model.shown); }
function zoom(factor) {
  if (!model.shown) return;
  const [x, y] = pointer.position ?? [camera.width / 2, camera.height / 2];
  camera.zoom(factor, x, y);
  moveCamera();
}
// showFirst shows a view; where two lie in one picture and this is the second, they change places.
function showFirst(view) {
  if (settings.two && settings.slide && view === settings.secondView && !secondDiffers()) settings.secondView = settings.view;
  settings.view = view;
  updatePanes();
}
function showSecond(view) {
  settings.secondView = view;
  settings.secondColorway = null;
  settings.two = true;
  updatePanes();
}
// compare shows a second view beside the first, or in one picture with it, or none.
function compare(on, inOnePicture) {
  settings.two = on;
  settings.slide = on && inOnePicture;
  if (on && settings.secondView === settings.view && !secondDiffers()) settings.secondView = settings.view === 'value' ? 'colour' : 'value';
  if (settings.slide && settings.split === unlinked().split && model.shown) settings.split = camera.middle; // through the quilt, wherever it hangs
  updatePanes();
}
function flash() {
  for (const { drawing } of panes) drawing.pulse(lastChange.d, lastChange.fabrics);
}
function isolate(fabric) {
  settings.isolated = settings.isolated === fabric ? -1 : fabric;
  for (const { drawing } of panes) drawing.isolate(settings.isolated);
  card.where.setAttribute('aria-pressed', String(settings.isolated >= 0));
}

const keyActions = {
  ...Object.fromEntries(Object.entries(views).flatMap(([view, key]) => [[key, actions[view]], [key.toUpperCase(), () => showSecond(view)]])),
  o: actions.colorway, z: () => sizes.next(), O: () => nextIn('secondColorway'), r: actions.report, e: actions.text, s: actions.seams, g: actions.prints, b: actions.two, m: actions.slide, x: actions.fullscreen, w: actions.whole, 0: actions.whole,
  '+': actions.nearer, '=': actions.nearer, '-': actions.farther, '−': actions.farther, n: actions.changes, f: actions.faults, k: actions.keys, '?': actions.keys,
  Escape: () => { if (card.isOpen) { card.close(); return; } if (fussy.isOpen) { fussy.close(); return; } if (audition.large) { audition.letGo(); remember(); return; } leaveFullScreen(); openMenu(null); panel.reset(); pinned = hovered = null; settings.isolated = -1; if (settings.keys) actions.keys(); if (model.shown) { isolate(-1); showCurrentPatch(); } },
};
const directions = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
document.addEventListener('keydown', (e) => {
  if (editing.allowed && (e.ctrlKey || e.metaKey) && !e.altKey && 'zy'.includes(e.key.toLowerCase()) && !e.target.closest('input, textarea')) {
    e.preventDefault();
    if (e.key.toLowerCase() === 'y' || e.shiftKey) editing.redo();
    else editing.undo();
    return;
  }
  if (e.ctrlKey || e.metaKey || e.altKey || e.target.closest('input, textarea')) return;
  const direction = directions[e.key], onPicture = !e.target.closest('button, a, #faults-list, #split, aside, #fabric-list, #color-card, #fussy');
  if (direction && onPicture) {
    if (e.shiftKey) { if (model.shown) camera.pan(-direction[0] * 60, -direction[1] * 60); moveCamera(); } else walk(...direction);
  } else if (e.key === 'Enter' && onPicture) {
    if (hovered ?? pinned) pin(hovered ?? pinned);
  } else if (keyActions[e.key]) {
    keyActions[e.key]();
  } else {
    return;
  }
  e.preventDefault();
});
// openMenu opens one menu of the bar, or none, and closes the others.
function openMenu(opener) {
  for (const other of document.querySelectorAll('.opener')) other.setAttribute('aria-expanded', String(other === opener));
}
document.addEventListener('click', (e) => {
  const opener = e.target.closest('.opener');
  openMenu(opener?.getAttribute('aria-expanded') === 'true' ? null : opener);
  actions[e.target.closest('[data-action]')?.dataset.action]?.();
});
document.addEventListener('focusin', (e) => { if (!e.target.closest('.menu')) openMenu(null); });

const pointer = new Pointer({
  hover: (p) => hover(p && patchAt(model, ...camera.toQuilt(...p))),
  click: (p) => pin(patchAt(model, ...camera.toQuilt(...p))),
  drag: (dx, dy) => { if (model.shown) camera.pan(dx, dy); moveCamera(); },
  zoom: (factor, p) => { if (model.shown) camera.zoom(factor, ...p); moveCamera(); },
});

// ---- paper

let printing = false;
function print(on) {
  printing = on;
  for (const { drawing } of panes) drawing.fitForPrint(on);
  if (!on) moveCamera();
}
addEventListener('beforeprint', () => print(true));
addEventListener('afterprint', () => print(false));

// ---- messages

function receive(m, times) {
  if (message && m.layout !== message.layout) {
    connection.stop();
    setStatus(`This address now shows another layout, ${m.file}. Load the page again to see it.`);
    return;
  }
  if (message && m.assets !== message.assets) {
    remember();
    location.reload();
    return;
  }
  if (m.revision !== message?.revision || m.instance !== message.instance) card.close(card.tried && m.mark !== editing.mark ? 'The layout was saved: the color that was tried is gone.' : '');
  if (m.revision !== message?.revision || m.instance !== message.instance) audition.release();
  if (!auditionOpen()) audition.letGo();
  editing.receive(m);
  card.mayWrite(editing.allowed);
  fussy.mayWrite(editing.allowed);
  audition.allow(editing.allowed);
  document.querySelector('[data-action=text]').hidden = !editing.allowed;
  if (settings.text && !editing.allowed) togglePanel(true);
  textPane.receive(m.mark);
  const first = !model.shown, change = model.apply(m);
  message = m;
  followLines(model, m.editor);
  if (m.picture) sizes.keep();
  if (change.applied) {
    if (!first) lastChange = changeOf(change);
    if (change.anew || change.regions.size) highlight.reset();
    pictureCame();
    fussy.follow();
    refreshResources(); // nothing of an older picture stays beside the new one
    if (change.anew) settings.isolated = -1;
    wear();
    for (const { drawing } of panes) drawing.update(change);
    if (change.fabrics || change.anew) listFabrics();
    showColorwayMenus();
    if (change.anew) updatePanes();
    moveCameraNow(); // in this very frame, so that nothing jumps
    if (pinned || hovered) showCurrentPatch();
  }
  byId('waiting').hidden = model.shown || m.revision > 0;
  const blocked = isBlocking(m);
  if (blocked !== wasBlocked) settings.faultsFolded = null; // warnings that were folded away hide no error
  wasBlocked = blocked;
  showFaults(m, foldsFaults(), model.shown, fixing());
  showTitle(m, model, status);
  textPane.showFault();
  document.dispatchEvent(new CustomEvent('shown', { detail: { revision: m.revision, ...times, done: performance.now() } }));
}

// changeOf is the path of the faces that changed, and the fabrics whose colour did.
function changeOf(change) {
  if (change.anew) return { d: model.ground(), fabrics: [] };
  let d = '';
  for (const [cell, old] of change.cells) {
    if (model.cells[cell] < 0) continue;
    const { look, x, y } = model.item(cell), was = model.looks[old];
    look.template.faces.forEach((face, n) => {
      if (was?.template !== look.template || was.fabrics[n] !== look.fabrics[n]) d += pathData(face, x, y);
    });
  }
  return { d, fabrics: change.colours };
}

function setStatus(now) {
  status = now;
  showConnection(status);
  document.documentElement.classList.toggle('disconnected', status !== 'open');
  if (message) showTitle(message, model, status);
  if (status === 'open') refreshResources();
}

const connection = new Connection({ pictureRevision: () => model.have, query: () => model.sizeQuery, receive, onStatus: (now) => { if (now !== status) setStatus(now); } });

restore();
model.size = settings.size;
edge.show();
panel.select(settings.tab);
updatePanes();
showReport();
listenToFullScreen();
listenToSwitcher();
showPatch(null, false);
begun = true;
connection.start();
const { textContent } = byId('first');
if (textContent) connection.take(JSON.parse(textContent), 0); // it came with the page
if (model.shown && model.have === 0) connection.update(); // in another size
