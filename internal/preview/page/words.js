// What may stand where the caret is: a short list below it, from which the arrow keys choose and Enter or Tab takes. It takes no
// keys before something is chosen but Tab, which takes the first.

import { make } from './dom.js';

const shown = 8; // at a time

export class Words {
  // put types a text in place of a stretch of the field's text; see TextPane.
  constructor({ field, layer, list, put }) {
    Object.assign(this, { field, layer, list, put });
    this.items = [];
    this.chosen = -1;
    list.addEventListener('pointerdown', (e) => {
      e.preventDefault(); // the field keeps the focus
      const i = [...list.children].indexOf(e.target.closest('li'));
      if (i >= 0) this.take(i);
    });
  }

  // place is where the caret stands: its line and its UTF-16 code unit in that.
  place() {
    const before = this.field.value.slice(0, this.field.selectionStart);
    const lineStart = before.lastIndexOf('\n') + 1;
    let line = 0;
    for (let at = before.indexOf('\n'); at >= 0; at = before.indexOf('\n', at + 1)) line++;
    return { line, character: before.length - lineStart, lineStart };
  }

  // offer shows those of the words that begin as what stands before the caret, which is still at the place they were asked for.
  offer(items, { line, character, lineStart }) {
    const now = this.place();
    if (now.line !== line || now.character !== character || document.activeElement !== this.field) return;
    const fits = items.filter(({ label, textEdit: { range } }) => {
      const typed = this.field.value.slice(lineStart + range.start.character, lineStart + character);
      return label.toLowerCase().startsWith(typed.toLowerCase()) && label !== typed;
    });
    this.items = fits.slice(0, shown).map((item) => ({ ...item, lineStart, character }));
    this.chosen = -1;
    const at = this.layer.placeOf(line, character);
    if (!this.items.length || !at) {
      this.close();
      return;
    }
    this.list.replaceChildren(...this.items.map(({ label, detail }, i) => {
      const e = make('li', undefined, { role: 'option', id: `word-${i}`, 'aria-selected': 'false' });
      e.append(make('b', label));
      if (detail) e.append(make('span', detail));
      return e;
    }));
    this.list.hidden = false;
    this.stand(at);
  }

  // stand puts the list below the caret, or above it where there is no room.
  stand({ left, top, bottom }) {
    const box = this.list.parentElement.getBoundingClientRect(), { offsetWidth: w, offsetHeight: h } = this.list;
    const below = bottom - box.top + h <= box.height;
    this.list.style.left = `${Math.max(0, Math.min(left - box.left, box.width - w))}px`;
    this.list.style.top = `${Math.max(0, below ? bottom - box.top : top - box.top - h)}px`;
  }

  close() {
    this.items = [];
    this.chosen = -1;
    this.list.hidden = true;
    this.field.removeAttribute('aria-activedescendant');
  }

  choose(i) {
    this.chosen = (i + this.items.length) % this.items.length;
    [...this.list.children].forEach((e, n) => e.setAttribute('aria-selected', String(n === this.chosen)));
    this.field.setAttribute('aria-activedescendant', `word-${this.chosen}`);
  }

  take(i) {
    const { label, textEdit: { range, newText }, lineStart, character } = this.items[i];
    const from = lineStart + range.start.character, to = Math.max(lineStart + range.end.character, lineStart + character);
    this.close();
    this.put(from, to, newText ?? label, from + (newText ?? label).length);
  }

  // key says whether the list takes a key.
  key(e) {
    if (this.list.hidden || e.ctrlKey || e.metaKey || e.altKey) return false;
    if (e.key === 'ArrowDown') this.choose(this.chosen + 1);
    else if (e.key === 'ArrowUp' && this.chosen >= 0) this.choose(this.chosen - 1);
    else if (e.key === 'Tab' && !e.shiftKey || e.key === 'Enter' && this.chosen >= 0) this.take(Math.max(0, this.chosen));
    else if (e.key === 'Escape') this.close();
    else if (['ArrowLeft', 'ArrowRight', 'ArrowUp', 'Enter', 'Home', 'End'].includes(e.key)) { this.close(); return false; }
    else return false;
    return true;
  }
}
