// Loads the extension of layout/editor as its editor does, with the library that it is packed with, and says what the editor is told. The
// editor's own module, which only the editor has, is a stand-in: it has the documents and takes the diagnostics, and is silent on all else.
const Module = require("node:module");
const path = require("node:path");

const uri = { scheme: "file", path: "/a.quilt", fsPath: "/a.quilt", toString: () => "file:///a.quilt" };
const text = "strip    4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock W web wedges nvay kites cream\ngrid\n  W W\n  W W\n";
const document = { uri, languageId: "quilt", version: 1, fileName: uri.path, isUntitled: false, isClosed: false, getText: () => text, lineCount: 8 };

class Disposable { constructor(end) { this.dispose = end ?? (() => {}); } }
class EventEmitter {
  constructor() { this.listeners = []; this.event = (f, self) => { this.listeners.push(self ? f.bind(self) : f); return new Disposable(); }; }
  fire(e) { for (const f of this.listeners) f(e); }
  dispose() {}
}
class Position { constructor(line, character) { Object.assign(this, { line, character }); } }
class Range { constructor(...at) { this.start = new Position(at[0], at[1]); this.end = new Position(at[2], at[3]); } }
class Diagnostic { constructor(range, message, severity) { Object.assign(this, { range, message, severity }); } }
class CancellationTokenSource {
  constructor() { this.token = { isCancellationRequested: false, onCancellationRequested: () => new Disposable() }; }
  cancel() { this.token.isCancellationRequested = true; }
  dispose() {}
}

// anything is a class, a function and an object of whatever else the library touches.
const anything = (name) => new Proxy(class {}, {
  get: (of, key) => (key in of ? of[key] : typeof key === "symbol" ? undefined : anything(`${name}.${key}`)),
  apply: () => new Disposable(),
});
const quiet = (own) => new Proxy(own, { get: (of, key) => (key in of || typeof key === "symbol" ? of[key] : /^on(Did|Will)/.test(key) || /^(register|create)/.test(key) ? () => new Disposable() : undefined) });

const told = [];
const output = { name: "", append: (s) => process.stderr.write(s), appendLine: (s) => process.stderr.write(`${s}\n`), replace() {}, clear() {}, show() {}, hide() {}, dispose() {} };
const configuration = { get: (key, otherwise) => (key === "program" ? process.env.SERVER : otherwise), has: () => false, inspect: () => undefined };
const own = {
  version: "1.82.0", Disposable, EventEmitter, Position, Range, Diagnostic, CancellationTokenSource,
  Uri: { parse: () => uri, file: () => uri },
  DiagnosticSeverity: { Error: 0, Warning: 1, Information: 2, Hint: 3 }, DiagnosticTag: {},
  env: { language: "en", appName: "stand-in", onDidChangeTelemetryEnabled: () => new Disposable() },
  workspace: quiet({ getConfiguration: () => configuration, textDocuments: [document], notebookDocuments: [], workspaceFolders: undefined, fs: {} }),
  window: quiet({ createOutputChannel: () => output, visibleTextEditors: [], activeTextEditor: { document }, tabGroups: quiet({ all: [] }), showErrorMessage: async (s) => console.log("said", s) }),
  languages: quiet({
    match: (selector, d) => ([selector].flat().some((s) => s.language === d.languageId) ? 10 : 0),
    createDiagnosticCollection: () => ({ set: (_, list) => told.push(list), delete() {}, clear() {}, dispose() {}, has: () => false, get: () => undefined, forEach() {} }),
  }),
  commands: quiet({ getCommands: async () => [] }),
};
const editor = new Proxy(own, { get: (of, key) => (key in of ? of[key] : typeof key === "symbol" ? undefined : (of[key] = anything(key))) });

const load = Module._load;
Module._load = function (name, parent, main) { return name === "vscode" ? editor : load.call(this, name, parent, main); };
const resolve = Module._resolveFilename; // the library is not beside the extension until that is packed
Module._resolveFilename = function (name, parent, ...rest) {
  return name.startsWith("vscode-languageclient") ? resolve.call(this, name, module, ...rest) : resolve.call(this, name, parent, ...rest);
};

(async () => {
  const extension = require(path.join(__dirname, "../../layout/editor/extension.js"));
  await extension.activate();
  for (let n = 0; !told.length && n < 1000; n++) await new Promise((go) => setTimeout(go, 20));
  for (const d of told[0] ?? []) console.log(["error", "warning"][d.severity], d.range.start.line, d.range.start.character, d.message.replace("\n", " | "));
  await extension.deactivate();
  console.log("ended");
})().catch((e) => { console.log(e.stack); process.exit(1); });
