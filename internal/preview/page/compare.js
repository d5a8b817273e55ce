// The menu that chooses what a view is compared with.

import { byId, make } from './dom.js';
import { views, titleOf } from './views.js';

// showCompareMenu marks in the menu what is compared; choose gets a second view. Where the layout has colorways, the second view may be
// in one of them: chooseColorway gets its name.
export function showCompareMenu({ two, secondView, secondColorway }, choose, colorways, chooseColorway) {
  const box = byId('second-views');
  if (!box.children.length) {
    for (const view of Object.keys(views)) {
      const button = make('button', titleOf(view), { 'data-second': view, title: `The second view (Shift with ${views[view].toUpperCase()})` });
      button.addEventListener('click', () => choose(view));
      box.append(button);
    }
  }
  byId('second-colorways').parentElement.hidden = colorways.length === 0;
  showColorways(byId('second-colorways'), colorways, two ? secondColorway : undefined, chooseColorway, colorwayName, 'The second view in this colorway (Shift with O for the next)');
  for (const button of box.children) button.setAttribute('aria-pressed', String(two && button.dataset.second === secondView));
}

// showColorways fills a list of colorways to choose from.
export function showColorways(box, colorways, chosen, choose, textOf, title) {
  const names = colorways.map((c) => c.name);
  if (box.dataset.names !== JSON.stringify(names)) {
    box.dataset.names = JSON.stringify(names);
    box.replaceChildren(...names.map((name) => {
      const button = make('button', textOf(name), { title });
      button.addEventListener('click', () => choose(name));
      return button;
    }));
  }
  [...box.children].forEach((button, i) => button.setAttribute('aria-pressed', String(names[i] === chosen)));
}

// colorwayName is the name of a colorway as people read it.
export const colorwayName = (name) => name || 'as written';
