// Starts eighthturn as the language server of layouts. All that it knows of them it is told.
const { workspace } = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

exports.activate = () => {
  const command = workspace.getConfiguration("eighthturn").get("program") || "eighthturn";
  client = new LanguageClient("eighthturn", "eighthturn", { command, args: ["lsp"] }, { documentSelector: [{ language: "quilt" }] });
  return client.start();
};

exports.deactivate = () => client?.stop();
