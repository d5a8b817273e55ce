// The text behind the field in which it is typed, line by line: words in the color of their sort, faults underlined. A line that is
// typed in loses its colors until they are known anew, so that a keystroke costs one line.

import { make } from './dom.js';

const unusual = /[^ -~]/; // signs that may be wider than a column
const colorsUpTo = 400_000; // characters of a text that is colored

export class Layer {
  constructor(box) {
    this.box = box;
    this.lines = []; // { text, painted, e }
    this.columns = 0;
  }

  // follow takes over what the field says.
  follow(text) {
    const plain = text.length > colorsUpTo;
    this.box.parentElement.classList.toggle('plain', plain);
    const now = plain ? [] : text.split('\n'), was = this.lines;
    let start = 0, end = 0;
    while (start < now.length && start < was.length && now[start] === was[start].text) start++;
    while (end < now.length - start && end < was.length - start && now[now.length - 1 - end] === was[was.length - 1 - end].text) end++;
    const fresh = now.slice(start, now.length - end), gone = was.slice(start, was.length - end);
    fresh.forEach((line, i) => {
      const kept = gone[i];
      if (kept) {
        kept.text = line;
        kept.painted = '';
        kept.e.textContent = line || '\u200b';
      }
    });
    for (const line of gone.slice(fresh.length)) line.e.remove();
    const before = was[was.length - end]?.e ?? null;
    const added = fresh.slice(gone.length).map((line) => ({ text: line, painted: '', e: make('div', line || '\u200b') }));
    for (const line of added) this.box.insertBefore(line.e, before);
    this.lines.splice(start, gone.length, ...gone.slice(0, fresh.length), ...added);
    this.widen(fresh);
  }

  // widen makes the layer as wide as its longest line may become by and by. It is told, since the browser would measure every line at each
  // keystroke.
  widen(fresh) {
    let wide = 0;
    for (const line of fresh) wide = Math.max(wide, line.length * (unusual.test(line) ? 4 : 1)); // a tab is four columns, and no sign is more
    if (wide <= this.columns) return;
    this.columns = Math.ceil(wide / 200 + 1) * 200;
    this.box.style.width = `calc(${this.columns}ch + 2rem)`;
  }

  // paint colors words, as the protocol's semantic tokens have them, and underlines faults.
  paint(types, tokens, faults) {
    const words = new Map(); // by line: [start, end, class]
    const put = (line, ...word) => { if (!words.has(line)) words.set(line, []); words.get(line).push(word); };
    for (let i = 0, line = 0, at = 0; i < tokens.length; i += 5) {
      if (tokens[i]) at = 0;
      line += tokens[i];
      at += tokens[i + 1];
      put(line, at, at + tokens[i + 2], types[tokens[i + 3]]);
    }
    const wrong = new Map();
    for (const { range: { start, end }, severity } of faults) {
      for (let line = start.line; line <= Math.min(end.line, this.lines.length - 1); line++) {
        const { length } = this.lines[line].text, from = line === start.line ? start.character : 0, to = line === end.line ? end.character : length;
        if (!wrong.has(line)) wrong.set(line, []);
        wrong.get(line).push([Math.min(from, Math.max(0, length - 1)), Math.max(to, from + 1), severity === 1 ? 'wrong' : 'doubtful']);
      }
    }
    this.lines.forEach((line, i) => this.paintLine(line, words.get(i) ?? [], wrong.get(i) ?? []));
  }

  paintLine(line, words, wrong) {
    const key = JSON.stringify([words, wrong]);
    if (line.painted === key) return;
    line.painted = key;
    const cuts = new Set([0, line.text.length]);
    for (const [from, to] of [...words, ...wrong]) for (const at of [from, to]) if (at < line.text.length) cuts.add(at);
    const places = [...cuts].sort((a, b) => a - b), parts = [];
    let next = 0; // of words, which come in their order
    const wordAt = (at) => {
      while (next < words.length && words[next][1] <= at) next++;
      return next < words.length && words[next][0] <= at ? words[next][2] : undefined;
    };
    const wrongAt = (at) => wrong.find(([from, to]) => from <= at && at < to)?.[2];
    for (let i = 0; i + 1 < places.length; i++) {
      const text = line.text.slice(places[i], places[i + 1]), names = [wordAt(places[i]), wrongAt(places[i])].filter(Boolean);
      parts.push(names.length ? make('span', text, { class: names.join(' ') }) : text);
    }
    line.e.replaceChildren(...parts.length ? parts : ['\u200b']);
  }

  // scroll shows what the field shows.
  scroll({ scrollLeft, scrollTop }) { this.box.style.transform = `translate(${-scrollLeft}px, ${-scrollTop}px)`; }

  // placeOf is where a character of a line stands on the screen: its left edge, and the line's upper and lower one.
  placeOf(line, character) {
    const e = this.lines[line]?.e;
    if (!e) return null;
    const { top, bottom, left } = e.getBoundingClientRect(), range = document.createRange();
    const walker = document.createTreeWalker(e, NodeFilter.SHOW_TEXT);
    for (let at = 0; walker.nextNode(); at += walker.currentNode.length) {
      if (character > at + walker.currentNode.length) continue;
      range.setStart(e, 0);
      range.setEnd(walker.currentNode, character - at);
      const { width } = range.getBoundingClientRect();
      return { left: left + width, top, bottom };
    }
    return { left, top, bottom };
  }
}
