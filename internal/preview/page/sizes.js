// The menu of the layout's sizes: the picture in the one that is chosen is asked for, and all that is worked out of it.

import { byId } from './dom.js';
import { showColorways } from './compare.js';
import { showNote } from './copy.js';

const textOf = (name) => name || 'size as written';

export class Sizes {
  // settings keeps the choice; changed is called when another picture is to be asked for.
  constructor({ model, settings, announce, changed }) {
    Object.assign(this, { model, settings, announce, changed });
  }

  // choose shows the quilt in a size, null for the one that the preview began with.
  choose(name) {
    this.settings.size = this.model.size = name;
    this.changed();
  }

  // next goes on to the next size.
  next() {
    const names = this.model.sizes.map((s) => s.name);
    if (!names.length) return;
    const next = names[(names.indexOf(this.model.sizeName) + 1) % names.length];
    this.choose(next);
    this.announce(`in ${textOf(next)}`);
  }

  // keep lets a size go that the layout has no more, with a word.
  keep() {
    const { model, settings } = this;
    if (settings.size === null || model.hasSize(settings.size)) return;
    const alike = model.sizes.find((s) => s.name.toLowerCase() === settings.size.toLowerCase()); // as an address may have it
    if (alike) {
      settings.size = model.size = alike.name;
      return;
    }
    showNote(`This layout has no size “${settings.size}” now; it is shown ${model.begun ? `in ${model.begun}` : 'as written'}.`);
    settings.size = model.size = null;
  }

  showMenu() {
    const { model } = this, text = textOf(model.sizeName), name = byId('size-name');
    byId('sizes').hidden = model.sizes.length === 0;
    name.textContent = model.sizeName || 'size'; // short: the title stands beside it
    name.parentElement.setAttribute('aria-label', `Size: ${text}`);
    showColorways(byId('size-items'), model.sizes, model.sizeName, (size) => this.choose(size), textOf, 'Show the quilt in this size (Z for the next)');
  }
}
