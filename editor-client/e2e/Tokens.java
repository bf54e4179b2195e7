import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;

/**
 * Prints the tokens of files, each on a line: file, line from 0, first column, column behind the
 * last, kind. Columns count UTF-16 units.
 */
public final class Tokens {
  private Tokens() {}

  public static void main(String[] files) throws Exception {
    StringBuilder out = new StringBuilder();
    for (String file : files) {
      int number = 0;
      for (String line : Files.readString(Path.of(file)).split("\n", -1)) {
        HandwheelLexer lexer = new HandwheelLexer(CharStreams.fromString(line + "\n"));
        lexer.removeErrorListeners();
        List<? extends Token> tokens = lexer.getAllTokens();
        for (Token token : tokens) {
          int type = token.getType();
          int start = line.offsetByCodePoints(0, Math.min(token.getStartIndex(), line.codePointCount(0, line.length())));
          if (type == HandwheelLexer.NL || type == HandwheelLexer.WS || start >= line.length()) {
            continue;
          }
          // The mark that joins lines has the rest of its line in it.
          int length = type == HandwheelLexer.JOIN ? 1 : token.getText().length();
          out.append(file).append('\t').append(number).append('\t').append(start).append('\t').append(start + length);
          out.append('\t').append(HandwheelLexer.VOCABULARY.getSymbolicName(type)).append('\n');
        }
        number++;
      }
    }
    System.out.print(out);
  }
}
