" Vim 9 with ALE, started by run.sh in a terminal of its own:  vim -Nu NONE -n -S vim.vim
set nocompatible hidden noswapfile
let g:ale_lint_on_text_changed = 'always' | let g:ale_lint_delay = 50 | let g:ale_virtualtext_cursor = 0
let g:ale_hover_to_preview = 1 | let g:ale_disable_lsp = 0
let g:ale_linters = {'handwheel': ['handwheel']} | let g:ale_linters_explicit = 1
let g:ale_handwheel_executable = $E2E_SERVER
execute 'set runtimepath^=' . fnameescape($E2E_CLIENTS . '/vim')
packadd! ale
runtime plugin/ale.vim
filetype plugin on

let s:seconds = str2nr($E2E_WAIT)

function! s:Eventually(what, Test) abort
  let l:n = 0
  while !a:Test() && l:n < s:seconds * 20 | sleep 50m | let l:n += 1 | endwhile
  call s:Must(a:what, a:Test())
endfunction

function! s:Must(what, value) abort
  if !a:value | throw a:what | endif
endfunction

function! s:Check(name, Test) abort
  try
    call a:Test()
    call writefile(['ok   vim ' . a:name], $E2E_OUT, 'a')
  catch
    call writefile(['FAIL vim ' . a:name . ': ' . substitute(v:exception, '\n.*', '', '')], $E2E_OUT, 'a')
  endtry
endfunction

function! s:Plan() abort
  execute bufwinnr(s:buffer) . 'wincmd w'
endfunction

function! s:Go(words) abort
  call s:Plan()
  call cursor(1, 1)
  call s:Must('not in the plan: ' . a:words, search('\V' . a:words, 'c'))
endfunction

function! s:Found(words) abort
  return filter(copy(getloclist(bufwinid(s:buffer))), {_, d -> d.text =~ a:words})
endfunction

function! s:Has(words) abort
  return match(getbufline(s:buffer, 1, '$'), a:words) >= 0
endfunction

function! s:FileType() abort
  call s:Must('another file type', &filetype ==# 'handwheel' && &commentstring ==# '# %s')
endfunction

function! s:Squiggle() abort
  ALELint
  call s:Eventually('no overcut', {-> !empty(s:Found('below the least height'))})
  call s:Go('finish bottom to bore')
  let l:d = s:Found('below the least height')[0]
  call s:Must('at the wrong place', l:d.lnum == line('.') && l:d.col == col('.'))
endfunction

function! s:Hover() abort
  call s:Go('0.25, pass')
  ALEHover
  call s:Eventually('no hover', {-> bufnr('ALEPreviewWindow') > 0
        \ && join(getbufline(bufnr('ALEPreviewWindow'), 1, '$')) =~ 'div.*thou\|thou.*div'})
endfunction

" Called in insert mode, for ALE takes an answer there alone.
function! E2eProposals() abort
  let s:proposed = []
  call ale#completion#OmniFunc(1, '')
  let l:n = 0
  while ale#completion#GetCompletionResult() is v:null && l:n < s:seconds * 20 | sleep 50m | let l:n += 1 | endwhile
  let l:items = ale#completion#GetCompletionResult()
  let s:proposed = l:items is v:null ? [] : map(copy(l:items), {_, item -> item.word})
  return ''
endfunction

function! s:Completion() abort
  call s:Go('are B to')
  call feedkeys("i\<C-R>=E2eProposals()\<CR>\<Esc>", 'tx')
  call s:Must('no square', !empty(filter(s:proposed, {_, word -> word =~# '^square'})))
endfunction

function! s:Chosen(data, items) abort
  for [l:kind, l:item] in a:items
    if l:item.title =~# 'gunmetal-LG2'
      call ale#codefix#ApplyLSPCodeAction(a:data, l:item)
      return
    endif
  endfor
endfunction

function! s:QuickFix() abort
  call s:Eventually('no material-unknown', {-> !empty(s:Found('gunmetal-LG9'))})
  call s:Go('gunmetal-LG9')
  call ale#codefix#Execute(0, function('s:Chosen'))
  call s:Eventually('not applied', {-> s:Has('material gunmetal-LG2')})
  ALELint
  call s:Eventually('the finding stays', {-> empty(s:Found('gunmetal-LG9'))})
endfunction

function! s:Formatting() abort
  call s:Must('nothing to format', s:Has('width    28'))
  call s:Plan()
  ALEFix
  call s:Eventually('not formatted', {-> s:Has('^  width 28')})
endfunction

function! s:Rename() abort
  call s:Go('bore = 17.85')
  call feedkeys(":ALERename\<CR>\<C-U>depth\<CR>", 'tx')
  call s:Eventually('not renamed', {-> s:Has('let depth = 17.85') && s:Has('finish bottom to depth')})
endfunction

execute 'edit ' . fnameescape($E2E_PLAN)
let s:buffer = bufnr('%')
call s:Check('file type', function('s:FileType'))
call s:Check('squiggle', function('s:Squiggle'))
call s:Check('hover with dial', function('s:Hover'))
call s:Check('completion', function('s:Completion'))
call s:Check('quick fix', function('s:QuickFix'))
call s:Check('rename', function('s:Rename'))
call s:Check('formatting', function('s:Formatting'))
qall!
