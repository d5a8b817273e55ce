-- What a person does in Neovim with a layout that has an error: see it, take its hint, type, complete, rename, tidy.
local out = io.open(vim.env.OUT, "w")
local function say(...) out:write(table.concat({...}, " "), "\n") out:flush() end
local function fail(err) say("failed", tostring(err)) vim.cmd("cquit 1") end
local ok, err = pcall(function()
  vim.cmd("edit " .. vim.env.FILE)
  local id = vim.lsp.start_client({ name = "eighthturn", cmd = { vim.env.SERVER }, root_dir = vim.fn.getcwd() })
  vim.lsp.buf_attach_client(0, id)
  local client = vim.lsp.get_client_by_id(id)
  local function wait(what, f) if not vim.wait(20000, f, 20) then error("waited for " .. what) end end
  wait("the server", function() return client.initialized end)
  wait("an error", function() return #vim.diagnostic.get(0) == 1 end)
  say("error", (vim.diagnostic.get(0)[1].message:gsub("\n", " | ")))
  local function ask(method, params)
    local got
    client.request(method, params, function(e, r) got = { e, r } end, vim.api.nvim_get_current_buf())
    wait(method, function() return got end)
    if got[1] then error(vim.inspect(got[1])) end
    return got[2]
  end
  local function at(line, character) return { textDocument = vim.lsp.util.make_text_document_params(), position = { line = line, character = character } } end
  local p = at(3, 20)
  p.range = { start = { line = 3, character = 19 }, ["end"] = { line = 3, character = 23 } }
  p.context = { diagnostics = {} }
  local actions = ask("textDocument/codeAction", p)
  vim.lsp.util.apply_workspace_edit(actions[1].edit, client.offset_encoding)
  wait("no error", function() return #vim.diagnostic.get(0) == 0 end)
  say("mended", vim.api.nvim_buf_get_lines(0, 3, 4, true)[1])
  -- type, with letters beyond the first plane before the place
  vim.api.nvim_buf_set_lines(0, 2, 3, true, { 'fabric navy #1f3350 "night 🌙 sky" on-hand 1 yd' })
  vim.api.nvim_buf_set_lines(0, -1, -1, true, { "border 2 " })
  local labels = {}
  for _, item in ipairs(ask("textDocument/completion", at(7, 9))) do labels[item.label] = true end
  say("offered", tostring(labels.cream), tostring(labels.navy), tostring(labels.web))
  vim.api.nvim_buf_set_lines(0, 7, 8, true, { "border 2 navy" })
  local hover = ask("textDocument/hover", at(7, 10))
  say("hover", (hover.contents.value:gsub("\n+", " | ")))
  local r = at(3, 21)
  r.newName = "dusk"
  vim.lsp.util.apply_workspace_edit(ask("textDocument/rename", r), client.offset_encoding)
  vim.lsp.util.apply_text_edits(ask("textDocument/formatting", { textDocument = r.textDocument, options = {} }), 0, client.offset_encoding)
  wait("no error", function() return #vim.diagnostic.get(0) == 0 end)
  for _, line in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, true)) do say("line", line) end
  client.stop()
  wait("the end", function() return client.is_stopped() end)
  say("ended")
end)
if not ok then fail(err) end
vim.cmd("qall!")
