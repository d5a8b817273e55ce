// The files of this browser, on the page of all quilts: taken in, saved, taken away.

import { byId, make } from './dom.js';
import { ask, hand, takeFiles, folder, chooseFolder } from './transport.js';

const lookAgain = 2_000; // milliseconds
let shown = '';

function say(text) { byId('shelf-said').textContent = text; }

async function list() {
  const [{ layouts }, photos] = await Promise.all(['layouts', 'photos'].map(async (address) => (await ask(address)).json()));
  const names = [...layouts.map(({ file }) => file), ...photos];
  if (String(names) === shown) return;
  shown = String(names);
  byId('save-all').disabled = names.length === 0;
  if (names.length) byId('new').before(byId('shelf')); // whoever has work of her own looks for it before she begins another
  byId('held').replaceChildren(...names.map(row));
}

function row(name) {
  const item = make('li'), save = make('button', 'Save', { 'aria-label': `Save ${name}` }), remove = make('button', 'Remove', { 'aria-label': `Remove ${name}` });
  save.addEventListener('click', async () => say(`${await hand(await (await ask(`file?name=${encodeURIComponent(name)}`)).blob(), name)}.`));
  remove.addEventListener('click', () => takeAway(name));
  item.append(make('span', name, { class: 'title' }), save, remove);
  return item;
}

async function takeAway(name) {
  if (!confirm(`Remove ${name} from this browser? It cannot be brought back.`)) return;
  const response = await ask(`remove?name=${encodeURIComponent(name)}`, { body: '' });
  say(response.ok ? `${name} is removed.` : await response.text());
  list();
}

async function take(files) {
  say('Adding …');
  navigator.storage?.persist?.().catch(() => {}); // a browser that asks may be told no
  say((await takeFiles(files)).said);
  list();
}

async function showFolder() {
  const chosen = await folder();
  byId('folder-said').textContent = chosen ? `Files are saved in ${chosen.name}.` : '';
  byId('no-folder').hidden = !chosen;
}

byId('open').addEventListener('click', () => byId('files').click());
byId('files').addEventListener('change', (e) => { take([...e.target.files]); e.target.value = ''; });
byId('save-all').addEventListener('click', async () => say(`${await hand(await (await ask('all.zip')).blob(), 'quilts.zip')}.`));
byId('choose-folder').hidden = !('showDirectoryPicker' in window);
byId('choose-folder').addEventListener('click', async () => {
  try {
    await chooseFolder(await window.showDirectoryPicker({ mode: 'readwrite' }));
  } catch { /* none was chosen */ }
  showFolder();
});
byId('no-folder').addEventListener('click', async () => { await chooseFolder(undefined); showFolder(); });
document.addEventListener('dragover', (e) => e.preventDefault());
document.addEventListener('drop', (e) => { e.preventDefault(); take([...e.dataTransfer.files]); });
setInterval(() => { if (!document.hidden) list(); }, lookAgain);
showFolder();
list();
