// The views, and the caption of a picture in each.

import { make } from './dom.js';

// views by name, in the order of their buttons: the letter that chooses it.
export const views = { colour: 'c', value: 'v', line: 'l', squint: 'u', vanishing: 'a', protan: 'p', deutan: 'd', tritan: 't' };

// viewName is the name of a view as people read it.
export const viewName = (view) => view === 'colour' ? 'color' : view;

// titleOf is the same where it begins a line.
export const titleOf = (view) => viewName(view).replace(/^./, (c) => c.toUpperCase());

// captionOf is the caption of a picture: nothing for a plain view that is shown singly. Marks are those
// of the report, null while they are worked out; away is how far off the squint stands.
// In names the colorway where two views differ in it; alternative is what is auditioned in the picture, '' for nothing.
export function captionOf(view, { quilt, marks, hasSquint, single, colorway = '', alternative = '' }) {
  const name = single ? [] : [make('span', [viewName(view), colorway].filter(Boolean).join(', '))];
  if (alternative) name.push(make('span', alternative));
  switch (view) {
    case 'squint':
      return [...name, `as from ${quilt?.away ?? ''}, with half-closed eyes${hasSquint ? '' : ' …'}`];
    case 'vanishing':
      return [...name, ...marks ? marks.map(sample) : ['looking for seams that are hard to see …']];
    case 'protan': case 'deutan': case 'tritan':
      return [single ? `as seen with ${view} vision` : view, ...alternative ? name.slice(-1) : []];
  }
  return name;
}

function sample({ label, heavy }) {
  const e = make('span', undefined, { class: `sample ${heavy ? 'heavy' : 'thin'}` });
  e.append(make('i', undefined, { 'aria-hidden': 'true' }), label);
  return e;
}
