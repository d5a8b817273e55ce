// The menu of the other layouts of the folder, where the page is of one of several. It is filled anew whenever it is opened.

import { byId, make } from './dom.js';

export function listenToSwitcher() {
  const opener = byId('switcher')?.querySelector('.opener');
  opener?.addEventListener('click', () => fill(byId('layouts')));
}

async function fill(box) {
  const response = await fetch('../../layouts');
  if (!response.ok) return;
  const { layouts } = await response.json(), here = location.pathname;
  const rows = layouts.map(({ title, file, about, picture, address }) => {
    const row = make('a', undefined, { href: `../../${address}` });
    if (new URL(row.href).pathname === here) row.setAttribute('aria-current', 'page');
    row.append(picture ? make('img', undefined, { src: `../../${picture}`, alt: '' }) : make('span', '', { class: 'blank' }), words(title, [file !== title && file, about]));
    return row;
  });
  box.replaceChildren(make('a', 'All quilts in this folder', { href: '../../' }), ...rows);
}

// words is a layout's title, and below it what else tells it from others.
function words(title, facts) {
  const box = make('span', title, { class: 'words' }), said = facts.filter(Boolean).join(', ');
  if (said) box.append(make('span', said, { class: 'fact' }));
  return box;
}
