// A word on what was done, beside the picture for a while and for screen readers; with a button where something can be done about it.

import { byId, make } from './dom.js';

const stays = 8000; // milliseconds
let timer = 0;

// say says a sentence; offer is a button as { text, press }.
export function say(text, offer) {
  const box = byId('said');
  clearTimeout(timer);
  box.replaceChildren(make('span', text));
  if (offer) {
    const button = make('button', offer.text);
    button.addEventListener('click', () => { hush(); offer.press(); });
    box.append(button);
  }
  timer = setTimeout(hush, offer ? 2 * stays : stays);
}

// hush takes the word away.
export function hush() { byId('said').replaceChildren(); }
