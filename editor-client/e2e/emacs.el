;;; emacs.el --- checks in a real Emacs with eglot  -*- lexical-binding: t -*-
;; Started by run.sh: emacs -q --batch -l emacs.el
(package-initialize)
(require 'eglot)
(require 'flymake)
(add-to-list 'load-path (concat (getenv "E2E_CLIENTS") "/emacs"))
(require 'handwheel-mode)

(defvar e2e-seconds (string-to-number (getenv "E2E_WAIT")))
(setq eglot-server-programs
      (cons (list 'handwheel-mode (getenv "E2E_SERVER") "lsp") eglot-server-programs))
(setq eglot-sync-connect 15 eglot-connect-timeout 20 eglot-confirm-server-initiated-edits nil
      make-backup-files nil)

(defun e2e-out (&rest words) (princ (concat (apply #'format words) "\n")))

(defun e2e-eventually (what test)
  (let ((end (+ (float-time) e2e-seconds)))
    (while (and (not (funcall test)) (< (float-time) end)) (accept-process-output nil 0.05))
    (unless (funcall test) (error "%s" what))))

(defmacro e2e-check (name &rest body)
  `(condition-case problem (progn ,@body (e2e-out "ok   emacs %s" ,name))
     (error (e2e-out "FAIL emacs %s: %s" ,name (error-message-string problem)))))

(defun e2e-must (what value) (or value (error "%s" what)))
(defun e2e-go (words)
  (goto-char (point-min)) (search-forward words) (goto-char (match-beginning 0)))
(defun e2e-has (words)
  (save-excursion (goto-char (point-min)) (search-forward words nil t)))
(defun e2e-ask (method params)
  (e2e-must (format "%s: no answer" method)
            (jsonrpc-request (eglot-current-server) method params :timeout e2e-seconds)))
(defun e2e-finding (words)
  (flymake-start)
  (seq-find (lambda (d) (string-match-p words (flymake-diagnostic-text d))) (flymake-diagnostics)))
(defun e2e-edit (edit)
  (eglot--apply-workspace-edit edit)
  (eglot--signal-textDocument/didChange))

(with-current-buffer (find-file-noselect (getenv "E2E_PLAN"))
  (e2e-check "file type"
   (e2e-must "another mode" (eq major-mode 'handwheel-mode))
   (e2e-must "no comments" (equal comment-start "# ")))
  (apply #'eglot (eglot--guess-contact))
  (unless flymake-mode (flymake-mode 1))
  (e2e-check "squiggle"
   (e2e-eventually "no overcut" (lambda () (e2e-finding "below the least height")))
   (e2e-go "finish bottom to bore")
   (e2e-must "at the wrong place"
             (= (point) (flymake-diagnostic-beg (e2e-finding "below the least height")))))
  (e2e-check "hover with dial"
   (e2e-go "0.25, pass")
   (let* ((contents (plist-get (e2e-ask :textDocument/hover (eglot--TextDocumentPositionParams)) :contents))
          (shown (if (stringp contents) contents (plist-get contents :value))))
     (e2e-must (format "no dial in: %s" shown)
               (and (string-match-p "div" shown) (string-match-p "thou" shown)))))
  (e2e-check "completion"
   (e2e-go "datum A")
   (let ((table (nth 2 (e2e-must "no completion" (eglot-completion-at-point)))))
     (e2e-must "no square" (seq-find (lambda (word) (string-prefix-p "square" word))
                                     (all-completions "" table)))))
  (e2e-check "quick fix"
   (let* ((finding (e2e-must "no material-unknown" (e2e-finding "gunmetal-LG9")))
          (range (list :start (eglot--pos-to-lsp-position (flymake-diagnostic-beg finding))
                       :end (eglot--pos-to-lsp-position (flymake-diagnostic-end finding))))
          (actions (e2e-ask :textDocument/codeAction
                            (list :textDocument (eglot--TextDocumentIdentifier) :range range
                                  :context (list :diagnostics
                                                 (vector (alist-get 'eglot-lsp-diag
                                                                    (flymake-diagnostic-data finding)))))))
          (action (e2e-must "no such fix"
                            (seq-find (lambda (a) (string-match-p "gunmetal-LG2" (plist-get a :title))) actions))))
     (e2e-edit (plist-get (if (plist-get action :edit) action (e2e-ask :codeAction/resolve action)) :edit))
     (e2e-must "not applied" (e2e-has "material gunmetal-LG2"))
     (e2e-eventually "the finding stays" (lambda () (not (e2e-finding "gunmetal-LG9"))))))
  (e2e-check "rename"
   (e2e-go "bore = 17.85")
   (e2e-edit (e2e-ask :textDocument/rename
                      (append (eglot--TextDocumentPositionParams) (list :newName "depth"))))
   (e2e-must "not renamed" (and (e2e-has "let depth = 17.85") (e2e-has "finish bottom to depth"))))
  (e2e-check "formatting"
   (e2e-must "nothing to format" (e2e-has "width    28"))
   (eglot-format-buffer)
   (e2e-must "not formatted" (e2e-has "\n  width 28")))
  (set-buffer-modified-p nil)
  (ignore-errors (eglot-shutdown (eglot-current-server)))
  (kill-emacs 0))
