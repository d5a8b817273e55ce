// The panel beside the picture that holds the reports: sections of rows. A row that is
// pointed at, with the pointer, the keyboard or a finger, lights up what it is about.

import { byId, make, swatch } from './panel.js';

export class ReportPanel {
  // light is told what to light up, null for nothing; say speaks.
  constructor({ light, say }) {
    Object.assign(this, { light, say });
    this.reports = null;
    this.chosen = 0; // tab
    this.rows = []; // { row, body, name }
    this.over = this.focused = this.held = null;
    const box = this.box = byId('report-rows');
    box.addEventListener('pointerover', (e) => { if (e.pointerType !== 'touch') this.point('over', this.rowAt(e)); });
    box.addEventListener('pointerleave', () => this.point('over', null));
    box.addEventListener('focusin', (e) => this.point('focused', e.target.matches(':focus-visible') ? this.rowAt(e) : null));
    box.addEventListener('focusout', () => this.point('focused', null));
    box.addEventListener('click', (e) => this.hold(this.rowAt(e)));
    box.addEventListener('keydown', (e) => this.key(e));
    byId('report-tabs').addEventListener('keydown', (e) => this.tabKey(e));
  }

  // show shows reports; null says that those shown are of an older picture, and hides them
  // where they stand.
  show(reports) {
    const panel = byId('report');
    panel.classList.toggle('old', !reports);
    clearTimeout(this.waiting);
    panel.classList.remove('waits');
    if (!reports) {
      this.waiting = setTimeout(() => panel.classList.add('waits'), 250);
      this.lightUp();
    } else if (reports !== this.reports) {
      this.reports = reports;
      this.chosen = Math.min(this.chosen, reports.length - 1);
      this.draw();
    } else {
      this.lightUp();
    }
  }

  draw() {
    const report = this.reports[this.chosen], box = this.box.parentElement, at = box.scrollTop;
    const held = this.held?.name, focused = this.box.contains(document.activeElement) ? this.rows.find((r) => r.body === document.activeElement)?.name : undefined;
    byId('report-name').textContent = report.name;
    byId('report-says').textContent = report.says ?? '';
    this.drawTabs();
    this.rows = [];
    this.box.replaceChildren(...report.sections.map((s) => this.section(s)));
    this.over = this.focused = null;
    this.held = this.rows.find((r) => r.name === held) ?? null;
    this.held?.body.setAttribute('aria-selected', 'true');
    const first = this.rows.find((r) => r.name === focused);
    (first ?? this.rows[0])?.body.setAttribute('tabindex', '0');
    first?.body.focus({ preventScroll: true });
    box.scrollTop = at;
    this.lightUp();
  }

  drawTabs() {
    const tabs = byId('report-tabs');
    tabs.hidden = this.reports.length < 2;
    byId('report-name').hidden = !tabs.hidden;
    tabs.replaceChildren(...(tabs.hidden ? [] : this.reports).map((r, i) => {
      const tab = make('button', r.name, { role: 'tab', 'aria-selected': String(i === this.chosen), tabindex: i === this.chosen ? '0' : '-1' });
      tab.addEventListener('click', () => this.choose(i));
      return tab;
    }));
  }

  choose(i) {
    this.chosen = (i + this.reports.length) % this.reports.length;
    this.held = null;
    this.box.parentElement.scrollTop = 0;
    this.draw();
    byId('report-tabs').children[this.chosen].focus();
  }

  tabKey(e) {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (by) this.choose(this.chosen + by);
  }

  section(s) {
    const box = make('section'), table = make('table');
    box.append(make('h3', s.title), table);
    if (s.heads?.some((h) => h.head)) {
      const head = make('tr');
      for (const h of s.heads) head.append(h.head ? make('th', h.head, { scope: 'col', ...number(h) }) : make('td'));
      const group = make('thead');
      group.append(head);
      table.append(group);
    }
    const seen = new Map();
    for (const row of s.rows) {
      const name = `${s.title.split(',')[0]}/${row.cells[0]}`, times = seen.get(name) ?? 0;
      seen.set(name, times + 1);
      table.append(this.row(row, s.heads, `${name}/${times}`));
    }
    if (s.more) box.append(make('p', s.more, { class: 'more' }));
    return box;
  }

  row(row, heads, name) {
    const body = make('tbody', undefined, { tabindex: '-1', class: ['row', row.head ? 'head' : '', row.tone, row.lit !== undefined ? 'lights' : ''].filter(Boolean).join(' ') });
    const line = make('tr');
    row.cells.forEach((text, i) => {
      const cell = make('td', undefined, number(heads?.[i]));
      cell.append(i === 0 && row.swatches ? cloths(row.swatches, text) : text);
      line.append(cell);
    });
    body.append(line);
    for (const text of row.under ?? []) {
      const under = make('tr', undefined, { class: 'under' });
      under.append(make('td', text, { colspan: String(row.cells.length) }));
      body.append(under);
    }
    this.rows.push({ row, body, name });
    return body;
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

  // hold keeps a row lit until it is let go.
  hold(row) {
    this.held?.body.removeAttribute('aria-selected');
    this.held = row && row !== this.held && row.row.lit !== undefined ? row : null;
    this.held?.body.setAttribute('aria-selected', 'true');
    if (!this.held) this.over = null;
    this.lightUp();
  }

  letGo() { this.hold(null); }

  lightUp() {
    const old = byId('report').classList.contains('old');
    const lit = old ? undefined : (this.over ?? this.focused ?? this.held)?.row.lit;
    this.light(this.reports?.[this.chosen].lit?.[lit] ?? null);
  }

  key(e) {
    const at = this.rows.findIndex((r) => r.body === document.activeElement), last = this.rows.length - 1;
    if (at < 0) return;
    const to = { ArrowUp: Math.max(0, at - 1), ArrowDown: Math.min(last, at + 1), Home: 0, End: last }[e.key];
    if (to !== undefined) {
      this.go(this.rows[to]);
      e.preventDefault();
    } else if (e.key === 'Enter' || e.key === ' ') {
      this.hold(this.rows[at]);
      e.preventDefault();
    }
  }

  go(row) {
    for (const { body } of this.rows) body.setAttribute('tabindex', body === row.body ? '0' : '-1');
    row.body.focus();
    this.say([...row.row.cells, ...row.row.under ?? []].filter(Boolean).join(', '));
  }
}

// cloths are swatches before a text that keep together.
function cloths(colours, text) {
  const box = make('div', undefined, { class: 'cloths' });
  box.append(...colours.map(swatch), make('b', text));
  return box;
}

function number(head) { return head?.number ? { class: 'number' } : {}; }
