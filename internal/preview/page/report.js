// The panel beside the picture that holds the reports: sections of rows. A row that is pointed at,
// with the pointer, the keyboard or a finger, highlights what it is about; one that is chosen shows
// the diagram that belongs to it, its own or that of the nearest row above. What says how a report
// was judged is folded until it is asked for.

import { fill } from './transport.js';
import { byId, make, swatch } from './dom.js';
import { DiagramBox } from './diagram.js';
import { save } from './save.js';

export class ReportPanel {
  // highlight gets what is to be highlighted, null for nothing; announce gets a text to be read
  // out; onSelect gets a tab; onDiagram is called when another diagram may be wanted; savedAs gives
  // the address by which a row's file is saved.
  constructor({ highlight, announce, onSelect, onDiagram, savedAs }) {
    Object.assign(this, { highlight, announce, onSelect, onDiagram, savedAs });
    this.tabs = [...byId('report-tabs').children];
    this.reports = this.tabs.map(() => null); // the newest of each tab that is known
    this.fresh = this.tabs.map(() => false); // whether that is of the picture that is shown
    this.selected = 0; // tab
    this.rendered = null; // report
    this.rows = []; // { row, element, name, diagramRow: that whose diagram belongs to it, details: that it is folded in, or undefined }
    this.unfolded = new Set(); // names of sections
    this.hovered = this.focused = this.pinned = this.open = null; // rows; open is that whose diagram is shown
    const box = this.box = byId('report-rows');
    box.addEventListener('pointerover', (e) => { if (e.pointerType !== 'touch') this.track('hovered', this.rowAt(e)); });
    box.addEventListener('pointerleave', () => this.track('hovered', null));
    box.addEventListener('focusin', (e) => this.track('focused', e.target.matches(':focus-visible') ? this.rowAt(e) : null));
    box.addEventListener('focusout', () => this.track('focused', null));
    box.addEventListener('click', (e) => this.onClick(e));
    box.addEventListener('keydown', (e) => this.onKey(e));
    this.tabs.forEach((tab, i) => tab.addEventListener('click', () => this.select(i)));
    byId('report-tabs').addEventListener('keydown', (e) => this.onTabKey(e));
    this.diagram = new DiagramBox({ highlight: (what) => what ? this.highlight(what) : this.updateHighlight(), close: () => this.openDiagram(null) });
  }

  // setReport gives a tab its report; null says that the one at hand is of an older picture, and
  // hides it where it stands.
  setReport(tab, report) {
    this.fresh[tab] = report !== null;
    this.reports[tab] = report ?? this.reports[tab];
    if (tab === this.selected) this.showSelected();
  }

  showSelected() {
    const panel = byId('report'), fresh = this.fresh[this.selected];
    panel.classList.toggle('stale', !fresh);
    clearTimeout(this.loadingTimer);
    panel.classList.remove('loading');
    if (!fresh) this.loadingTimer = setTimeout(() => panel.classList.add('loading'), 250);
    if (fresh && this.reports[this.selected] !== this.rendered) {
      this.render();
    } else {
      this.updateHighlight();
      this.onDiagram(); // the report may say the same of another picture
    }
  }

  render() {
    const report = this.rendered = this.reports[this.selected], body = byId('report-body'), scrollTop = body.scrollTop;
    const pinned = this.pinned?.name, open = this.open?.name, focused = this.box.contains(document.activeElement) ? this.rowOf(document.activeElement)?.name : undefined;
    byId('report-intro').textContent = report.intro ?? '';
    this.rows = [];
    this.box.replaceChildren(...report.sections.map((s) => this.sectionElement(s)));
    showFrame(report.page);
    this.hovered = this.focused = null;
    this.pinned = this.rowNamed(pinned) ?? null;
    this.pinned?.element.setAttribute('aria-current', 'true');
    const first = this.rowNamed(focused);
    (first ?? this.rows[0])?.element.setAttribute('tabindex', '0');
    first?.element.focus({ preventScroll: true });
    body.scrollTop = scrollTop;
    this.openDiagram(this.rowNamed(open)?.diagramRow ?? null);
    this.updateHighlight();
  }

  rowOf(element) { return this.rows.find((r) => r.element === element); }
  rowNamed(name) { return this.rows.find((r) => r.name === name); }
  rowAt(e) { return this.rowOf(e.target.closest('tbody, summary')) ?? null; }

