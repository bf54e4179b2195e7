package org.handwheel.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.handwheel.files.TextFile;
import org.handwheel.ide.actions.PlainForm;
import org.handwheel.syntax.SyntaxTree;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code handwheel git-textconv}: a file in the form that git compares. */
@Command(
    name = "git-textconv",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    description = {
      "Prints a plan or shop file in the form that `git diff` compares: formatted, and a"
          + " plan's lengths in millimetres. For git; `handwheel git-setup` tells it."
    })
final class GitTextconvCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(paramLabel = "FILE", description = "The file git hands over.")
  private String file = "";

  GitTextconvCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    Path path = surroundings.workingDirectory().toAbsolutePath().resolve(file);
    TextFile.Result result = TextFile.read(path);
    if (result instanceof TextFile.Refused refused) {
      // Git would give up its whole diff or log for one old version that is no text.
      output.trouble("handwheel: " + file + ": " + refused.reason() + "; shown as it is");
      output.bytes(bytes(path));
      return Handwheel.EXIT_CLEAN;
    }
    Path name = path.getFileName();
    SyntaxTree tree =
        SyntaxTree.parse(
            name == null ? "file.plan" : name.toString(), ((TextFile.Text) result).text());
    output.text(PlainForm.of(tree));
    return Handwheel.EXIT_CLEAN;
  }

  private byte[] bytes(Path path) {
    try {
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw new UserException(file + ": it cannot be read");
    }
  }
}
