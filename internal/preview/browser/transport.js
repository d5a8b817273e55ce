// How pages talk to the program where it runs in a worker beside them. What a preview's server serves under an address, the program
// answers under the same one.

import { byId, download, make } from './dom.js';
import { Program, Stream } from './program.js';
import { Storage } from './storage.js';
import { pack, unpack } from './packed.js';

const linkMost = 8_000; // characters of an address that all programs take (RFC 9110, section 4.1)

const program = new Program();
let name = ''; // of the layout's file, '' on a page of no layout

export const shared = false;
export const silence = 'The quilt engine does not answer.';
export let place = location.pathname + location.search;

// addressOf is an address as the program knows it.
function addressOf(address) {
  const at = new URL(address, `http://program/${name && `quilt/${encodeURIComponent(name)}/`}`);
  return at.pathname.slice(1) + at.search;
}

export const ask = (address, options) => program.ask(addressOf(address), options);
export const listen = (address) => new Stream(program, addressOf(address));

const fileOf = (address) => /^quilt\/(.*)\/$/.exec(addressOf(address))?.[1] ?? ''; // as it is escaped
export const pageOf = (address) => fileOf(address) ? `quilt.html?${fileOf(address)}` : 'index.html';

// go takes along a layout that could not be kept: the next page has a program of its own.
export async function go(address) {
  const file = decodeURIComponent(fileOf(address)), bytes = program.unkept.get(file);
  const page = bytes ? `quilt.html#${await packedIn(file, bytes)}` : pageOf(address);
  program.unkept.delete(file);
  location.href = page;
}

// showPicture shows a picture that is made when it is asked for.
export async function showPicture(image, address) {
  const response = await ask(address);
  if (!response.ok) return;
  const url = URL.createObjectURL(await response.blob());
  image.addEventListener('load', () => URL.revokeObjectURL(url), { once: true });
  image.src = url;
}

// fill shows a page in a frame. Its own styles may not stand in it where this page is, so they are put in afterwards, as rules.
export async function fill(frame, address) {
  const response = await ask(address), text = await response.text();
  if (frame.dataset.address !== address) return;
  const [, before, style, after] = /^([^]*?)<style>([^]*?)<\/style>([^]*)$/.exec(text) ?? [, text, '', ''];
  frame.classList.add('unstyled');
  frame.addEventListener('load', () => {
    const { contentDocument: page, contentWindow: { CSSStyleSheet: Sheet } } = frame, sheet = new Sheet();
    sheet.replaceSync(style);
    page.adoptedStyleSheets = [sheet];
    for (const e of page.querySelectorAll('[data-style]')) {
      for (const [, key, value] of e.dataset.style.matchAll(/([\w-]+):([^;]+)/g)) e.style.setProperty(key, value);
    }
    frame.classList.remove('unstyled');
  }, { once: true });
  frame.srcdoc = (before + after).replace(/<meta http-equiv[^>]*>/, '').replaceAll('<span class="swatch" style="', '<span class="swatch" data-style="');
}

// ---- files

const storage = new Storage();
let opened = null;
// choices is where it is kept what was chosen.
async function choices() {
  await (opened ??= storage.open());
  return storage;
}

// folder is the folder that files are saved into, null for that of the browser.
export async function folder() { return (await (await choices()).choice('folder')) ?? null; }
export async function chooseFolder(handle) { await (await choices()).choose('folder', handle); }

export async function hand(blob, file) {
  try {
    const into = await folder();
    if (into && await into.requestPermission({ mode: 'readwrite' }) === 'granted') {
      const writing = await (await into.getFileHandle(file, { create: true })).createWritable();
      await writing.write(blob);
      await writing.close();
      return `saved in ${into.name} as ${file}`;
    }
  } catch { /* the folder is gone, then, or may not be written */ }
  return download(blob, file);
}

// Links that save what the program makes.
document.addEventListener('click', async (e) => {
  const link = e.target.closest?.('a[download]'), at = link?.getAttribute('href');
  if (!at || at.startsWith('blob:') || e.defaultPrevented) return;
  e.preventDefault();
  const response = await ask(at);
  if (response.ok) hand(await response.blob(), link.download);
});

// ---- what could not be kept

export const kept = () => program.unkept.size === 0 && program.why === '';

// takeFiles takes in files that somebody chose, and gives how that went, in sentences.
export async function takeFiles(list) {
  const said = [], names = [];
  for (const file of list) {
    const reply = await program.ask(`take?name=${encodeURIComponent(file.name)}`, { body: new Uint8Array(await file.arrayBuffer()) });
    const { taken, left } = await reply.json();
    names.push(...taken);
    said.push(...left.map(({ name: of, why }) => `${of} was not added. ${why}`));
  }
  if (names.length) said.unshift(`Added: ${names.join(', ')}.`);
  return { names, said: said.join(' ') };
}

