// What the program works out of a picture after it has sent it: the reports, and the squint
// picture. It is asked for when it is to be seen, after the newest picture was painted, and
// shown only beside the very picture that it was made of.

const within = 30_000; // milliseconds

const painted = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));

export class Study {
  // path is where it is asked for, an address that a question may be added to, or what gives
  // it; wanted says whether anybody looks; read turns an answer into
  // what show takes; show is told null as soon as what it shows is of an older picture; drop
  // is given what came too late to be shown.
  constructor(model, path, { wanted, read, show, drop = () => {} }) {
    Object.assign(this, { model, path, wanted, read, show, drop });
    this.key = '';
    this.made = ''; // the picture that it was made of
  }

  get now() {
    const path = typeof this.path === 'function' ? this.path() : this.path;
    return `${path}${path.includes('?') ? '&' : '?'}instance=${this.model.instance}&picture=${this.model.revision}`;
  }

  // renew is called when the picture or what is looked at has changed.
  renew() {
    if (this.made && this.made !== this.now) {
      this.made = '';
      this.show(null);
    }
    if (!this.made && this.model.revision && this.wanted()) this.ask();
  }

  // ask asks for the newest picture's, one request at a time.
  async ask() {
    if (this.busy) return;
    this.busy = true;
    let asked;
    do {
      await painted();
      asked = this.now;
      try {
        await this.fetch(asked);
      } catch (e) {
        if (!(e instanceof TypeError) && e.name !== 'TimeoutError' && e.name !== 'AbortError') console.error(e);
      }
    } while (asked !== this.now && this.wanted());
    this.busy = false;
  }

  // An answer that it is not the newest needs nothing: the newest is on its way, and renews.
  async fetch(asked) {
    const answer = await fetch(`${asked}&key=${this.key}`, { signal: AbortSignal.timeout(within), priority: 'low' });
    if (!answer.ok) return;
    const content = await this.read(answer);
    if (asked !== this.now) {
      this.drop(content);
      return;
    }
    this.made = asked;
    this.show(content);
  }
}
