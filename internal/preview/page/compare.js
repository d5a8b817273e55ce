// The menu that chooses what a view is compared with.

import { byId, make } from './dom.js';
import { views, titleOf } from './views.js';

// showCompareMenu marks in the menu what is compared; choose gets a second view.
export function showCompareMenu({ two, secondView }, choose) {
  const box = byId('second-views');
  if (!box.children.length) {
    for (const view of Object.keys(views)) {
      const button = make('button', `with ${titleOf(view).toLowerCase()}`, { 'data-second': view, title: `The second view (Shift with ${views[view].toUpperCase()})` });
      button.addEventListener('click', () => choose(view));
      box.append(button);
    }
  }
  for (const button of box.children) button.setAttribute('aria-pressed', String(two && button.dataset.second === secondView));
}
