// A line of the layout: copied, or opened in the editor whose address the program was given.

import { make } from './dom.js';
import { copyText } from './copy.js';
import { ask } from './transport.js';

const of = { model: null, editor: '' };

// followLines says which picture lines are of from now on, and the editor's address, '' for none.
export function followLines(model, editor = '') {
  Object.assign(of, { model, editor });
}

// fetchLine is the text of a line of the picture that is shown.
export async function fetchLine(line) {
  const response = await ask(`line?line=${line}&instance=${of.model.instance}&picture=${of.model.revision}`);
  if (!response.ok) throw new Error('The layout was saved meanwhile.');
  return response.text();
}

// lineActions are the buttons for a line: one that copies what text gives, and where an editor is known a link that opens it there.
export function lineActions(line, text, title, what) {
  const box = make('p', undefined, { class: 'line-actions' }), copy = make('button', title, { class: 'copy' });
  copy.addEventListener('click', async () => {
    try {
      await copyText(await text(), what);
    } catch { /* a newer picture is on its way, and with it another line */ }
  });
  box.append(copy);
  if (of.editor && line) box.append(make('a', `Open line ${line}`, { class: 'text-button', href: of.editor.replaceAll('{line}', String(line)), title: 'Open in your editor' }));
  return box;
}
