package org.handwheel.lsp;

import org.eclipse.lsp4j.TextDocumentIdentifier;

/** What {@code handwheel/sheet} asks about. */
record SheetParams(TextDocumentIdentifier textDocument) {}
