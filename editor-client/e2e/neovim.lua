-- Neovim 0.7 and later: nvim --clean --headless -c 'luafile neovim.lua', started by run.sh.
local wait = tonumber(vim.env.E2E_WAIT) * 1000
local function out(text) io.stdout:write(text .. '\n') end

local function check(name, test)
  local ok, problem = pcall(test)
  out(ok and ('ok   neovim ' .. name) or ('FAIL neovim ' .. name .. ': ' .. tostring(problem):gsub('\n.*', '')))
end

-- The new way where this Neovim has it, else the old one.
if vim.fn.has('nvim-0.11') == 1 then
  vim.lsp.config('handwheel', { cmd = { vim.env.E2E_SERVER, 'lsp' } })
  vim.lsp.enable('handwheel')
else
  require('handwheel').setup({ cmd = { vim.env.E2E_SERVER, 'lsp' } })
end
vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.E2E_PLAN))
local buf = vim.api.nvim_get_current_buf()
local function text() return table.concat(vim.api.nvim_buf_get_lines(buf, 0, -1, false), '\n') end

-- Line and column, from 0, of the first place of a text.
local function place(words)
  for number, line in ipairs(vim.api.nvim_buf_get_lines(buf, 0, -1, false)) do
    local at = line:find(words, 1, true)
    if at then return number - 1, at - 1 end
  end
  error('not in the plan: ' .. words)
end

local function found(code)
  for _, d in ipairs(vim.diagnostic.get(buf)) do
    if tostring(d.code) == code then return d end
  end
end

local function params(line, column)
  return { textDocument = vim.lsp.util.make_text_document_params(buf), position = { line = line, character = column } }
end

local function ask(method, body)
  local answers, problem = vim.lsp.buf_request_sync(buf, method, body, wait)
  assert(answers, method .. ': ' .. tostring(problem))
  for _, answer in pairs(answers) do
    if answer.result ~= nil and answer.result ~= vim.NIL then return answer.result end
  end
  error(method .. ': no answer')
end

local function eventually(what, test)
  assert(vim.wait(wait, test, 50), what)
end

check('file type', function()
  assert(vim.bo[buf].filetype == 'handwheel')
  assert(vim.bo[buf].commentstring == '# %s')
end)
check('squiggle', function()
  eventually('no overcut', function() return found('overcut') ~= nil end)
  local line, column = place('finish bottom to bore')
  local d = found('overcut')
  assert(d.lnum == line and d.col == column, 'at the wrong place')
end)
check('hover with dial', function()
  local line, column = place('0.25, pass')
  vim.api.nvim_win_set_cursor(0, { line + 1, column })
  vim.lsp.buf.hover()
  local shown = ''
  eventually('no hover', function()
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= '' then
        shown = table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), '\n')
      end
    end
    return shown ~= ''
  end)
  assert(shown:find('div') and shown:find('thou'), 'no dial in: ' .. shown)
end)
check('completion', function()
  local line, column = place('datum A')
  local answer = ask('textDocument/completion', params(line, column))
  local labels = vim.tbl_map(function(item) return item.label end, answer.items or answer)
  assert(#vim.tbl_filter(function(label) return label:find('^square') end, labels) > 0, 'no square')
end)
check('quick fix', function()
  local d = assert(found('material-unknown'), 'no material-unknown')
  local body = { textDocument = vim.lsp.util.make_text_document_params(buf),
    range = { start = { line = d.lnum, character = d.col }, ['end'] = { line = d.lnum, character = d.end_col } },
    context = { diagnostics = { d.user_data.lsp and vim.tbl_extend('keep', {
      range = { start = { line = d.lnum, character = d.col }, ['end'] = { line = d.end_lnum, character = d.end_col } },
      message = d.message }, d.user_data.lsp) } } }
  for _, action in ipairs(ask('textDocument/codeAction', body)) do
    if action.title:find('gunmetal%-LG2') then
      if not action.edit then action = ask('codeAction/resolve', action) end
      vim.lsp.util.apply_workspace_edit(action.edit, 'utf-16')
      break
    end
  end
  assert(text():find('material gunmetal-LG2', 1, true), 'not applied')
  eventually('the finding stays', function() return found('material-unknown') == nil end)
end)
check('rename', function()
  local line, column = place('bore = 17.85')
  vim.lsp.util.apply_workspace_edit(
    ask('textDocument/rename', vim.tbl_extend('force', params(line, column), { newName = 'depth' })), 'utf-16')
  assert(text():find('let depth = 17.85', 1, true) and text():find('finish bottom to depth', 1, true), 'not renamed')
end)
check('formatting', function()
  assert(text():find('width    28', 1, true), 'nothing to format')
  local body = { textDocument = vim.lsp.util.make_text_document_params(buf), options = { tabSize = 2, insertSpaces = true } }
  vim.lsp.util.apply_text_edits(ask('textDocument/formatting', body), buf, 'utf-16')
  assert(text():find('\n  width 28', 1, true), 'not formatted')
end)
vim.cmd('qall!')
