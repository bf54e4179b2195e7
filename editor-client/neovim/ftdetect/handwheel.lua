vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
  pattern = { '*.plan', '*.shop' },
  callback = function() vim.bo.filetype = 'handwheel' end,
})
