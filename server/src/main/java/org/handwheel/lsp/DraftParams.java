package org.handwheel.lsp;

import org.eclipse.lsp4j.TextDocumentIdentifier;

/** What {@code handwheel/draft} asks about. */
record DraftParams(TextDocumentIdentifier textDocument) {}
