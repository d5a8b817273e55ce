// The fabrics as they are printed and woven, in color or by value: a picture that is laid over the faces, as fine as it is looked at.

import { Resource } from './resource.js';

const sizes = [1000, 2000, 4000]; // pixels that the program makes it in
const enough = 0.8; // of the pixels of the screen

// printedAs is the view that prints are made in for a view of the page, undefined where it shows none.
export const printedAs = (view) => ({ colour: 'colour', value: 'value', vanishing: 'value' })[view];

export class Prints {
  // as is the view that it is made in; panes gives those that may show it; on says whether it is wanted; colorway names that in which it is, null for the picture's own; camera
  // tells how near the quilt is.
  constructor(model, { as, panes, on, colorway, camera }) {
    Object.assign(this, { model, as, panes, on, colorway, camera });
    this.url = null;
    const dressed = { get instance() { return model.instance; }, get revision() { return model.revision; }, get query() { return model.queryIn(colorway()); } };
    this.resource = new Resource(dressed, () => `prints.png?pixels=${this.pixels()}${as === 'value' ? '&view=value' : ''}`, {
      wanted: () => this.wanted(),
      parse: async (response) => {
        const url = URL.createObjectURL(await response.blob()), image = new Image();
        image.src = url;
        await image.decode();
        return url;
      },
      onChange: (url) => this.lay(url),
      discard: (url) => URL.revokeObjectURL(url),
    });
  }

  // there says whether the quilt has a fabric that is no plain color.
  get there() { return this.panes().length > 0 && this.model.fabricsIn(this.colorway()).some((f) => f.patterned); }

  // wearing are the drawings that show it.
  wearing() { return this.panes().filter((drawing) => printedAs(drawing.view) === this.as); }

  wanted() { return this.there && this.on() && this.wearing().length > 0; }

  // pixels is the size that shows the quilt as finely as the screen does, and never less than is there already.
  pixels() {
    const { width, height } = this.model.quilt ?? { width: 1, height: 1 };
    const needed = Math.max(width, height) * this.camera.scale * (devicePixelRatio || 1) * enough;
    return sizes.find((size) => size >= needed) ?? sizes.at(-1);
  }

  // refresh keeps a picture of another size until the next is there, and takes one away that is not wanted.
  refresh(gently = false) {
    this.resource.refresh(gently);
    if (!this.wanted()) this.lay(null);
  }

  lay(url) {
    const old = this.url;
    this.url = url;
    this.show();
    if (!url) this.resource.loadedURL = '';
    if (old && old !== url) URL.revokeObjectURL(old);
  }

  // show lays the picture over the drawings that wear the fabrics it was made of.
  show() {
    for (const drawing of this.wearing()) drawing.showPrints(this.url);
  }
}
