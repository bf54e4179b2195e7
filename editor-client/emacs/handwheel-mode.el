;;; handwheel-mode.el --- plans for manual milling machines  -*- lexical-binding: t -*-

;; Package-Requires: ((emacs "28.1"))

;;; Commentary:

;; (add-to-list 'load-path "/path/to/editor-client/emacs")
;; (require 'handwheel-mode)
;; (add-hook 'handwheel-mode-hook #'eglot-ensure)

;;; Code:

(defgroup handwheel nil
  "Plans for work on a manual milling machine."
  :group 'languages)

(defcustom handwheel-command '("handwheel" "lsp")
  "The command that starts the language server."
  :type '(repeat string))

(defvar handwheel-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?- "_" table)
    (modify-syntax-entry ?_ "_" table)
    table))

(defvar handwheel-font-lock-keywords
  `((,(rx bol (* blank)
          (group (or "plan" "shop" "part" "stock" "setup" "own" "log" "inspect"))
          symbol-end)
     1 font-lock-keyword-face)
    (,(rx bol (* blank) (group (any "a-z") (* (any "a-z" "-"))) symbol-end)
     1 font-lock-function-name-face)
    (,(rx symbol-start (or "left" "right" "front" "back" "top" "bottom"
                           "operator-left" "operator-right" "operator-front" "operator-back")
          symbol-end)
     . font-lock-constant-face))
  "Words that are coloured without a server; the server colours the rest.")

(defun handwheel-project (folder)
  "The project around FOLDER that a file .handwheel marks, if there is one."
  (when-let ((root (locate-dominating-file folder ".handwheel")))
    (cons 'transient root)))

;;;###autoload
(define-derived-mode handwheel-mode prog-mode "Handwheel"
  "Major mode for plans and shops."
  (add-hook 'project-find-functions #'handwheel-project nil t)
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+ *")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2)
  (setq-local font-lock-defaults '(handwheel-font-lock-keywords nil t)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.\\(plan\\|shop\\)\\'" . handwheel-mode))

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs (cons 'handwheel-mode handwheel-command)))

(provide 'handwheel-mode)

;;; handwheel-mode.el ends here
