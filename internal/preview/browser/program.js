// The program in its worker, as a page sees it: it is asked and answers, can be ended at any time, and begins again at the next
// question. What it could not keep is held here, and handed to the next.

const slow = 8_000; // milliseconds that an answer may take before the page offers to end the program
const tooMuch = 1.5 * 2 ** 30; // bytes of memory from which on another program takes over as soon as nothing is asked

export class Program {
  constructor() {
    this.worker = null;
    this.asked = new Map(); // by number
    this.number = 0;
    this.unkept = new Map(); // bytes by name
    this.why = ''; // it is not kept, '' where all is
    this.refusal = ''; // of the browser to keep anything
    this.trouble = ''; // why the last one ended
    this.onKept = this.onSlow = () => {};
  }

  begin() {
    if (this.worker) return;
    const worker = this.worker = new Worker('worker.js');
    worker.addEventListener('message', ({ data }) => { if (worker === this.worker) this.receive(data); });
    worker.addEventListener('error', (e) => { e.preventDefault(); if (worker === this.worker) this.fail(e.message); });
    worker.postMessage({ begin: true, rescued: [...this.unkept] });
  }

  // end ends the program, whatever it does; all that waits for it is told.
  end(why = 'it was ended') {
    this.worker?.terminate();
    this.worker = null;
    const left = [...this.asked.values()];
    for (const { timer } of left) clearTimeout(timer);
    this.asked.clear();
    for (const { lost } of left) lost(why);
    this.onSlow(false);
  }

  fail(why) {
    this.trouble = why;
    this.end(why);
  }

  receive(data) {
    if (data.runs) {
      this.trouble = '';
      this.why = this.refusal = data.why;
      this.onKept();
    } else if (data.dead !== undefined) {
      this.fail(data.dead);
    } else if (data.unkept !== undefined) {
      if (data.why) this.unkept.set(data.unkept, data.bytes);
      else this.unkept.delete(data.unkept);
      this.why = data.why || this.unkept.size && this.why || this.refusal;
      this.onKept();
    } else if (data.piece !== undefined) {
      this.asked.get(data.id)?.piece(data.piece);
    } else {
      const asked = this.asked.get(data.id);
      this.forget(data.id);
      asked?.answer(data);
      if (data.memory > tooMuch && [...this.asked.values()].every((a) => a.flows)) this.end('it had grown too large');
    }
  }

  // send asks for an address, and gives what ends that: answer, piece and lost are told how it goes.
  send(request, handlers) {
    this.begin();
    const id = ++this.number;
    const { flows } = request, timer = flows ? 0 : setTimeout(() => this.onSlow(true), slow);
    this.asked.set(id, { ...handlers, flows, timer, began: performance.now() });
    this.worker.postMessage({ id, ...request });
    return () => {
      if (this.forget(id)) this.worker?.postMessage({ id, end: true });
    };
  }

  forget(id) {
    const asked = this.asked.get(id);
    clearTimeout(asked?.timer);
    const was = this.asked.delete(id);
    if (![...this.asked.values()].some(({ flows, began }) => !flows && performance.now() - began >= slow)) this.onSlow(false);
    return was;
  }

  // ask is as fetch.
  ask(address, { body, headers = {}, signal } = {}) {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) {
        reject(signal.reason);
        return;
      }
      const posted = typeof body === 'string' ? new TextEncoder().encode(body) : body;
      const end = this.send({ address, posted, token: headers['X-Edit-Token'] }, {
        answer: ({ status, type, bytes }) => resolve(new Response(bytes ?? '', { status, headers: { 'Content-Type': type } })),
        lost: (why) => reject(new TypeError(why)),
      });
      signal?.addEventListener('abort', () => { end(); reject(signal.reason); });
    });
  }
}

// Stream is the stream of events at an address, as far as pages ask for it.
export class Stream {
  constructor(program, address) {
    this.onmessage = this.onerror = () => {};
    this.close = program.send({ address, flows: true }, {
      piece: (text) => this.onmessage({ data: text.replace(/^data: /, '').trimEnd() }),
      answer: () => this.onerror(),
      lost: () => this.onerror(),
    });
  }
}