  // select turns to a tab.
  select(i) {
    const old = this.selected, to = (i + this.tabs.length) % this.tabs.length;
    this.selected = to;
    this.tabs.forEach((tab, n) => {
      tab.setAttribute('aria-selected', String(n === to));
      tab.tabIndex = n === to ? 0 : -1;
    });
    byId('report-body').setAttribute('aria-labelledby', this.tabs[to].id);
    byId('audition').hidden = !('own' in this.tabs[to].dataset);
    if (old !== to) {
      this.pinned = null;
      this.openDiagram(null);
      byId('report-body').scrollTop = 0;
    }
    this.onSelect(to);
    this.showSelected();
  }

  onTabKey(e) {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (!by) return;
    this.select(this.selected + by);
    this.tabs[this.selected].focus();
  }

  // ---- the diagram

  get diagramPath() { return this.open ? `diagram?tab=${this.selected}&number=${this.open.row.diagram}` : 'diagram?'; }
  get wantsDiagram() { return this.open !== null && this.fresh[this.selected]; }

  showDiagram(diagram) {
    this.diagram.show(diagram);
    const row = this.rowOf(document.activeElement);
    if (diagram && row) this.scrollTo(row); // there is less room for it now
  }

  // scrollTo brings a row into sight; of one with a diagram, its beginning.
  scrollTo(row) { row.element.scrollIntoView({ block: row.row.diagram === undefined ? 'nearest' : 'start' }); }

  // openDiagram opens the diagram of a row, or closes what is open.
  openDiagram(row) {
    this.open = row;
    this.diagram.setOpen(row !== null);
    this.onDiagram();
  }

  // ---- sections and rows

  sectionElement(s) {
    const details = s.why ? make('details') : undefined, box = make('section'), table = make('table');
    if (details) box.append(details);
    if (details) this.summaryIn(details, s.title || 'Why');
    else if (s.title) box.append(make('h3', s.title));
    (details ?? box).append(table);
    if (s.heads?.some((h) => h.head)) table.append(headElement(s.heads));
    const times = new Map(), columns = Math.max(s.heads?.length ?? 1, ...s.rows.map((r) => r.cells.length));
    let diagramRow = null; // the nearest row above that has a diagram
    for (const row of s.rows) {
      const name = `${s.title.split(/[,:]/)[0]}/${row.cells[0]}`, n = times.get(name) ?? 0;
      times.set(name, n + 1);
      const made = { row, element: rowElement(row, s.heads, columns), name: `${name}/${n}`, details };
      made.diagramRow = row.diagram === undefined ? diagramRow : diagramRow = made;
      this.rows.push(made);
      table.append(made.element);
    }
    if (s.more) (details ?? box).append(make('p', s.more, { class: 'more' }));
    return box;
  }

  // summaryIn makes the line by which details are unfolded: one more stop for the arrow keys.
  summaryIn(details, title) {
    const summary = make('summary'), name = `${this.selected}/${title}`;
    summary.append(make('h3', title));
    details.append(summary);
    details.open = this.unfolded.has(name);
    details.addEventListener('toggle', () => { if (details.open) this.unfolded.add(name); else this.unfolded.delete(name); });
    this.rows.push({ row: { cells: [title] }, element: summary, name, diagramRow: null });
  }

  track(how, row) {
    if (this[how] === row) return;
    this[how] = row;
    this.updateHighlight();
  }

  onClick(e) {
    if (e.target.closest('summary')) return;
    const row = this.rowAt(e);
    if (row?.row.save) {
      if (e.target.closest('a')) this.save(row);
      e.preventDefault();
      return;
    }
    this.pin(row);
    if (row && (this.pinned === row || row.row.highlight === undefined)) this.openDiagram(row.diagramRow);
  }

  save(row) {
    const note = row.note ??= row.element.appendChild(make('tr', undefined, { class: 'under note' })).appendChild(make('td'));
    save({ ...row.row, save: this.savedAs(row.row.save) }, (text) => { note.textContent = text; this.announce(text); });
  }

  // pin keeps a row highlighted until it is let go.
  pin(row) {
    this.pinned?.element.removeAttribute('aria-current');
    this.pinned = row && row !== this.pinned && row.row.highlight !== undefined ? row : null;
    this.pinned?.element.setAttribute('aria-current', 'true');
    if (!this.pinned) this.hovered = null;
    this.updateHighlight();
  }

