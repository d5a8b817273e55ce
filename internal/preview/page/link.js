// The line to the program. It says only that there is something new; what it is, is fetched.
// All tabs of one preview share one stream, since a browser opens six connections to a host
// at the most: the tab that holds the lock listens and tells the others.

const beat = 15_000; // how often the program is heard, at least
const longest = 4_000; // between two tries

export class Link {
  // have says which picture the page has; take gets each message; tell gets the line's state:
  // "open", "lost" or "refused".
  constructor({ have, take, tell }) {
    Object.assign(this, { have, take, tell });
    this.instance = '';
    this.revision = -1;
    this.heard = Date.now();
    this.tries = 0;
    this.channel = 'BroadcastChannel' in window ? new BroadcastChannel('eighthturn') : null;
    this.channel?.addEventListener('message', (e) => this.hear(e.data));
    addEventListener('pagehide', () => this.leave());
    addEventListener('pageshow', (e) => { if (e.persisted) this.join(); });
    for (const name of ['online', 'focus', 'pageshow']) addEventListener(name, () => this.again());
    document.addEventListener('visibilitychange', () => { if (!document.hidden) this.again(); });
    setInterval(() => this.watch(), beat / 3);
  }

  join() {
    this.left = false;
    if (!navigator.locks) {
      this.listen();
      return;
    }
    const stop = this.stop = new AbortController();
    navigator.locks.request('eighthturn-stream', { signal: stop.signal }, () => {
      if (this.left) return undefined;
      this.listen();
      return new Promise((end) => { this.end = end; });
    }).catch(() => {});
  }

  leave() {
    this.left = true;
    this.stop?.abort();
    this.close();
    this.end?.();
    clearTimeout(this.retry);
  }

  listen() {
    this.close();
    this.leads = true;
    const stream = this.stream = new EventSource('/events');
    stream.onmessage = (e) => {
      this.tries = 0;
      const heard = JSON.parse(e.data);
      this.channel?.postMessage(heard);
      this.hear(heard);
    };
    stream.onerror = () => {
      if (stream !== this.stream) return;
      this.close();
      this.channel?.postMessage({ lost: true });
      this.lose();
    };
  }

  close() {
    this.stream?.close();
    this.stream = null;
  }

  hear(heard) {
    if (this.left) return;
    if (heard.lost) {
      this.lose();
      return;
    }
    this.heard = Date.now();
    if (heard.instance !== this.instance || heard.revision !== this.revision) this.check();
    else this.tell('open');
  }

  // lose tries again after a while that doubles each time.
  lose() {
    this.tell('lost');
    clearTimeout(this.retry);
    const wait = Math.min(longest, 250 * 2 ** this.tries++) * (0.75 + Math.random() / 2);
    this.retry = setTimeout(() => this.again(), wait);
  }

  // again makes sure of the newest, after a sleep or a loss.
  again() {
    if (this.left) return;
    if (this.leads && !this.stream) this.listen();
    this.check();
  }

  // watch notices a line that went dead without a word.
  watch() {
    if (this.left || Date.now() - this.heard < 2.5 * beat) return;
    if (this.leads) this.close();
    this.again();
  }

  // check fetches what the page lacks, one request at a time.
  async check() {
    if (this.busy) {
      this.more = true;
      return;
    }
    this.busy = true;
    do {
      this.more = false;
      await this.fetch();
    } while (this.more && !this.left);
    this.busy = false;
  }

  async fetch() {
    const began = performance.now();
    try {
      const answer = await fetch(`/state?instance=${this.instance}&have=${this.have()}`, { signal: AbortSignal.timeout(beat), priority: 'high' });
      if (answer.status === 401 || answer.status === 403) {
        this.tell('refused');
        return;
      }
      if (!answer.ok) throw new Error(answer.statusText);
      const message = await answer.json();
      this.heard = Date.now();
      this.tell('open');
      this.take(message, { began, arrived: performance.now() });
      this.instance = message.instance;
      this.revision = message.revision;
    } catch (e) {
      if (this.left) return;
      if (e instanceof TypeError || e.name === 'TimeoutError' || e.name === 'AbortError') this.lose();
      else console.error(e);
    }
  }
}
