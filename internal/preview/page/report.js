// The panel beside the picture that holds the reports: sections of rows. A row that is
// pointed at, with the pointer, the keyboard or a finger, lights up what it is about; one that
// is chosen shows the diagram that belongs to it, its own or that of the nearest row above.

import { byId, make, swatch } from './panel.js';
import { DiagramBox } from './diagram.js';
import { save } from './save.js';

export class ReportPanel {
  // light is told what to light up, null for nothing; say speaks; chose is told a tab, and
  // opened that a diagram is wanted.
  constructor({ light, say, chose = () => {}, opened = () => {} }) {
    Object.assign(this, { light, say, chose, opened });
    this.tabs = [...byId('report-tabs').children];
    this.reports = this.tabs.map(() => null); // the newest of each tab that is known
    this.fresh = this.tabs.map(() => false); // whether that is of the picture that is shown
    this.chosen = 0; // tab
    this.drawn = null; // report
    this.rows = []; // { row, body, name, drawn: the row whose diagram belongs to it }
    this.over = this.focused = this.held = this.open = null;
    const box = this.box = byId('report-rows');
    box.addEventListener('pointerover', (e) => { if (e.pointerType !== 'touch') this.point('over', this.rowAt(e)); });
    box.addEventListener('pointerleave', () => this.point('over', null));
    box.addEventListener('focusin', (e) => this.point('focused', e.target.matches(':focus-visible') ? this.rowAt(e) : null));
    box.addEventListener('focusout', () => this.point('focused', null));
    box.addEventListener('click', (e) => this.click(e));
    box.addEventListener('keydown', (e) => this.key(e));
    this.tabs.forEach((tab, i) => tab.addEventListener('click', () => this.choose(i)));
    byId('report-tabs').addEventListener('keydown', (e) => this.tabKey(e));
    this.diagram = new DiagramBox({ light: (lit) => lit ? this.light(lit) : this.lightUp(), close: () => this.openRow(null) });
  }

  // show shows the report of a tab; null says that the one shown is of an older picture, and
  // hides it where it stands.
  show(tab, report) {
    this.fresh[tab] = report !== null;
    this.reports[tab] = report ?? this.reports[tab];
    if (tab === this.chosen) this.showChosen();
  }

  showChosen() {
    const panel = byId('report'), fresh = this.fresh[this.chosen];
    panel.classList.toggle('old', !fresh);
    clearTimeout(this.waiting);
    panel.classList.remove('waits');
    if (!fresh) this.waiting = setTimeout(() => panel.classList.add('waits'), 250);
    if (fresh && this.reports[this.chosen] !== this.drawn) {
      this.draw();
    } else {
      this.lightUp();
      this.opened(); // the report may say the same of another picture
    }
  }

  draw() {
    const report = this.drawn = this.reports[this.chosen], box = byId('report-body'), at = box.scrollTop;
    const held = this.held?.name, open = this.open?.name, focused = this.box.contains(document.activeElement) ? this.rows.find((r) => r.body === document.activeElement)?.name : undefined;
    byId('report-says').textContent = report.says ?? '';
    this.rows = [];
    this.box.replaceChildren(...report.sections.map((s) => this.section(s)));
    showPage(report.page);
    this.over = this.focused = null;
    this.held = this.rows.find((r) => r.name === held) ?? null;
    this.held?.body.setAttribute('aria-selected', 'true');
    const first = this.rows.find((r) => r.name === focused);
    (first ?? this.rows[0])?.body.setAttribute('tabindex', '0');
    first?.body.focus({ preventScroll: true });
    box.scrollTop = at;
    this.openRow(this.rows.find((r) => r.name === open)?.drawn ?? null);
    this.lightUp();
  }

  // choose turns to a tab.
  choose(i) {
    const old = this.chosen, to = (i + this.tabs.length) % this.tabs.length;
    this.chosen = to;
    this.tabs.forEach((tab, n) => {
      tab.setAttribute('aria-selected', String(n === to));
      tab.tabIndex = n === to ? 0 : -1;
    });
    byId('report-body').setAttribute('aria-labelledby', this.tabs[to].id);
    if (old !== to) {
      this.held = null;
      this.openRow(null);
      byId('report-body').scrollTop = 0;
    }
    this.chose(to);
    this.showChosen();
  }

  tabKey(e) {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (!by) return;
    this.choose(this.chosen + by);
    this.tabs[this.chosen].focus();
  }

  // ---- the diagram

  get diagramPath() { return this.open ? `/diagram?tab=${this.chosen}&number=${this.open.row.diagram}` : '/diagram?'; }
  get wantsDiagram() { return this.open !== null && this.fresh[this.chosen]; }

  showDiagram(drawn) {
    this.diagram.show(drawn);
    const row = this.rows.find((r) => r.body === document.activeElement);
    if (drawn && row) this.reveal(row); // there is less room for it now
  }

  // reveal brings a row into sight; of one with a diagram, its beginning.
  reveal(row) { row.body.scrollIntoView({ block: row.row.diagram === undefined ? 'nearest' : 'start' }); }

  // openRow opens the diagram of a row, or closes what is open.
  openRow(row) {
    this.open = row;
    this.diagram.open(row !== null);
    for (const r of this.rows) r.body.classList.toggle('drawn', r === row);
    this.opened();
  }

