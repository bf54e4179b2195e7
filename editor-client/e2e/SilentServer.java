import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A language server that promises everything and says nothing: the negative control of the editor tests.
 * It answers each request with null and publishes nothing, so every check against it has to fail.
 */
public final class SilentServer {

  private static final Pattern ID = Pattern.compile("\"id\":\\s*(\"[^\"]*\"|-?\\d+)");
  private static final String CAPABILITIES =
      "{\"capabilities\":{\"textDocumentSync\":1,\"hoverProvider\":true,\"completionProvider\":{},"
          + "\"codeActionProvider\":true,\"renameProvider\":true,\"documentFormattingProvider\":true}}";

  private SilentServer() {}

  public static void main(String[] arguments) throws IOException {
    InputStream in = new BufferedInputStream(System.in);
    for (String body = read(in); body != null; body = read(in)) {
      Matcher id = ID.matcher(body);
      if (body.contains("\"exit\"")) {
        return;
      }
      if (id.find() && body.contains("\"method\"")) {
        boolean first = body.contains("\"initialize\"");
        answer(id.group(1), first ? CAPABILITIES : "null");
      }
    }
  }

  private static String read(InputStream in) throws IOException {
    int length = -1;
    StringBuilder line = new StringBuilder();
    for (int next = in.read(); next >= 0; next = in.read()) {
      if (next != '\n') {
        line.append((char) next);
        continue;
      }
      String header = line.toString().trim();
      line.setLength(0);
      if (header.isEmpty()) {
        return new String(in.readNBytes(length), StandardCharsets.UTF_8);
      }
      if (header.toLowerCase(java.util.Locale.ROOT).startsWith("content-length:")) {
        length = Integer.parseInt(header.substring(15).trim());
      }
    }
    return null;
  }

  private static void answer(String id, String result) {
    byte[] body =
        ("{\"jsonrpc\":\"2.0\",\"id\":" + id + ",\"result\":" + result + "}")
            .getBytes(StandardCharsets.UTF_8);
    System.out.print("Content-Length: " + body.length + "\r\n\r\n");
    System.out.write(body, 0, body.length);
    System.out.flush();
  }
}