// saveUnkept hands out every file that is held here alone.
function saveUnkept() {
  for (const [file, bytes] of program.unkept) hand(new Blob([bytes]), file);
}
program.onKept = () => {
  const text = kept() ? '' : `Not kept: ${program.why}. Save your layouts as files before you close this page.`;
  notice('unkept', text, program.unkept.size && { text: 'Save as files', press: saveUnkept });
};
program.onSlow = (slow) => notice('slow', slow ? 'This takes long.' : '', { text: 'Stop', press: () => program.end() });

// notice says something over the page until it is said no longer; offer is a button, as { text, press }.
function notice(id, text, offer) {
  let box = byId(id);
  if (!box && !text) return;
  if (!box) document.querySelector('header').after(box = make('p', undefined, { id, class: 'notice', role: 'alert' }));
  box.hidden = text === '';
  if (box.dataset.text === text + Boolean(offer)) return;
  box.dataset.text = text + Boolean(offer);
  box.replaceChildren(make('span', text));
  if (offer) box.append(' ', pressed(offer));
}
function pressed({ text, press }) {
  const button = make('button', text);
  button.addEventListener('click', press);
  return button;
}
addEventListener('beforeunload', (e) => { if (program.unkept.size) e.preventDefault(); });

// ---- links with the layout in them

const packedIn = async (file, bytes) => `layout=${await pack(bytes)}&name=${encodeURIComponent(file)}`;

export async function share() {
  const bytes = new Uint8Array(await (await program.ask(`file?name=${encodeURIComponent(name)}`)).arrayBuffer());
  const shown = location.hash.slice(1), said = await packedIn(name, bytes);
  const address = `${location.origin}${location.pathname}#${said}${shown && `&${shown}`}`;
  const warning = address.length > linkMost ? `It has ${address.length.toLocaleString('en-US')} characters, and some mail and chat programs cut it: send the layout as a file instead.` : '';
  return { address, warning };
}

// takeShared takes in the layout of a link, and gives the name that it has here.
async function takeShared(said) {
  const wanted = said.get('name') || 'shared.quilt', bytes = await unpack(said.get('layout'));
  const { taken, left } = await (await program.ask(`take?name=${encodeURIComponent(wanted)}`, { body: bytes })).json();
  if (!taken.length) throw new Error(left[0].why);
  return taken[0];
}

// ---- the beginning

// missing is what the browser lacks.
function missing() {
  return ['WebAssembly', 'Worker', 'DecompressionStream', 'CompressionStream'].find((need) => !(need in globalThis)) ?? '';
}

// stay says something in place of the page, which never begins then.
function stay(...content) {
  const box = byId('waiting') ?? byId('status');
  box.hidden = false;
  box.replaceChildren(...content);
  return new Promise(() => {});
}
const linkTo = (href, text) => make('a', text, { href });

async function beginLayout() {
  const said = new URLSearchParams(location.hash.slice(1));
  if (said.has('layout')) {
    try {
      name = await takeShared(said);
    } catch {
      return stay('This link is damaged: a part of it is missing. Ask for it again. ', linkTo('index.html', 'Your quilts'));
    }
    const rest = location.hash.slice(1).split('&').filter((part) => !/^(layout|name)=/.test(part)).join('&');
    history.replaceState(null, '', `${location.pathname}?${encodeURIComponent(name)}${rest && `#${rest}`}`);
  } else {
    try { name = decodeURIComponent(location.search.slice(1)); } catch { /* it is no name */ }
    const there = name && await program.ask(`file?name=${encodeURIComponent(name)}`);
    if (!there || !there.ok) return stay('This browser has no layout of this name. ', linkTo('index.html', 'Your quilts'));
  }
  place = location.pathname + location.search;
}

export async function begin() {
  if (missing()) return stay('This browser is too old for this page: it needs a newer one, or the program itself. ', linkTo('about.html#program', 'Get the program'));
  for (;;) {
    try {
      if (byId('panes')) await beginLayout();
      else await program.ask('photos');
      navigator.serviceWorker?.register('service.js').catch(() => {}); // the page works without
      return;
    } catch { // the program did not begin
      await stayUntilPressed(`The quilt engine does not start (${program.trouble}). Your layouts are safe.`, 'Try again');
    }
  }
}

function stayUntilPressed(text, label) {
  return new Promise((press) => { stay(`${text} `, pressed({ text: label, press })); });
}
