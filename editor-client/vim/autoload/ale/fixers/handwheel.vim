" :ALEFix puts a plan or a shop into its usual form.
call ale#Set('handwheel_executable', 'handwheel')

function! ale#fixers#handwheel#Fix(buffer) abort
  return {
  \   'command': ale#Escape(ale#Var(a:buffer, 'handwheel_executable')) . ' format %t',
  \   'read_temporary_file': 1,
  \}
endfunction
