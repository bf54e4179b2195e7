-- For Neovim 0.7 to 0.10: require('handwheel').setup(), or setup({ cmd = { '/path/to/handwheel', 'lsp' } })
local M = {}

local function root_of(file)
  local marks = vim.fs and vim.fs.find({ '.handwheel', '.git' }, { upward = true, path = vim.fn.fnamemodify(file, ':h') })
  if marks and marks[1] then
    return vim.fn.fnamemodify(marks[1], ':h')
  end
  local dir = vim.fn.fnamemodify(file, ':p:h')
  local at = dir
  while at ~= vim.fn.fnamemodify(at, ':h') do
    if vim.fn.isdirectory(at .. '/.git') == 1 or vim.fn.filereadable(at .. '/.handwheel') == 1 then
      return at
    end
    at = vim.fn.fnamemodify(at, ':h')
  end
  return dir
end

function M.setup(options)
  options = options or {}
  local clients = {}
  vim.api.nvim_create_autocmd('FileType', {
    pattern = 'handwheel',
    callback = function(event)
      local root = root_of(vim.api.nvim_buf_get_name(event.buf))
      if not clients[root] or not vim.lsp.get_client_by_id(clients[root]) then
        clients[root] = vim.lsp.start_client({
          name = 'handwheel',
          cmd = options.cmd or { 'handwheel', 'lsp' },
          root_dir = root,
          workspace_folders = { { uri = vim.uri_from_fname(root), name = root } },
          get_language_id = function() return 'handwheel' end,
          on_attach = options.on_attach,
        })
      end
      if clients[root] then
        vim.lsp.buf_attach_client(event.buf, clients[root])
      end
    end,
  })
end

return M
