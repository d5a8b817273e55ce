// Photos of cloth, and other files, taken in beside the layout while it is typed.

import { byId } from './dom.js';
import { showNote } from './copy.js';
import { takeFiles } from './transport.js';

async function take(files) { showNote((await takeFiles(files)).said, { text: 'Close', press: () => {} }); }

byId('add-photo').addEventListener('click', () => byId('photo').click());
byId('photo').addEventListener('change', (e) => { take([...e.target.files]); e.target.value = ''; });
document.addEventListener('dragover', (e) => { if (e.dataTransfer.types.includes('Files')) e.preventDefault(); });
document.addEventListener('drop', (e) => {
  if (!e.dataTransfer.files.length) return;
  e.preventDefault();
  take([...e.dataTransfer.files]);
});
