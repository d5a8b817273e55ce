// The tab in which alternatives for a place of the layout are auditioned: a place is chosen by a patch or from a list, the alternatives
// are the layout's fabrics, those of its palettes or a ladder of one hue, and each has its pictures, what the study says and what to
// write. One that is chosen shows in the picture, until it is let go or the layout is saved.

import { byId, make, swatch } from './dom.js';
import { copyText } from './copy.js';
import { rungs } from './color.js';
import { lchOf, hexAt } from './lab.js';
import { Resource } from './resource.js';

export const kinds = { fabrics: 'Fabrics', palette: 'Palette', hue: 'Same hue' }; // of alternatives, by their names in an address
const parts = ['Blocks', 'Around the blocks', 'Scraps', 'Fabrics, wherever they are'];

// untried is what an address that says nothing stands for.
export const untried = () => ({ place: '', among: 'fabrics', picked: null, best: false, large: null });

export class Audition {
  // isOpen says whether the tab is in sight; changed is called when something else is to be remembered, listed when what there is to
  // audition is known, and with null while it is not; show gets the alternative that the picture is to show, null for none, and the one
  // before; write gets what is to be written.
  constructor({ model, isOpen, changed, listed, show, write, announce }) {
    Object.assign(this, { model, isOpen, listed, show, write, announce });
    this.state = untried();
    this.list = null; // what there is to audition
    this.message = null; // the audition that is shown
    this.large = null; // the alternative that the picture shows
    this.mayWrite = false;
    this.ask();
    this.changed = () => { this.studies.refresh(true); changed(); };
    this.build();
  }

  // ask is what the program is asked: what there is to audition, and the study of what was chosen.
  ask() {
    const parse = (response) => response.json();
    this.places = new Resource(this.model, 'auditions', { wanted: this.isOpen, parse, onChange: (list) => this.receive(list) });
    this.studies = new Resource(this.model, () => this.path, { wanted: () => this.isOpen() && this.wanted, parse, onChange: (m) => this.receiveAudition(m) });
  }

  build() {
    this.box = byId('audition');
    this.select = byId('audition-place');
    this.select.addEventListener('change', () => this.choose(this.select.value));
    for (const [name, text] of Object.entries(kinds)) {
      const button = make('button', text, { 'data-among': name });
      button.addEventListener('click', () => this.update({ among: name, picked: null }));
      byId('audition-among').append(button);
    }
    for (const [best, text, title] of [[false, 'As listed', 'In the order of the list'], [true, 'Best first', 'Those that read better come first']]) {
      const button = make('button', text, { 'data-best': best, title });
      button.addEventListener('click', () => { this.update({ best }); this.showAlternatives(); });
      byId('audition-order').append(button);
    }
  }

  // ---- what is chosen

  get place() { return this.list?.places.find((p) => p.name === this.state.place); }

  // update takes another choice.
  update(choice) {
    Object.assign(this.state, choice);
    this.showChoice();
    this.changed();
  }

  // choose takes a place by its name.
  choose(name) {
    if (name === this.state.place) return;
    this.letGo();
    this.update({ place: name, picked: null });
  }

  // choosePatch takes the place that a patch is in, or its fabric where that is given otherwise.
  choosePatch({ role, label, border, fabrics }) {
    const at = (role, of) => this.list?.places.find((p) => !p.recolors && p.role === role && p.of === of);
    const onSide = (p) => p.of === label && p.role.startsWith(`${role}-`) && this.model.fabrics[p.fabric].name === fabrics[0].name;
    const place = label ? at(role, label) ?? this.list?.places.find(onSide) ?? at('webs', '') : border >= 0 ? at('border', String(border + 1)) : at(role, '');
    const found = place ?? this.list?.places.find((p) => p.recolors && p.role === fabrics[0].name);
    if (found) this.choose(found.name);
  }

  // candidates are what the place may be given of the kind that is chosen, as { text, name, colors }.
  get candidates() {
    const { place, model, list } = this, fabric = (i) => model.fabrics[i];
    if (!place) return [];
    if (place.deal) return Array.from({ length: list.deals }, (_, i) => ({ text: String(i + 1), name: `deal ${i + 1}`, colors: [], now: i + 1 === place.deal }));
    if (this.among === 'hue') {
      const { c, h } = lchOf(this.ownColor(place.fabric));
      return rungs.map((l) => ({ text: hexAt(l, c, h), name: `value ${l}`, colors: [hexAt(l, c, h)], value: l }));
    }
    return list.candidates.filter((c) => c.palette === (this.among === 'palette') && !(c.several && place.plain)).map((c) => ({
      text: place.recolors ? c.worn : c.name, name: c.several ? c.name : `${c.worn}, value ${fabric(c.fabrics[0]).value.toFixed(0)}`,
      colors: c.fabrics.slice(0, 4).map((i) => this.ownColor(i)), value: fabric(c.fabrics[0]).value, now: !c.several && c.fabrics[0] === place.fabric,
    }));
  }

