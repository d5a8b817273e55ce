// The connection to the program. Its events say that there is something new, and bring it to pages that have what was newest before;
// others fetch what they lack. All tabs of one preview share one event stream, since a browser opens six connections to
// a host at the most: the tab that holds the lock listens and passes the events on to the others.

import { ask, listen, place, shared } from './transport.js';

const heartbeat = 15_000; // milliseconds between two events at the most
const common = `eighthturn${place}`; // to the tabs of one layout
const maxDelay = 4_000; // milliseconds between two attempts

export class Connection {
  // pictureRevision says which picture the page has, query what addresses go on with; receive gets each message; onStatus gets
  // "open", "lost" or "refused".
  constructor({ pictureRevision, query, receive, onStatus }) {
    Object.assign(this, { pictureRevision, query, receive, onStatus });
    this.instance = '';
    this.revision = -1;
    this.lastHeard = Date.now();
    this.attempts = 0;
    this.channel = shared && 'BroadcastChannel' in window ? new BroadcastChannel(common) : null;
    this.channel?.addEventListener('message', (e) => this.onEvent(e.data));
    addEventListener('pagehide', () => this.stop());
    addEventListener('pageshow', (e) => { if (!e.persisted) return; this.start(); this.reconnect(); });
    for (const name of ['online', 'focus']) addEventListener(name, () => this.reconnect());
    document.addEventListener('visibilitychange', () => { if (!document.hidden) this.reconnect(); });
    setInterval(() => this.checkHeartbeat(), heartbeat / 3);
  }

  start() {
    this.stopped = false;
    if (!shared || !navigator.locks) {
      this.openStream();
      return;
    }
    const controller = this.lockRequest = new AbortController();
    navigator.locks.request(`${common}-stream`, { signal: controller.signal }, () => {
      if (this.stopped) return undefined;
      this.openStream();
      return new Promise((release) => { this.releaseLock = release; });
    }).catch(() => {});
  }

  stop() {
    this.stopped = true;
    this.lockRequest?.abort();
    this.closeStream();
    this.releaseLock?.();
    clearTimeout(this.retryTimer);
  }

  openStream() {
    this.closeStream();
    this.isLeader = true;
    const stream = this.stream = listen('events');
    stream.onmessage = (e) => {
      this.attempts = 0;
      const event = JSON.parse(e.data);
      this.channel?.postMessage(event);
      this.onEvent(event);
    };
    stream.onerror = () => {
      if (stream !== this.stream) return;
      this.closeStream();
      this.channel?.postMessage({ lost: true });
      this.onLost();
    };
  }

  closeStream() {
    this.stream?.close();
    this.stream = null;
  }

  onEvent(event) {
    if (this.stopped) return;
    if (event.lost) {
      this.onLost();
      return;
    }
    this.lastHeard = Date.now();
    if (event.instance === this.instance && event.revision === this.revision) this.onStatus('open');
    else if (this.brings(event)) this.take(event, performance.now());
    else this.update();
  }

  // brings says whether an event is the message that this page lacks: one that adds to its picture, or leaves it. Events are of the
  // size that the preview began with.
  brings({ instance, picture, base, quilt }) {
    const have = this.pictureRevision();
    return !this.updating && this.query() === '' && instance === this.instance && (picture === have || base === have && (base > 0 || quilt !== undefined));
  }

  // onLost tries again after a delay that doubles each time.
  onLost() {
    this.onStatus('lost');
    clearTimeout(this.retryTimer);
    const delay = Math.min(maxDelay, 250 * 2 ** this.attempts++) * (0.75 + Math.random() / 2);
    this.retryTimer = setTimeout(() => this.reconnect(), delay);
  }

  // reconnect makes sure of the newest, after a sleep or a loss.
  reconnect() {
    if (this.stopped) return;
    if (this.isLeader && !this.stream) this.openStream();
    this.update();
  }

  // checkHeartbeat notices a connection that went dead without a word.
  checkHeartbeat() {
    if (this.stopped || Date.now() - this.lastHeard < 2.5 * heartbeat) return;
    if (this.isLeader) this.closeStream();
    this.reconnect();
  }

  // update fetches what the page lacks, one request at a time.
  async update() {
    if (this.updating) {
      this.updateAgain = true;
      return;
    }
    this.updating = true;
    do {
      this.updateAgain = false;
      await this.fetch();
    } while (this.updateAgain && !this.stopped);
    this.updating = false;
  }

  async fetch() {
    const began = performance.now();
    try {
      const response = await ask(`state?instance=${this.instance}&have=${this.pictureRevision()}${this.query()}`, { signal: AbortSignal.timeout(heartbeat), priority: 'high' });
      if (response.status === 401 || response.status === 403) {
        this.onStatus('refused');
        return;
      }
      if (!response.ok) throw new Error(response.statusText);
      this.take(await response.json(), began);
    } catch (e) {
      if (this.stopped) return;
      if (e instanceof TypeError || e.name === 'TimeoutError' || e.name === 'AbortError') this.onLost();
      else console.error(e);
    }
  }

  // take hands on a message that was asked for at a time.
  take(message, began) {
    this.lastHeard = Date.now();
    this.onStatus('open');
    this.receive(message, { began, arrived: performance.now() });
    this.instance = message.instance;
    this.revision = message.revision;
  }
}
