// The pane in which the layout is typed: a plain field, and behind it the same text with its words in color and faults underlined,
// as the program sees them. What is typed is saved after a pause or by the usual key; what is saved elsewhere meanwhile is merged
// where the lines differ, and asked about where they do not. Nothing that was typed is lost.

import { byId } from './dom.js';
import { hand, kept, place } from './transport.js';
import { Layer } from './layer.js';
import { Words } from './words.js';

const pause = 700; // milliseconds until what was typed is saved
const look = 60; // and until it is looked at
const draftKey = `eighthturn-draft${place}`;

export class TextPane {
  // editing writes; announce says something briefly; fixOf gives what applies the hint of a fault in a line of the file, null for none;
  // fileName gives the file's name.
  constructor({ editing, announce, fixOf, fileName }) {
    Object.assign(this, { editing, announce, fixOf, fileName });
    this.field = byId('typed');
    this.layer = new Layer(byId('typed-layer'));
    this.words = new Words({ field: this.field, layer: this.layer, list: byId('words'), put: (...at) => this.put(...at) });
    this.base = null; // the text that the file had when it was last agreed on; null before it was read
    this.mark = ''; // of it
    this.unheard = false; // what was typed last, since no answer came
    this.theirs = null; // what was saved elsewhere in the same lines
    this.faults = [];
    this.fix = null; // applies the hint of the fault that is shown
    this.listen();
  }

  get isOpen() { return !byId('text-pane').hidden; }
  get dirty() { return this.base !== null && this.field.value !== this.base; }

  listen() {
    const { field } = this;
    field.addEventListener('input', (e) => {
      this.layer.follow(field.value);
      this.lookSoon(e.inputType === 'insertText');
      if (this.theirs === null) this.saveSoon();
      this.say(this.theirs === null ? 'typing …' : this.said);
    });
    field.addEventListener('scroll', () => this.layer.scroll(field), { passive: true });
    document.addEventListener('selectionchange', () => { if (document.activeElement === field) this.showFault(); });
    field.addEventListener('blur', () => this.words.close());
    byId('text-pane').addEventListener('keydown', (e) => this.key(e));
    const press = (id, f) => byId(id).addEventListener('click', () => f.call(this));
    press('text-undo', () => this.step('undo'));
    press('text-redo', () => this.step('redo'));
    press('text-tidy', () => this.tidy());
    press('text-download', () => hand(new Blob([field.value]), this.fileName()));
    press('keep-mine', this.keepMine);
    press('take-theirs', this.takeTheirs);
    byId('text-fault').lastElementChild.addEventListener('click', () => this.fix?.());
    addEventListener('beforeunload', (e) => { if (this.dirty) e.preventDefault(); });
    addEventListener('pagehide', () => this.keepDraft());
  }

  key(e) {
    const usual = (e.ctrlKey || e.metaKey) && !e.altKey;
    if (usual && e.key.toLowerCase() === 's') {
      e.preventDefault();
      this.save();
    } else if (e.target === this.field && usual && e.key === ' ') {
      e.preventDefault();
      this.look(true);
    } else if (e.target === this.field && this.words.key(e)) {
      e.preventDefault();
    } else if (e.key === 'Escape' && e.target === this.field) {
      this.field.blur();
      document.querySelector('.pane')?.focus();
    } else {
      return;
    }
    e.stopPropagation();
  }

  // open reads the file the first time, and takes up what was typed before the page was loaded again.
  async open() {
    if (this.base === null) await this.read(this.draft());
    this.field.focus({ preventScroll: true });
    this.layer.scroll(this.field);
  }

  async read(draft) {
    const reply = await this.editing.ask({ do: 'read' });
    if (reply.why) {
      this.say(`not read: ${reply.why}`);
      return;
    }
    this.agree(reply.text, reply.mark);
    this.put(0, this.field.value.length, reply.text, 0);
    if (draft && draft.text !== reply.text) {
      this.base = draft.base;
      this.put(0, this.field.value.length, draft.text, 0);
      await this.save();
    } else {
      this.sayDone();
    }
    this.look();
  }

  agree(text, mark) {
    this.base = text;
    this.mark = mark;
  }

  // put types a text in place of a stretch, so that the field's own undoing knows of it; the caret goes to a place, or stays.
  put(from, to, text, caret) {
    const { field } = this, { selectionStart, selectionEnd, scrollTop, scrollLeft } = field, focused = document.activeElement;
    const after = (at) => at <= from ? at : at >= to ? at + text.length - (to - from) : Math.min(at, from + text.length);
    if (field.value.slice(from, to) !== text) {
      field.focus({ preventScroll: true });
      field.setSelectionRange(from, to);
      const typed = text === '' ? document.execCommand('delete') : document.execCommand('insertText', false, text);
      if (!typed || field.value.slice(from, from + text.length) !== text) field.setRangeText(text, from, to);
      if (focused !== field) focused?.focus({ preventScroll: true });
    }
    if (caret === undefined) field.setSelectionRange(after(selectionStart), after(selectionEnd));
    else field.setSelectionRange(caret, caret);
    field.scrollTo(scrollLeft, scrollTop);
    this.layer.follow(field.value);
    this.layer.scroll(field);
  }

  // become puts another text into the field, by what differs alone.
  become(text) {
    const now = this.field.value;
    let start = 0, end = 0;
    while (start < now.length && start < text.length && now[start] === text[start]) start++;
    while (end < now.length - start && end < text.length - start && now[now.length - 1 - end] === text[text.length - 1 - end]) end++;
    if (now !== text) this.put(start, now.length - end, text.slice(start, text.length - end));
  }