  // ownColor is a fabric's color whatever is tried.
  ownColor(i) { return this.large?.fabric && this.large.number === i ? this.large.own.colour : this.model.fabrics[i].colour; }

  // among is the kind of alternatives: the one that was chosen where the layout has any of it.
  get among() {
    const of = (palette) => this.list?.candidates.some((c) => c.palette === palette);
    if (this.state.among === 'palette' && !of(true)) return 'fabrics';
    if (this.state.among === 'fabrics' && !of(false)) return 'palette';
    return this.state.among;
  }

  // picked are the candidates that are auditioned: those that were chosen, or as many as can be, spread from dark to light.
  get picked() {
    const all = this.candidates.map((c) => c.text), { picked } = this.state;
    if (picked) return all.filter((text) => picked.includes(text));
    if (all.length <= this.list?.most) return all;
    const inOrder = this.candidates.toSorted((a, b) => a.value - b.value), most = this.list?.most ?? 0, chosen = new Set();
    for (let i = 0; i < most; i++) chosen.add(inOrder[Math.round(i * (inOrder.length - 1) / (most - 1))].text);
    return all.filter((text) => chosen.has(text));
  }

  // ---- what is asked for

  get wanted() { return this.place !== undefined && this.picked.length >= this.list.least; }

  get path() {
    const query = new URLSearchParams(this.placeQuery);
    for (const text of this.wanted ? this.picked : []) query.append('alternative', text);
    return `audition?${query}`;
  }

  get placeQuery() { return { role: this.place?.role ?? '', of: this.place?.of ?? '' }; }

  // tried is the color that the picture shows, as requests name it: '' for none.
  get tried() { return this.large?.try ?? ''; }

  // laid is what addresses of pictures go on with where the picture shows an alternative that is more than another color.
  get laid() { return this.large && !this.large.try ? `&${new URLSearchParams({ ...this.placeQuery, alternative: this.large.alternative })}` : ''; }

  // receive takes what there is to audition, null while that is not known.
  receive(list) {
    this.list = list ?? this.list;
    if (list) this.showPlaces();
    this.listed(list);
    this.studies.refresh(true);
  }

  // receiveAudition takes an audition, null while it is worked out.
  receiveAudition(message) {
    this.box.classList.toggle('working', message === null && this.wanted);
    if (message === null) return;
    for (const url of this.urls ?? []) URL.revokeObjectURL(url);
    this.urls = [];
    this.message = message;
    for (const a of message.alternatives) for (const key of ['color', 'gray']) this.urls.push(a[key] = pictureURL(a[key]));
    this.showAlternatives();
    const again = message.alternatives.find((a) => a.alternative === this.state.large);
    if (again && !this.large) this.enlarge(again);
  }

  // ---- the picture

  // press shows an alternative in the picture, or lets it go.
  press(a) {
    const same = this.state.large === a.alternative;
    this.letGo();
    if (!same) this.enlarge(a);
    this.changed();
  }

  enlarge(a) {
    this.state.large = a.alternative;
    this.large = a;
    if (a.try) Object.assign(a, { number: parseInt(a.try, 10), own: this.model.fabrics[parseInt(a.try, 10)] });
    this.markLarge();
    this.show(a);
  }

  // letGo lets the picture show the layout again.
  letGo() {
    this.release();
    this.state.large = null;
    this.markLarge();
  }

  // release is letGo for a moment: the alternative shows again with the next audition that has it.
  release() {
    const { large } = this;
    this.large = null;
    if (large) this.show(null, large);
  }

  markLarge() {
    for (const button of byId('audition-list').querySelectorAll('.alternative')) button.setAttribute('aria-pressed', String(button.dataset.alternative === this.state.large));
  }

  // ---- the tab

  showPlaces() {
    const groups = parts.map((label) => make('optgroup', undefined, { label }));
    for (const p of this.list.places) {
      const option = make('option', p.name, { value: p.name });
      groups[p.recolors ? 3 : p.deal ? 2 : p.plain ? 1 : 0].append(option);
    }
    this.select.replaceChildren(make('option', 'Choose a place', { value: '' }), ...groups.filter((g) => g.children.length));
    if (!this.place) this.state.place = '';
    this.showChoice();
  }

