// The views, and what is said beneath the picture in each.

import { make } from './panel.js';

// views by name, in the order of their buttons: the letter that chooses it.
export const views = { colour: 'c', value: 'v', line: 'l', squint: 'u', vanishing: 'a', protan: 'p', deutan: 'd', tritan: 't' };

// legend is what is said of a view: nothing of a plain one that stands alone. Marks are those
// of the reports, null while they are worked out; away is how far off the squint stands.
export function legend(view, { sheet, marks, squinted, alone }) {
  const name = alone ? [] : [make('span', view)];
  switch (view) {
    case 'squint':
      return [...name, `as from ${sheet?.away ?? ''}, with eyes half shut${squinted ? '' : ' …'}`];
    case 'vanishing':
      return [...name, ...marks ? marks.map(sample) : ['looking for seams that are hard to see …']];
    case 'protan': case 'deutan': case 'tritan':
      return [alone ? `as ${view} eyes see it` : view];
  }
  return name;
}

function sample({ says, heavy }) {
  const e = make('span', undefined, { class: `sample ${heavy ? 'heavy' : 'thin'}` });
  e.append(make('i', undefined, { 'aria-hidden': 'true' }), says);
  return e;
}
