// Copying text, and saying briefly that something was done.

import { byId, make } from './dom.js';

// copyText puts text where it can be pasted from, and says what was copied, and what else there is to say of it.
export async function copyText(text, what, more = '') {
  try {
    await navigator.clipboard.writeText(text);
  } catch { // a browser gives its clipboard to safe addresses alone, which a forwarded one is not
    if (!copySelected(text)) {
      showNote('This browser does not let the page copy.');
      return;
    }
  }
  showNote(more ? `${what} copied. ${more}` : `${what} copied`);
}

function copySelected(text) {
  const field = document.createElement('textarea'), focused = document.activeElement;
  field.value = text;
  document.body.append(field);
  field.select();
  const copied = document.execCommand('copy');
  field.remove();
  focused?.focus();
  return copied;
}

const noteTime = 4_000; // milliseconds
let timer = 0;

// showNote says something at the lower edge of the picture for a while; offer is a button, as { text, press }, and stays longer.
export function showNote(text, offer) {
  const note = byId('note');
  note.textContent = text;
  note.hidden = false;
  const hide = () => { note.hidden = true; };
  if (offer) {
    const button = make('button', offer.text);
    button.addEventListener('click', () => { hide(); offer.press(); });
    note.append(button);
  }
  clearTimeout(timer);
  timer = setTimeout(hide, offer ? 3 * noteTime : noteTime);
}
