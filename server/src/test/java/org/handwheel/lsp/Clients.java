package org.handwheel.lsp;

/** Editors of several kinds, by what they announce. */
final class Clients {
  /** Announces nothing at all. */
  static final String PLAIN = "{}";

  /** Takes what is pushed, with everything a diagnostic can carry; names no encoding. */
  static final String PUSH =
      """
      {
        "workspace": {
          "workspaceEdit": {"documentChanges": true},
          "didChangeWatchedFiles": {"dynamicRegistration": true},
          "inlayHint": {"refreshSupport": true},
          "workspaceFolders": true
        },
        "textDocument": {
          "publishDiagnostics": {
            "relatedInformation": true, "versionSupport": true, "dataSupport": true,
            "codeDescriptionSupport": true, "tagSupport": {"valueSet": [1, 2]}
          },
          "hover": {"contentFormat": ["markdown", "plaintext"]},
          "definition": {"linkSupport": true},
          "documentSymbol": {"hierarchicalDocumentSymbolSupport": true},
          "rename": {"prepareSupport": true},
          "foldingRange": {"lineFoldingOnly": false, "foldingRange": {"collapsedText": true}},
          "semanticTokens": {
            "requests": {"full": true, "range": true}, "formats": ["relative"],
            "tokenTypes": ["keyword", "function"], "tokenModifiers": ["declaration"]
          }
        }
      }
      """;

  /** Asks for diagnostics itself. */
  static final String PULL =
      """
      {
        "workspace": {"diagnostics": {"refreshSupport": true}},
        "textDocument": {"diagnostic": {"dynamicRegistration": false}, "publishDiagnostics": {}}
      }
      """;

  /** Counts in bytes of UTF-8. */
  static final String UTF8 = "{\"general\": {\"positionEncodings\": [\"utf-8\"]}}";

  private Clients() {}
}
