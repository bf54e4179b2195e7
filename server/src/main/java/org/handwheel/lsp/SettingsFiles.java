package org.handwheel.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.handwheel.files.TextFile;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.ProjectSettings;
import org.handwheel.ide.Settings;
import org.handwheel.ide.Settings.Lens;
import org.handwheel.syntax.SourceText;
import org.jspecify.annotations.Nullable;

/** Settings of a folder: those of its settings file first, then the editor's. */
final class SettingsFiles {
  private volatile Settings editor = Settings.USUAL;
  private final Map<WorkspaceRoot, Read> read = new ConcurrentHashMap<>();

  /** A settings file as read. */
  private record Read(SourceText source, ProjectSettings settings, List<String> refusals) {}

  /** Takes the settings an editor sends; what they do not say stays. */
  void configure(@Nullable Object settings) {
    Settings before = editor;
    editor =
        new Settings(HintAnswers.read(settings, before.hints()), lens(settings, before.lens()));
  }

  /** Reads {@code handwheel.lens}: true or false, or the words of the settings file. */
  private static Lens lens(@Nullable Object settings, Lens before) {
    if (!(settings instanceof JsonObject all)) {
      return before;
    }
    JsonObject own = all.get("handwheel") instanceof JsonObject inner ? inner : all;
    @Nullable JsonElement value = own.get("lens");
    if (value == null || !value.isJsonPrimitive()) {
      return before;
    }
    return switch (value.getAsString()) {
      case "true", "on" -> Lens.SHOWN;
      case "false", "off" -> Lens.HIDDEN;
      default -> before;
    };
  }

  /** What counts in a folder. */
  Settings of(WorkspaceRoot root) {
    return read(root).settings().over(editor);
  }

  /** What the folder's settings file says, without the editor's settings. */
  ProjectSettings project(WorkspaceRoot root) {
    return read(root).settings();
  }

  /** Files may have changed: they are read anew when they are asked for. */
  void forget() {
    read.clear();
  }

  static Path file(WorkspaceRoot root) {
    return root.folder().resolve(ProjectSettings.FILE_NAME);
  }

  private Read read(WorkspaceRoot root) {
    return read.computeIfAbsent(root, SettingsFiles::readFile);
  }

  private static Read readFile(WorkspaceRoot root) {
    Path file = file(root);
    if (!Files.exists(file)) {
      return new Read(new SourceText(""), ProjectSettings.NONE, List.of());
    }
    TextFile.Result result =
        isInside(file, root)
            ? TextFile.read(file)
            : new TextFile.Refused("a link leads outside the workspace");
    if (result instanceof TextFile.Text text) {
      return new Read(new SourceText(text.text()), ProjectSettings.parse(text.text()), List.of());
    }
    String reason = ((TextFile.Refused) result).reason();
    return new Read(new SourceText(""), ProjectSettings.NONE, List.of(reason));
  }

  private static boolean isInside(Path file, WorkspaceRoot root) {
    try {
      return file.toRealPath().startsWith(root.folder().toRealPath());
    } catch (IOException e) {
      return false;
    }
  }

  /** What could not be read of a folder's settings file. */
  List<Diagnostic> diagnostics(WorkspaceRoot root, Positions positions) {
    Read file = read(root);
    if (!file.refusals().isEmpty()) {
      Range start = positions.range(file.source(), 0, 0);
      return file.refusals().stream().map(reason -> diagnostic(start, reason)).toList();
    }
    return file.settings().problems().stream()
        .map(
            problem ->
                diagnostic(
                    positions.range(file.source(), problem.start(), problem.end()),
                    problem.message()))
        .toList();
  }

  private static Diagnostic diagnostic(Range range, String message) {
    Diagnostic diagnostic = new Diagnostic();
    diagnostic.setRange(range);
    diagnostic.setSeverity(DiagnosticSeverity.Warning);
    diagnostic.setSource(ToProtocol.SOURCE);
    diagnostic.setMessage(Either.forLeft(message));
    return diagnostic;
  }
}
