// What the browser keeps: layouts and photos, and the folder that files are saved into. It is a database and not the browser's simpler
// store of words, which workers cannot reach and photos would not go into. Several pages share it: a file is written only over the version that the
// writer knew, and the others are told.

const databaseName = 'eighthturn';
const filesName = 'files'; // { name, bytes, version }
const choicesName = 'choices'; // what was chosen, by name

const whys = { QuotaExceededError: 'this browser has no room left' };
const refused = 'this browser keeps nothing for this page';

export class Storage {
  constructor() {
    this.database = null;
    this.why = ''; // nothing can be kept
    this.onChange = () => {}; // is told of a file that another page has changed
    this.channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel(databaseName) : null;
    this.channel?.addEventListener('message', ({ data }) => this.onChange(data));
  }

  // open opens the database, or notes why there is none.
  async open() {
    try {
      const request = indexedDB.open(databaseName, 1);
      request.onupgradeneeded = () => {
        request.result.createObjectStore(filesName, { keyPath: 'name' });
        request.result.createObjectStore(choicesName);
      };
      this.database = await done(request);
      this.database.onversionchange = () => this.database.close();
    } catch {
      this.why = refused;
    }
  }

  store(name, mode = 'readonly') { return this.database.transaction(name, mode).objectStore(name); }

  // all is every file.
  async all() { return this.database ? done(this.store(filesName).getAll()) : []; }

  async file(name) { return this.database ? done(this.store(filesName).get(name)) : undefined; }

  // keep writes a file in place of a version, '' for none, or takes it away where bytes is null. It gives the new version; the file that is
  // there in its place, as changed, null for none; or why nothing could be kept.
  async keep(name, bytes, over) {
    if (!this.database) return { why: this.why };
    try {
      const transaction = this.database.transaction(filesName, 'readwrite'), files = transaction.objectStore(filesName);
      const ended = new Promise((resolve, reject) => {
        transaction.oncomplete = resolve;
        transaction.onabort = transaction.onerror = () => reject(transaction.error);
      });
      ended.catch(() => {});
      const there = await done(files.get(name));
      if ((there?.version ?? '') !== over) return { changed: there?.bytes ?? null, version: there?.version ?? '' };
      const version = bytes ? crypto.getRandomValues(new Uint32Array(4)).join('-') : '';
      if (bytes) files.put({ name, bytes, version });
      else files.delete(name);
      await ended;
      this.channel?.postMessage(name);
      return { version };
    } catch (e) {
      return { why: whys[e?.name] ?? refused };
    }
  }

  async choice(name) { return this.database ? done(this.store(choicesName).get(name)) : undefined; }

  async choose(name, value) {
    if (this.database) await done(this.store(choicesName, 'readwrite').put(value, name));
  }
}

const done = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});
