// Writes a layout as a text editor does, through the protocol's own library, and says what it was answered, a line each.
const { spawn } = require("node:child_process");
const p = require("vscode-languageserver-protocol/node");

const uri = "untitled:a.quilt";
let text = "strip    4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock W web wedges nvay kites cream\ngrid\n  W W\n  W W\n";
let version = 1;

const server = spawn(process.env.SERVER, [], { stdio: ["pipe", "pipe", "inherit"] });
const c = p.createProtocolConnection(new p.StreamMessageReader(server.stdout), new p.StreamMessageWriter(server.stdin));
const document = { uri };
const say = (...words) => console.log(words.join(" "));

const waiting = [];
let told = [];
c.onNotification(p.PublishDiagnosticsNotification.type, (news) => {
  told = news;
  waiting.splice(0).forEach((go) => go());
});
const toldOf = async (wanted) => {
  while (told.version !== wanted) await new Promise((go) => waiting.push(go));
  return told.diagnostics;
};

const offset = (at) => text.split("\n").slice(0, at.line).reduce((n, l) => n + l.length + 1, 0) + at.character;
const place = (word, behind = 0) => {
  const at = text.indexOf(word) + behind;
  const before = text.slice(0, at).split("\n");
  return { line: before.length - 1, character: before.at(-1).length };
};

// type changes the text on both sides, the last change first.
async function type(edits) {
  const changes = [...edits].sort((a, b) => offset(b.range.start) - offset(a.range.start));
  for (const e of changes) text = text.slice(0, offset(e.range.start)) + e.newText + text.slice(offset(e.range.end));
  await c.sendNotification(p.DidChangeTextDocumentNotification.type, {
    textDocument: { uri, version: ++version },
    contentChanges: changes.map((e) => ({ range: e.range, text: e.newText })),
  });
}
const insert = (at, newText) => type([{ range: { start: at, end: at }, newText }]);

// tokens keeps the words' sorts as editors do: whole once, then by what changed.
let tokens;
async function colored() {
  if (!tokens) tokens = await c.sendRequest(p.SemanticTokensRequest.type, { textDocument: document });
  else {
    const now = await c.sendRequest(p.SemanticTokensDeltaRequest.type, { textDocument: document, previousResultId: tokens.resultId });
    for (const e of now.edits) tokens.data.splice(e.start, e.deleteCount, ...(e.data ?? []));
    tokens.resultId = now.resultId;
  }
  const whole = await c.sendRequest(p.SemanticTokensRangeRequest.type, { textDocument: document, range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } } });
  say("tokens", JSON.stringify(whole.data) === JSON.stringify(tokens.data), tokens.data.length > 50);
}

async function main() {
  c.listen();
  const begun = await c.sendRequest(p.InitializeRequest.type, { processId: process.pid, rootUri: null, capabilities: {} });
  say("positions", begun.capabilities.positionEncoding);
  await c.sendNotification(p.InitializedNotification.type, {});
  await c.sendNotification(p.DidOpenTextDocumentNotification.type, { textDocument: { uri, languageId: "quilt", version, text } });
  const [wrong] = await toldOf(1);
  say("error", wrong.message.replace("\n", " | "));
  await colored();

  const [action] = await c.sendRequest(p.CodeActionRequest.type, { textDocument: document, range: wrong.range, context: { diagnostics: [wrong] } });
  say("action", action.kind, action.title);
  await type(action.edit.changes[uri]);
  say("left", (await toldOf(version)).length);

  const at = place("cream\ngrid", 5);
  await insert(at, " ");
  const offered = await c.sendRequest(p.CompletionRequest.type, { textDocument: document, position: { ...at, character: at.character + 1 } });
  say("offered", offered.some((i) => i.label === "navy"), offered.some((i) => i.label === "wedges"));
  await type([{ range: { start: at, end: { ...at, character: at.character + 1 } }, newText: "" }]);

  await insert(place("#f4ead7", 7), ' "🌙 light"');
  const edit = await c.sendRequest(p.RenameRequest.type, { textDocument: document, position: place("cream", 2), newName: "chalk" });
  await type(edit.changes[uri]);
  const colors = await c.sendRequest(p.DocumentColorRequest.type, { textDocument: document });
  const [shown] = await c.sendRequest(p.ColorPresentationRequest.type, { textDocument: document, color: { red: 1, green: 0.5, blue: 0, alpha: 1 }, range: colors[1].range });
  say("colors", colors.length, shown.label);
  await type([shown.textEdit]);
  const hover = await c.sendRequest(p.HoverRequest.type, { textDocument: document, position: place("navy", 1) });
  say("hover", hover.contents.value.split("\n")[0]);
  await type(await c.sendRequest(p.DocumentFormattingRequest.type, { textDocument: document, options: { tabSize: 2, insertSpaces: true } }));
  await colored();
  text.trimEnd().split("\n").forEach((l) => say("line", l));
  say("left", (await toldOf(version)).length);

  await c.sendRequest("textDocument/fly", {}).catch((e) => say("unknown", e.code));
  await c.sendRequest(p.ShutdownRequest.type);
  await c.sendNotification(p.ExitNotification.type);
  server.on("exit", (code) => say("ended", code));
}
main();
