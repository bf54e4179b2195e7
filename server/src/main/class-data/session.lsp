Content-Length: 428

{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":"file:///class-data/","workspaceFolders":[{"uri":"file:///class-data/","name":"class-data"}],"capabilities":{"general":{"positionEncodings":["utf-16"]},"textDocument":{"publishDiagnostics":{"relatedInformation":true,"codeDescriptionSupport":true},"hover":{"contentFormat":["markdown"]},"completion":{"completionItem":{"snippetSupport":true}}}}}}Content-Length: 52

{"jsonrpc":"2.0","method":"initialized","params":{}}Content-Length: 2257

{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///class-data/inch-mill.shop","languageId":"handwheel","version":1,"text":"language 1\n# The bench mill of the boat shed: inch screws, dials in thousandths, a round column.\nshop \"Boat shed, inch dials\"\n  units mm\n\nown machine inch-mill \"Small vertical mill with inch screws\"\n  lead-x: 0.100 in\n  divisions-x: 100\n  backlash-x: 8 thou\n  handle-x: operator-left\n  clockwise-x: operator-left      # turned clockwise at the left-hand handle the table goes left\n  travel-x: 320\n  lead-y: 0.100 in\n  divisions-y: 100\n  backlash-y: 8 thou\n  handle-y: operator-front\n  clockwise-y: operator-back\n  travel-y: 130\n  lead-z: 0.100 in\n  divisions-z: 100\n  backlash-z: 6 thou\n  handle-z: operator-right\n  clockwise-z: down\n  travel-z: 90\n  z-moves: quill\n  column: round\n  speeds: 95, 180, 270, 500, 930, 1420, 2100 rpm\n  power: 0.45 kW\n\nown vise V80 \"Screw vise, 80 mm jaws\"\n  jaw-width: 80\n  jaw-depth: 25\n  opening: 70\n  jaw-square: 0.02 over 100\n\nown parallels P6x10 \"Pair, 6 thick, 10 high\"\n  thickness: 6\n  height: 10\n  length: 70\n  count: 2\n  mismatch: 0.005\n\nown parallels P3x10 \"Pair, 3 thick, 10 high\"\n  thickness: 3\n  height: 10\n  length: 70\n  count: 2\n  mismatch: 0.005\n\nown parallels P6x22 \"Pair, 6 thick, 22 high\"\n  thickness: 6\n  height: 22\n  length: 70\n  count: 2\n  mismatch: 0.005\n\nown cutter FC40 \"Facing cutter, 40 mm, four inserts\"\n  kind: face-mill\n  dia: 40\n  teeth: 4\n  flute: 8\n  corner: 0.4\n  made-of: carbide\n\nown cutter EM16 \"End mill, 16 mm\"\n  kind: end-mill\n  dia: 16\n  teeth: 4\n  flute: 32\n  made-of: HSS\n\nown instrument caliper \"Dial caliper\"\n  kind: caliper\n  range: 0, 150 mm\n  resolution: 0.02 mm\n  accuracy: 0.03 mm\n\nown instrument mic25 \"Micrometer, 0 to 25\"\n  kind: micrometer\n  range: 0, 25 mm\n  resolution: 0.01 mm\n  accuracy: 0.004 mm\n\nown instrument mic50 \"Micrometer, 25 to 50\"\n  kind: micrometer\n  range: 25, 50 mm\n  resolution: 0.01 mm\n  accuracy: 0.004 mm\n\nown instrument dti \"Lever indicator\"\n  kind: indicator\n  resolution: 0.01 mm\n  accuracy: 0.01 mm\n\nown finder F5 \"Edge finder, 0.200 in tip\"\n  dia: 0.200 in\n"}}}Content-Length: 773

{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///class-data/block.plan","languageId":"handwheel","version":1,"text":"language 1\nplan \"A block to warm up with\"\n  units mm\n  use \"inch-mill.shop\"\npart\n  material gunmetal-LG2\n  length 50 +-0.1\n  width 30 +0/-0.05\n  height 20 +0/-0.05\n  square back to top 0.03\n  parallel bottom to top 0.03\n  hole a in top, dia 6 H7, at (10, 10) from left front, through\nstock\n  size 53 x 33 x 23\n  cast front back top bottom\n  sawn left right\nsetup one\n  hold in V80, up top, fixed back, on pair P6x10\n  cutter FC40\n  touch top with paper 0.05, zero z\n  lock y z\n  clean top at 0.4, at most 1.2\n  deburr edges of top\n  measure height with caliper\n  rogh top to height\n"}}}Content-Length: 237

{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///class-data/block.plan","version":2},"contentChanges":[{"range":{"start":{"line":24,"character":3},"end":{"line":24,"character":3}},"text":"u"}]}}Content-Length: 158

{"jsonrpc":"2.0","id":2,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///class-data/block.plan"},"position":{"line":20,"character":15}}}Content-Length: 162

{"jsonrpc":"2.0","id":3,"method":"textDocument/completion","params":{"textDocument":{"uri":"file:///class-data/block.plan"},"position":{"line":20,"character":8}}}Content-Length: 199

{"jsonrpc":"2.0","id":4,"method":"textDocument/inlayHint","params":{"textDocument":{"uri":"file:///class-data/block.plan"},"range":{"start":{"line":0,"character":0},"end":{"line":24,"character":0}}}}Content-Length: 129

{"jsonrpc":"2.0","id":5,"method":"textDocument/documentSymbol","params":{"textDocument":{"uri":"file:///class-data/block.plan"}}}Content-Length: 134

{"jsonrpc":"2.0","id":6,"method":"textDocument/semanticTokens/full","params":{"textDocument":{"uri":"file:///class-data/block.plan"}}}Content-Length: 230

{"jsonrpc":"2.0","id":7,"method":"textDocument/codeAction","params":{"textDocument":{"uri":"file:///class-data/block.plan"},"range":{"start":{"line":20,"character":0},"end":{"line":20,"character":3}},"context":{"diagnostics":[]}}}Content-Length: 127

{"jsonrpc":"2.0","id":8,"method":"textDocument/foldingRange","params":{"textDocument":{"uri":"file:///class-data/block.plan"}}}Content-Length: 169

{"jsonrpc":"2.0","id":9,"method":"textDocument/formatting","params":{"textDocument":{"uri":"file:///class-data/block.plan"},"options":{"tabSize":2,"insertSpaces":true}}}Content-Length: 45

{"jsonrpc":"2.0","id":10,"method":"shutdown"}Content-Length: 33

{"jsonrpc":"2.0","method":"exit"}