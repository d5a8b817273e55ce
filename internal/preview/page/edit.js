// Writing to the layout's file, where the program was told to allow it: one thing at a time, with the run's own token and the mark of
// the text that the page shows. What could not be written is said, and why.

import { showNote } from './copy.js';
import { ask, silence } from './transport.js';

export class Editing {
  constructor() {
    this.token = ''; // '' where the page may not write
    this.mark = ''; // of the newest text
    this.steps = { undo: 0, redo: 0 };
    this.busy = Promise.resolve();
    this.onWritten = () => {}; // is told of the mark of a text that this page wrote, but for one that was typed
  }

  get allowed() { return this.token !== ''; }

  // receive takes from a message whether the page may write, and what it would write over.
  receive({ edit = '', mark }) {
    this.token = edit;
    this.mark = mark;
  }

  // ask does one thing, after what is being done; the reply has why, '' for none, where nothing was written.
  ask(request) {
    const reply = this.busy.then(() => this.post('edit', request)).then((reply) => {
      if (!reply.why && request.do !== 'text' && request.do !== 'read') this.onWritten(reply.mark);
      return reply;
    });
    this.busy = reply.catch(() => {});
    return reply;
  }

  // post sends a request and gives the reply; it has why where the program does not answer, or refuses.
  async post(path, request, signal) {
    try {
      const response = await ask(path, { method: 'POST', headers: { 'Content-Type': 'application/json', 'X-Edit-Token': this.token }, body: JSON.stringify(request), signal });
      if (!response.headers.get('Content-Type')?.startsWith('application/json')) return { why: (await response.text()).trim(), failed: true };
      const reply = await response.json();
      if ('undo' in reply) this.steps = { undo: reply.undo, redo: reply.redo };
      if (reply.mark) this.mark = reply.mark;
      return reply;
    } catch (e) {
      if (e.name === 'AbortError') throw e;
      return { why: silence.charAt(0).toLowerCase() + silence.slice(1, -1), failed: true };
    }
  }

  // act does one thing and says how it went; done is the sentence where it went well.
  async act(request, done) {
    const reply = await this.ask({ seen: this.mark, ...request });
    if (reply.why) showNote(`Not saved: ${reply.why}.`);
    else showNote(typeof done === 'function' ? done(reply) : done, request.do === 'undo' ? redo(this) : reply.undo ? undo(this) : undefined);
    return reply;
  }

  undo() { return this.act({ do: 'undo' }, 'Undone.'); }
  redo() { return this.act({ do: 'redo' }, 'Done again.'); }
}

const undo = (editing) => ({ text: 'Undo', press: () => editing.undo() });
const redo = (editing) => ({ text: 'Redo', press: () => editing.redo() });
