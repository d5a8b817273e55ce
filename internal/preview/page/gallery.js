// The gallery of a folder: its layouts, which come and go with the files, and layouts to begin a copy of.

import { byId, make } from './dom.js';
import { ask, go, pageOf, showPicture, silence } from './transport.js';

const lookAgain = 2_000; // milliseconds
let shown = ''; // the listing, as it was sent
let token = '';
let chosen = null; // the beginning that is to be copied

async function update() {
  try {
    const response = await ask('layouts', { signal: AbortSignal.timeout(15_000) });
    if (!response.ok) throw new Error(await response.text());
    const text = await response.text();
    if (text !== shown) show(JSON.parse(text));
    shown = text;
    setStatus('');
  } catch (e) {
    setStatus(e instanceof TypeError || e.name === 'TimeoutError' ? `${silence} Trying again.` : e.message);
  }
}

function show({ layouts, beginnings, token: now }) {
  token = now ?? '';
  byId('own').hidden = layouts.length === 0;
  byId('new').hidden = beginnings.length === 0;
  byId('layouts').replaceChildren(...layouts.map((q) => card(q, make('a', undefined, { href: pageOf(q.address) }))));
  byId('beginnings').replaceChildren(...beginnings.map((q) => {
    const button = make('button', undefined, { type: 'button' });
    button.addEventListener('click', () => choose(q, layouts));
    return card(q, button);
  }));
  if (!layouts.length && !beginnings.length) setStatus('There are no layouts in this folder yet.');
}

function card({ file, title, size, about, picture }, box) {
  const frame = make('span', undefined, { class: 'picture' }), words = make('span', undefined, { class: 'words' }), item = make('li');
  frame.append(picture ? image(picture) : 'no picture');
  words.append(make('span', title, { class: 'title' }));
  if (size) words.append(make('span', size, { class: 'fact' }));
  if (about) words.append(make('span', about, { class: picture ? 'fact' : 'fact wrong' }));
  if (file && file !== title) words.append(make('span', file, { class: 'fact' }));
  box.append(frame, words);
  item.append(box);
  return item;
}

function image(address) {
  const e = make('img', undefined, { alt: '', loading: 'lazy' });
  showPicture(e, address);
  return e;
}

// choose asks for the name of a copy, and offers one that no layout has.
function choose(beginning, layouts) {
  chosen = beginning;
  const taken = new Set(layouts.map((q) => q.file.toLowerCase()));
  let name = `my-${beginning.begin}`;
  for (let n = 2; taken.has(`${name}.quilt`); n++) name = `my-${beginning.begin}-${n}`;
  byId('naming-title').textContent = `Begin a copy of ${beginning.title}`;
  byId('naming-fault').textContent = '';
  byId('name').value = name;
  byId('naming').showModal();
  byId('name').select();
}

async function begin() {
  try {
    const response = await ask('begin', {
      method: 'POST', headers: { 'Content-Type': 'application/json', 'X-Edit-Token': token },
      body: JSON.stringify({ begin: chosen.begin, file: byId('name').value }),
    });
    if (response.ok) go((await response.json()).address);
    else byId('naming-fault').textContent = await response.text();
  } catch {
    byId('naming-fault').textContent = silence;
  }
}

function setStatus(text) {
  if (byId('status').textContent !== text) byId('status').textContent = text;
}

byId('cancel').addEventListener('click', () => byId('naming').close());
byId('naming').querySelector('form').addEventListener('submit', (e) => { e.preventDefault(); begin(); });
document.addEventListener('visibilitychange', () => { if (!document.hidden) update(); });
setInterval(() => { if (!document.hidden && !byId('naming').open) update(); }, lookAgain);
update();
