// The worker in which the program runs: it hands on what the page asks, keeps the files, and tells the program of those that other pages
// have changed. What the page asks before the program runs waits.

import { Storage } from './storage.js';

const storage = new Storage();
const waiting = [];
let runs = false;

// host is what the program finds in the worker: it calls the functions that stand here, and adds its own.
globalThis.host = {
  keep: (name, bytes, over) => storage.keep(name, bytes, over),
  unkept: (name, bytes, why) => postMessage({ unkept: name, bytes, why }),
  piece: (id, text) => postMessage({ id, piece: text }),
  answer: (id, status, type, bytes) => postMessage({ id, status, type, bytes, memory: memory.buffer.byteLength }, bytes ? [bytes.buffer] : []),
  ready: () => {},
};
let memory = null;

function take({ id, address, posted, token, flows, end }) {
  if (end) host.end(id);
  else host.ask(id, address, posted ?? null, token ?? '', flows === true);
}

addEventListener('message', ({ data }) => {
  if (data.begin) begin(data.rescued);
  else if (runs) take(data);
  else waiting.push(data);
});

// program is what the file holds: a host may have unpacked it on the way.
async function program() {
  const response = await fetch('engine.wasm.gz');
  if (!response.ok) throw new Error(`engine.wasm.gz: ${response.status}`);
  const reader = response.body.getReader(), first = await reader.read(), isPacked = first.value?.[0] === 0x1f && first.value[1] === 0x8b;
  const rest = new ReadableStream({
    start(c) { c.enqueue(first.value); },
    async pull(c) {
      const { done, value } = await reader.read();
      if (done) c.close();
      else c.enqueue(value);
    },
  });
  return new Response(isPacked ? rest.pipeThrough(new DecompressionStream('gzip')) : rest, { headers: { 'Content-Type': 'application/wasm' } });
}

async function begin(rescued) {
  try {
    const go = new Go(), opening = storage.open(), made = await WebAssembly.instantiateStreaming(program(), go.importObject);
    memory = made.instance.exports.mem;
    const ended = go.run(made.instance); // up to where the program waits
    ended.then(() => postMessage({ dead: 'it ended' }));
    await opening;
    storage.onChange = async (name) => hold(name, await storage.file(name));
    for (const file of await storage.all()) hold(file.name, file);
    for (const [name, bytes] of rescued) host.rescue(name, bytes);
    runs = true;
    postMessage({ runs: true, keeps: storage.why === '', why: storage.why });
    for (const data of waiting.splice(0)) take(data);
  } catch (e) {
    postMessage({ dead: String(e?.message ?? e) });
  }
}

function hold(name, file) { host.hold(name, file?.bytes ?? null, file?.version ?? ''); }