  showChoice() {
    const { place, candidates, picked, among } = this;
    this.select.value = place?.name ?? '';
    byId('audition-hint').hidden = place !== undefined;
    byId('audition-choice').hidden = place === undefined;
    for (const b of byId('audition-among').children) {
      b.setAttribute('aria-pressed', String(b.dataset.among === among));
      b.hidden = b.dataset.among !== 'hue' && !this.list?.candidates.some((c) => c.palette === (b.dataset.among === 'palette'));
    }
    byId('audition-among').hidden = Boolean(place?.deal);
    for (const b of byId('audition-order').children) b.setAttribute('aria-pressed', String(b.dataset.best === String(this.state.best)));
    this.showCandidates(candidates, picked);
    const note = byId('audition-note');
    note.textContent = !place || this.wanted ? '' : candidates.length < this.list.least ? 'There is nothing else of this kind: try the same hue.' : 'Choose two or more.';
    note.hidden = note.textContent === '';
    if (!this.wanted) byId('audition-list').replaceChildren();
  }

  showCandidates(candidates, picked) {
    const box = byId('audition-candidates'), texts = JSON.stringify(candidates);
    if (box.dataset.texts !== texts) {
      box.dataset.texts = texts;
      box.replaceChildren(...candidates.map((c) => this.candidateButton(c)));
    }
    const full = picked.length >= (this.list?.most ?? 0), few = picked.length <= (this.list?.least ?? 0);
    candidates.forEach((c, i) => {
      const on = picked.includes(c.text), b = box.children[i];
      b.setAttribute('aria-pressed', String(on));
      b.setAttribute('aria-disabled', String(on ? few : full));
    });
  }

  candidateButton(c) {
    const text = c.now ? `${c.name}, there now` : c.name, b = make('button', c.colors.length ? undefined : c.text, { title: text, 'aria-label': text });
    b.append(...c.colors.map((color) => swatch(color)));
    b.addEventListener('click', () => {
      if (b.getAttribute('aria-disabled') === 'true') return;
      const { picked } = this;
      this.update({ picked: picked.includes(c.text) ? picked.filter((t) => t !== c.text) : [...picked, c.text] });
    });
    return b;
  }

  showAlternatives() {
    const list = byId('audition-list'), { message } = this;
    if (!message || !this.wanted) return;
    const had = list.contains(document.activeElement) ? [document.activeElement.closest('li').dataset.alternative, document.activeElement.className] : null;
    const inOrder = this.state.best ? message.alternatives.toSorted((a, b) => a.rank - b.rank) : message.alternatives;
    list.replaceChildren(...inOrder.map((a) => this.alternativeElement(a)));
    byId('audition-left').replaceChildren(...(message.left ?? []).map(({ name, why }) => make('li', `${name} does not fit here: ${why}.`)));
    byId('audition-left').hidden = !message.left?.length;
    if (message.why) byId('audition-note').textContent = `${message.why}.`.replace(/^./, (c) => c.toUpperCase());
    byId('audition-note').hidden = byId('audition-note').textContent === '';
    this.markLarge();
    if (had) [...list.children].find((li) => li.dataset.alternative === had[0])?.querySelector(`.${had[1].split(' ')[0]}`)?.focus({ preventScroll: true });
  }

  alternativeElement(a) {
    const item = make('li', undefined, { 'data-alternative': a.alternative });
    const button = make('button', undefined, { class: 'alternative', 'data-alternative': a.alternative, title: 'Show it in the picture' }), pictures = make('span', undefined, { class: 'pictures' });
    pictures.append(make('img', undefined, { src: a.color, alt: '' }), make('img', undefined, { src: a.gray, alt: '' }));
    button.append(pictures, make('span', a.name, { class: 'alternative-name' }));
    button.addEventListener('click', () => this.press(a));
    const actions = make('p', undefined, { class: 'line-actions' }), lines = a.lines.length > 1 ? 'lines' : 'line';
    const copy = make('button', `Copy ${lines}`, { class: 'copy', 'aria-label': `Copy ${lines} of ${a.name}` });
    copy.addEventListener('click', () => copyText(a.lines.join('\n'), a.lines.length > 1 ? 'Lines' : 'Line'));
    actions.append(copy);
    if (this.mayWrite) {
      const write = make('button', `Write ${lines}`, { class: 'write', 'aria-label': `Write ${lines} of ${a.name}`, title: 'Write into the layout' });
      write.addEventListener('click', () => this.write({ ...this.placeQuery, alternative: a.alternative }));
      actions.append(write);
    }
    item.append(button, make('p', a.says, { class: 'says' }), make('code', a.written.join('\n')), actions);
    return item;
  }

  // allow shows or takes away the buttons that write.
  allow(on) {
    if (this.mayWrite === on) return;
    this.mayWrite = on;
    this.showAlternatives();
  }
}

// bytes are those of base64; older browsers take longer.
function bytes(base64) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(base64);
  return Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
}

function pictureURL(base64) { return URL.createObjectURL(new Blob([bytes(base64)], { type: 'image/png' })); }
