// The menu of the other layouts of the folder, where the page is of one of several. It is filled anew whenever it is opened.

import { byId, make } from './dom.js';
import { ask, pageOf, place, showPicture } from './transport.js';

export function listenToSwitcher() {
  const opener = byId('switcher')?.querySelector('.opener');
  opener?.addEventListener('click', () => fill(byId('layouts')));
}

async function fill(box) {
  const response = await ask('../../layouts');
  if (!response.ok) return;
  const { layouts } = await response.json(), here = place;
  const rows = layouts.map(({ title, file, about, picture, address }) => {
    const row = make('a', undefined, { href: pageOf(`../../${address}`) });
    if (placeOf(row) === here) row.setAttribute('aria-current', 'page');
    row.append(picture ? image(`../../${picture}`) : make('span', '', { class: 'blank' }), words(title, [file !== title && file, about]));
    return row;
  });
  box.replaceChildren(make('a', 'All quilts in this folder', { href: pageOf('../../') }), ...rows);
}

function placeOf({ href }) {
  const { pathname, search } = new URL(href);
  return pathname + search;
}

function image(address) {
  const e = make('img', undefined, { alt: '' });
  showPicture(e, address);
  return e;
}

// words is a layout's title, and below it what else tells it from others.
function words(title, facts) {
  const box = make('span', title, { class: 'words' }), said = facts.filter(Boolean).join(', ');
  if (said) box.append(make('span', said, { class: 'fact' }));
  return box;
}
