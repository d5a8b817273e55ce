// Elements of the page.

export const byId = (id) => document.getElementById(id);

export function make(name, text, attributes = {}) {
  const e = document.createElement(name);
  if (text !== undefined) e.textContent = text;
  for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
  return e;
}

// say gives an element other words, and leaves it alone where it has them already: the browser would lay the page out anew.
export function say(e, text) {
  if (e.textContent !== text) e.textContent = text;
}

export function swatch(colour, gray) {
  const e = make('span', undefined, { class: 'swatch', 'aria-hidden': 'true' });
  e.style.setProperty('--fabric', colour);
  if (gray) e.style.setProperty('--gray', gray);
  return e;
}

// download hands a file to the browser under its name, and gives how that is said.
export function download(blob, name) {
  const link = make('a', undefined, { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return `saved as ${name}`;
}
