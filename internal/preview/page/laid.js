// Pictures laid over the drawings: of an alternative that is more than another color, whose faces the page does not have.

import { Resource } from './resource.js';

// viewOf is the view that a picture is laid in over a view of the page: seams that vanish are marked on grays, and lines have no colors.
const viewOf = (view) => ({ vanishing: 'value', line: '' })[view] ?? view;

export class Laid {
  // panes gives those that show the quilt in what is laid; query gives what addresses go on with, '' for nothing to lay.
  constructor(model, { panes, query }) {
    Object.assign(this, { panes, query });
    this.urls = [null, null];
    this.resources = this.urls.map((_, n) => new Resource(model, () => this.path(n), {
      wanted: () => this.query() !== '' && this.view(n) !== '',
      parse: async (response) => {
        const url = URL.createObjectURL(await response.blob()), image = new Image();
        image.src = url;
        await image.decode();
        return url;
      },
      onChange: (url) => this.lay(n, url),
      discard: (url) => URL.revokeObjectURL(url),
    }));
  }

  view(n) { return viewOf(this.panes()[n]?.drawing.view ?? 'line'); }

  path(n) { return `${this.view(n) === 'squint' ? 'squint.png?' : `picture.svg?view=${this.view(n)}`}${this.query()}`; }

  // refresh keeps what is laid until the next is there, and takes it away at once where nothing is to be laid.
  refresh() {
    this.resources.forEach((resource, n) => {
      const wanted = resource.wanted();
      resource.refresh(wanted);
      if (!wanted) this.lay(n, null);
    });
  }

  lay(n, url) {
    const old = this.urls[n];
    this.urls[n] = url;
    this.panes()[n]?.drawing.lay(url);
    if (old && old !== url) URL.revokeObjectURL(old);
  }
}
