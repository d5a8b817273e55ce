// Copying text, and saying briefly that something was done.

import { byId } from './dom.js';

// copyText puts text where it can be pasted from, and says what was copied.
export async function copyText(text, what) {
  try {
    await navigator.clipboard.writeText(text);
  } catch { // a browser gives its clipboard to safe addresses alone, which a forwarded one is not
    if (!copySelected(text)) {
      showNote('This browser does not let the page copy.');
      return;
    }
  }
  showNote(`${what} copied`);
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

// showNote says something at the lower edge of the picture for a while.
export function showNote(text) {
  const note = byId('note');
  note.textContent = text;
  note.hidden = false;
  clearTimeout(timer);
  timer = setTimeout(() => { note.hidden = true; }, noteTime);
}