  // receive is told the mark of the newest text of the file.
  receive(mark) {
    if (this.base === null || this.theirs !== null) return;
    if (mark !== this.mark) this.save(true);
    else if (this.unheard) this.save();
  }

  saveSoon() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.save(), pause);
  }

  // save writes what was typed, with what was saved elsewhere meanwhile; where nothing was typed it only reads that.
  async save(anyway = false) {
    clearTimeout(this.timer);
    if (this.saving) this.again = true;
    if (this.saving || this.base === null || this.theirs !== null) return;
    if (!this.dirty && !anyway) {
      this.sayDone();
      return;
    }
    this.saving = true;
    const text = this.field.value;
    const reply = await this.editing.ask({ do: 'text', base: this.base, text });
    this.saving = false;
    this.unheard = reply.failed === true;
    this.showSteps();
    if (reply.why) this.refused(reply, text);
    else this.written(reply, text);
    if (this.again) {
      this.again = false;
      this.save(true);
    }
  }

  written(reply, sent) {
    sessionStorage.removeItem(draftKey);
    if (this.field.value === sent) {
      this.agree(reply.text, reply.mark);
      if (reply.text !== sent) {
        this.become(reply.text);
        this.look();
      }
      this.sayDone();
      return;
    }
    this.base = sent; // more was typed meanwhile, on top of that
    this.mark = reply.mark;
    if (reply.text !== sent) this.again = true; // what came in from elsewhere is merged by the next
    else this.saveSoon();
  }

  refused(reply, text) {
    this.say(`not saved: ${reply.why}. Your text is kept here.`, true);
    byId('text-download').hidden = false;
    if (reply.text === undefined || reply.text === text) return;
    if (!reply.why.includes('same lines')) return;
    this.theirs = reply.text;
    this.theirMark = reply.mark;
    byId('conflict').hidden = false;
    if (!this.isOpen) this.announce('The same lines were saved elsewhere. Your text is kept in the text pane.');
  }

  settle() {
    byId('conflict').hidden = true;
    this.agree(this.theirs, this.theirMark);
    this.theirs = null;
  }
  keepMine() {
    this.settle();
    this.save();
    this.field.focus();
  }
  takeTheirs() { // the field's own undoing brings back what was typed
    this.settle();
    this.become(this.base);
    this.look();
    this.sayDone();
    this.field.focus();
  }

  async step(which) {
    if (this.dirty) await this.save();
    if (!this.dirty) await this.editing[which]();
    this.showSteps();
  }
  async tidy() {
    if (this.dirty) await this.save();
    if (!this.dirty) await this.editing.act({ do: 'tidy', seen: this.mark }, ({ line }) => line ? 'Tidied.' : 'It is tidy already.');
    this.showSteps();
  }
  showSteps() {
    byId('text-undo').disabled = this.editing.steps.undo === 0;
    byId('text-redo').disabled = this.editing.steps.redo === 0;
  }

  sayDone() {
    byId('text-download').hidden = kept();
    this.say(kept() ? 'saved' : 'not kept', !kept());
  }
  say(text, wrong = false) {
    this.said = text;
    const e = byId('text-state');
    if (e.textContent !== text) e.textContent = text;
    e.classList.toggle('wrong', wrong);
    e.title = text;
  }

  keepDraft() {
    try {
      if (this.dirty) sessionStorage.setItem(draftKey, JSON.stringify({ base: this.base, text: this.field.value }));
      else sessionStorage.removeItem(draftKey);
    } catch { /* a browser may keep nothing */ }
  }
  draft() {
    try {
      const kept = JSON.parse(sessionStorage.getItem(draftKey));
      return typeof kept?.base === 'string' && typeof kept.text === 'string' ? kept : null;
    } catch { return null; }
  }

  // ---- what the program sees in the text

  lookSoon(offering) {
    clearTimeout(this.lookTimer);
    this.lookTimer = setTimeout(() => this.look(offering), look);
  }

  // look asks for the words' sorts and the faults, and where it is offering, for what may stand at the caret.
  async look(offering = false) {
    clearTimeout(this.lookTimer);
    this.asked?.abort();
    const asked = this.asked = new AbortController(), text = this.field.value;
    const at = this.words.place(), request = offering ? { text, line: at.line, character: at.character } : { text, line: -1, character: 0 };
    try {
      const reply = await this.editing.post('typed', request, asked.signal);
      if (reply.failed || this.field.value !== text) return;
      this.faults = reply.faults;
      this.layer.paint(reply.types, reply.tokens, reply.faults);
      this.showFault();
      if (offering) this.words.offer(reply.items ?? [], at);
    } catch (e) {
      if (e.name !== 'AbortError') throw e;
    }
  }

  // showFault says what is wrong where the caret is, or else first.
  showFault() {
    const line = this.words.place().line, at = (f) => f.range.start.line <= line && f.range.end.line >= line;
    const fault = this.faults.find(at) ?? this.faults[0], e = byId('text-fault');
    e.hidden = !fault;
    if (!fault) return;
    const [words, button] = e.children, number = fault.range.start.line + 1, text = `Line ${number}: ${fault.message}`;
    if (words.textContent !== text) words.textContent = text;
    this.fix = this.dirty ? null : this.fixOf(number);
    button.hidden = !this.fix;
    e.className = fault.severity === 1 ? 'wrong' : 'doubtful';
  }
}

