vim.bo.commentstring = '# %s'
vim.bo.comments = ':#'
vim.bo.expandtab = true
vim.bo.shiftwidth = 2
vim.bo.softtabstop = 2
-- Names such as V80-long and soft-strip are one word.
vim.opt_local.iskeyword:append('-')
