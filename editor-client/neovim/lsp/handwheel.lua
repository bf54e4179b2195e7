-- For Neovim 0.11 and later: vim.lsp.enable('handwheel')
return {
  cmd = { 'handwheel', 'lsp' },
  filetypes = { 'handwheel' },
  root_markers = { '.handwheel', '.git' },
}
