autocmd BufNewFile,BufRead *.plan,*.shop setfiletype handwheel
