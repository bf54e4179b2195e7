" ALE finds this by its folder.  let g:ale_handwheel_executable = '/path/to/handwheel' to name another.
call ale#Set('handwheel_executable', 'handwheel')

function! ale_linters#handwheel#handwheel#Root(buffer) abort
  for l:mark in ['.handwheel', '.git']
    let l:found = ale#path#FindNearestFile(a:buffer, l:mark)
    if empty(l:found)
      let l:found = ale#path#FindNearestDirectory(a:buffer, l:mark)
    endif
    if !empty(l:found)
      return fnamemodify(substitute(l:found, '/$', '', ''), ':h')
    endif
  endfor
  return fnamemodify(bufname(a:buffer), ':p:h')
endfunction

call ale#linter#Define('handwheel', {
\   'name': 'handwheel',
\   'lsp': 'stdio',
\   'language': 'handwheel',
\   'executable': {b -> ale#Var(b, 'handwheel_executable')},
\   'command': '%e lsp',
\   'project_root': function('ale_linters#handwheel#handwheel#Root'),
\})