  section(s) {
    const box = make('section'), table = make('table');
    if (s.why) {
      const folded = make('details'); // how it was judged: for those who ask
      folded.append(make('summary', s.title || 'Why'), table);
      box.append(folded);
    } else {
      if (s.title) box.append(make('h3', s.title));
      box.append(table);
    }
    if (s.heads?.some((h) => h.head)) {
      const head = make('tr');
      for (const h of s.heads) head.append(h.head ? make('th', h.head, { scope: 'col', ...number(h) }) : make('td'));
      const group = make('thead');
      group.append(head);
      table.append(group);
    }
    const seen = new Map(), columns = Math.max(s.heads?.length ?? 1, ...s.rows.map((r) => r.cells.length));
    let drawn = null; // the nearest row above that has a diagram
    for (const row of s.rows) {
      const name = `${s.title.split(/[,:]/)[0]}/${row.cells[0]}`, times = seen.get(name) ?? 0;
      seen.set(name, times + 1);
      const made = this.row(row, s.heads, columns);
      made.name = `${name}/${times}`;
      made.drawn = row.diagram === undefined ? drawn : drawn = made;
      this.rows.push(made);
      table.append(made.body);
    }
    if (s.more) box.append(make('p', s.more, { class: 'more' }));
    return box;
  }

  row(row, heads, columns) {
    const body = make('tbody', undefined, { tabindex: '-1', class: ['row', row.head ? 'head' : '', row.tone, row.lit !== undefined ? 'lights' : '', row.diagram !== undefined ? 'draws' : ''].filter(Boolean).join(' ') });
    const line = make('tr');
    row.cells.forEach((text, i) => {
      const alone = row.cells.length === 1 && columns > 1;
      const cell = make('td', undefined, alone ? { colspan: String(columns) } : number(heads?.[i]));
      const content = row.save && i === 0 ? make('a', text, { href: row.save, download: row.as, class: 'file', tabindex: '-1' }) : text;
      const words = heads?.[0]?.number && !alone ? 1 : 0; // a swatch stands before words
      cell.append(i === words && row.swatches ? cloths(row.swatches, content) : content);
      line.append(cell);
    });
    body.append(line);
    const aside = heads?.[0]?.number && row.cells.length > 1 ? 1 : 0;
    for (const text of row.under ?? []) {
      const under = make('tr', undefined, { class: 'under' });
      if (aside) under.append(make('td'));
      under.append(make('td', text, { colspan: String(columns - aside) }));
      body.append(under);
    }
    return { row, body };
  }

  rowAt(e) {
    const body = e.target.closest('tbody');
    return this.rows.find((r) => r.body === body) ?? null;
  }

  point(how, row) {
    if (this[how] === row) return;
    this[how] = row;
    this.lightUp();
  }

  click(e) {
    const row = this.rowAt(e);
    if (row?.row.save) {
      if (e.target.closest('a')) this.save(row);
      e.preventDefault();
      return;
    }
    this.hold(row);
    if (row && (this.held === row || row.row.lit === undefined)) this.openRow(row.drawn);
  }

  save(row) {
    const note = row.note ??= row.body.appendChild(make('tr', undefined, { class: 'under note' })).appendChild(make('td'));
    save(row.row, (text) => { note.textContent = text; this.say(text); });
  }

  // hold keeps a row lit until it is let go.
  hold(row) {
    this.held?.body.removeAttribute('aria-selected');
    this.held = row && row !== this.held && row.row.lit !== undefined ? row : null;
    this.held?.body.setAttribute('aria-selected', 'true');
    if (!this.held) this.over = null;
    this.lightUp();
  }

  letGo() {
    this.hold(null);
    this.openRow(null);
  }

  lightUp() {
    const lit = this.fresh[this.chosen] ? (this.over ?? this.focused ?? this.held)?.row.lit : undefined;
    this.light(this.drawn?.lit?.[lit] ?? null);
  }

  key(e) {
    const at = this.rows.findIndex((r) => r.body === document.activeElement), last = this.rows.length - 1;
    if (at < 0) return;
    const to = { ArrowUp: Math.max(0, at - 1), ArrowDown: Math.min(last, at + 1), Home: 0, End: last }[e.key];
    if (to !== undefined) {
      this.go(this.rows[to]);
      e.preventDefault();
    } else if (e.key === 'Enter' || e.key === ' ') {
      if (this.rows[at].row.save) this.save(this.rows[at]);
      else this.hold(this.rows[at]);
      e.preventDefault();
    }
  }

  go(row) {
    const folded = row.body.closest('details');
    if (folded) folded.open = true;
    for (const { body } of this.rows) body.setAttribute('tabindex', body === row.body ? '0' : '-1');
    row.body.focus();
    if (row.drawn !== this.open) this.openRow(row.drawn);
    this.reveal(row);
    this.say([...row.row.cells, ...row.row.under ?? []].filter(Boolean).join(', '));
  }
}

// cloths are swatches before a text that keep together.
function cloths(colours, text) {
  const box = make('div', undefined, { class: 'cloths' });
  const words = make('b');
  words.append(text);
  box.append(...colours.map(swatch), words);
  return box;
}

// showPage shows a page in the panel, or none. Where one takes the place of another, what was
// read stays in sight.
function showPage(address = '') {
  const frame = byId('report-page'), at = frame.contentWindow?.scrollY ?? 0;
  byId('report').classList.toggle('paged', address !== '');
  frame.hidden = address === '';
  if (frame.getAttribute('src') === address || !address) return;
  frame.addEventListener('load', () => frame.contentWindow.scrollTo(0, at), { once: true });
  frame.src = address;
}

function number(head) { return head?.number ? { class: 'number' } : {}; }
