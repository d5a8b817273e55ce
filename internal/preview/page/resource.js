// What the program works out of a picture after it has sent it: reports, diagrams, the squint
// picture. A resource is loaded when it is to be seen, after the newest picture was painted, and
// shown only beside the very picture that it was made of.

import { ask } from './transport.js';

const timeout = 30_000; // milliseconds

// afterPaint waits until the picture of this frame is on the screen: what is worked out meanwhile would take its time.
const afterPaint = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))));

// Where pictures follow one another this fast, milliseconds apart, the newest must have stood for the pause before anything is
// worked out of it: that would be thrown away, and be in the next one's way meanwhile.
const fast = 1_000, pause = 400;
let last = -Infinity, between = Infinity;

// pictureCame is called when another picture is shown.
export function pictureCame() {
  const now = performance.now();
  between = now - last;
  last = now;
}

// A picture that has just come is painted first; where none has, nothing is in the way of a report.
async function calm() {
  if (performance.now() - last > fast) return;
  await afterPaint();
  for (let left; between < fast && (left = last + pause - performance.now()) > 0;) await new Promise((done) => setTimeout(done, left));
}

export class Resource {
  // path is an address that a query may be added to, or a function that gives one. wanted says
  // whether it is in sight; parse turns a response into content; onChange gets the content, or
  // null as soon as it is of an older picture; discard gets what came too late to be shown.
  constructor(model, path, { wanted, parse, onChange, discard = () => {} }) {
    Object.assign(this, { model, path, wanted, parse, onChange, discard });
    this.key = ''; // of the content that is at hand
    this.loadedURL = ''; // '' for nothing
  }

  get url() {
    const path = typeof this.path === 'function' ? this.path() : this.path;
    return `${path}${path.includes('?') ? '&' : '?'}instance=${this.model.instance}&picture=${this.model.revision}${this.model.query}`;
  }

  // refresh is called when the picture or what is looked at has changed; gently where it is the same picture in a color that
  // is tried, whose content may stand until the next is there.
  refresh(gently = false) {
    if (this.loadedURL && this.loadedURL !== this.url) {
      this.loadedURL = '';
      if (!gently) this.onChange(null);
    }
    if (!this.loadedURL && this.model.revision && this.wanted()) this.load();
  }

  // load fetches the newest, one request at a time; what is asked for in vain is let go.
  async load() {
    if (this.loading) {
      if (this.asked !== this.url) this.request?.abort();
      return;
    }
    this.loading = true;
    let url;
    do {
      await calm();
      url = this.url;
      try {
        await this.fetch(url);
      } catch (e) {
        if (!(e instanceof TypeError) && e.name !== 'TimeoutError' && e.name !== 'AbortError') console.error(e);
      }
    } while (url !== this.url && this.wanted());
    this.loading = false;
  }

  // A response that it is not the newest needs nothing: the newest is on its way, and refreshes.
  async fetch(url) {
    this.request = new AbortController();
    this.asked = url;
    const signal = AbortSignal.any([this.request.signal, AbortSignal.timeout(timeout)]);
    const response = await ask(`${url}&key=${this.key}`, { signal, priority: 'low' });
    if (!response.ok) return;
    const content = await this.parse(response);
    if (url !== this.url) {
      this.discard(content);
      return;
    }
    this.loadedURL = url;
    this.onChange(content);
  }
}