  // reset lets the row go and closes the diagram.
  reset() {
    this.pin(null);
    this.openDiagram(null);
  }

  updateHighlight() {
    const highlight = this.fresh[this.selected] ? (this.hovered ?? this.focused ?? this.pinned)?.row.highlight : undefined;
    this.highlight(this.rendered?.highlights?.[highlight] ?? null);
  }

  onKey(e) {
    const rows = this.rows.filter((r) => r.details?.open ?? true);
    const at = rows.findIndex((r) => r.element === document.activeElement), last = rows.length - 1;
    if (at < 0) return;
    const to = { ArrowUp: Math.max(0, at - 1), ArrowDown: Math.min(last, at + 1), Home: 0, End: last }[e.key];
    if (to !== undefined) {
      this.goTo(rows[to]);
      e.preventDefault();
    } else if ((e.key === 'Enter' || e.key === ' ') && rows[at].element.localName !== 'summary') { // which unfolds by itself
      if (rows[at].row.save) this.save(rows[at]);
      else this.pin(rows[at]);
      e.preventDefault();
    }
  }

  goTo(row) {
    for (const { element } of this.rows) if (element.localName !== 'summary') element.setAttribute('tabindex', element === row.element ? '0' : '-1');
    row.element.focus();
    if (row.diagramRow !== this.open) this.openDiagram(row.diagramRow);
    this.scrollTo(row);
    this.announce([...row.row.cells, ...row.row.under ?? []].filter(Boolean).join(', '));
  }
}

function headElement(heads) {
  const head = make('tr');
  for (const h of heads) head.append(h.head ? make('th', h.head, { scope: 'col', ...numberClass(h) }) : make('td'));
  const group = make('thead');
  group.append(head);
  return group;
}

function rowElement(row, heads, columns) {
  const names = ['row', row.head ? 'head' : '', row.cells.length === 1 && !row.save ? 'sentence' : '', row.tone, row.highlight !== undefined ? 'has-highlight' : '', row.diagram !== undefined ? 'has-diagram' : ''];
  const body = make('tbody', undefined, { tabindex: '-1', class: names.filter(Boolean).join(' ') });
  const line = make('tr');
  row.cells.forEach((text, i) => {
    const across = row.cells.length === 1 && columns > 1;
    const cell = make('td', undefined, across ? { colspan: String(columns) } : numberClass(heads?.[i]));
    const content = row.save && i === 0 ? make('a', text, { href: row.save, download: row.as, class: 'file', tabindex: '-1' }) : text;
    const swatchesAt = heads?.[0]?.number && !across ? 1 : 0; // before words
    cell.append(i === swatchesAt && row.swatches ? withSwatches(row.swatches, content) : content);
    line.append(cell);
  });
  body.append(line);
  const indent = heads?.[0]?.number && row.cells.length > 1 ? 1 : 0;
  for (const text of row.under ?? []) {
    const under = make('tr', undefined, { class: 'under' });
    if (indent) under.append(make('td'));
    under.append(make('td', text, { colspan: String(columns - indent) }));
    body.append(under);
  }
  return body;
}

// withSwatches is swatches before a text that keep together.
function withSwatches(colours, text) {
  const box = make('div', undefined, { class: 'swatches' });
  const words = make('b');
  words.append(text);
  box.append(...colours.map(swatch), words);
  return box;
}

// showFrame shows a page in the panel, or none. Where one takes the place of another, what was
// read stays in sight. The frame is made when it is first wanted: a page that opens would wait for it.
function showFrame(address = '') {
  byId('report').classList.toggle('has-page', address !== '');
  const frame = byId('report-page') ?? (address && makeFrame());
  if (!frame) return;
  const scrollY = frame.contentWindow?.scrollY ?? 0;
  frame.hidden = address === '';
  if (frame.dataset.address === address || !address) return;
  frame.dataset.address = address;
  frame.addEventListener('load', () => frame.contentWindow.scrollTo(0, scrollY), { once: true });
  fill(frame, address);
}
function makeFrame() {
  const frame = make('iframe', undefined, { id: 'report-page', title: 'The printed pattern', sandbox: 'allow-same-origin' });
  byId('report-loading').before(frame);
  return frame;
}

function numberClass(head) { return head?.number ? { class: 'number' } : {}; }
