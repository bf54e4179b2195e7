if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1
setlocal commentstring=#\ %s comments=:# expandtab shiftwidth=2 softtabstop=2
setlocal iskeyword+=-
let b:undo_ftplugin = 'setlocal commentstring< comments< expandtab< shiftwidth< softtabstop< iskeyword<'

" With ALE there: ALEFix formats.
if !empty(globpath(&runtimepath, 'autoload/ale/fix/registry.vim'))
  call ale#fix#registry#Add('handwheel', 'ale#fixers#handwheel#Fix', ['handwheel'], 'Usual form of plans and shops')
  let b:ale_fixers = get(b:, 'ale_fixers', ['handwheel'])
endif
