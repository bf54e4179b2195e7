package org.handwheel.files;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.handwheel.files.WorkspaceLoader.Loaded;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Roots, workspace paths and what is loaded, as on Linux and as on Windows. */
final class WorkspaceLoaderTests {
  private FileSystem system = Jimfs.newFileSystem(Configuration.unix());

  @AfterEach
  void close() throws IOException {
    system.close();
  }

  @Test
  void loadsAllThatIsUsed() throws IOException {
    write("/shed/plans/a.plan", "plan \"a\"\n  use \"../shop/mill.shop\"\n  use \"more.shop\"\n");
    write("/shed/shop/mill.shop", "shop\n  use \"vises/small.shop\"\n");
    write("/shed/shop/vises/small.shop", "shop\n  use \"../mill.shop\"\n");
    write("/shed/plans/more.shop", "shop\n  use \"no-such.shop\"\n  use \"../../out.shop\"\n");
    write("/shed/other.shop", "shop\n");
    Loaded loaded = load("/shed", "plans/a.plan");
    assertThat(loaded.workspace().files())
        .containsOnlyKeys(
            "plans/a.plan", "shop/mill.shop", "shop/vises/small.shop", "plans/more.shop");
    assertThat(loaded.workspace().unreadable())
        .isEqualTo(Map.of("plans/no-such.shop", "there is no such file"));
    // Everything that building the plan asks for was fetched before.
    assertThat(PlanFiles.build(loaded.workspace(), "plans/a.plan").usedFiles())
        .isNotEmpty()
        .allMatch(
            path ->
                loaded.workspace().files().containsKey(path)
                    || loaded.workspace().unreadable().containsKey(path));
  }

  @Test
  void takesOpenFilesAsTheyAre() throws IOException {
    write("/shed/a.plan", "plan \"on disk\"\n");
    write("/shed/mill.shop", "shop\n");
    SyntaxTree open = SyntaxTree.parse("a.plan", "plan \"open\"\n  use \"mill.shop\"\n");
    Loaded loaded =
        new WorkspaceLoader(new WorkspaceRoot(path("/shed")), System::nanoTime)
            .load(List.of("a.plan"), Map.of("a.plan", open));
    assertThat(loaded.workspace().file("a.plan")).containsSame(open);
    assertThat(loaded.workspace().files()).containsKey("mill.shop");
  }

  @Test
  void followsLinksOnlyInside() throws IOException {
    write("/shed/shop/mill.shop", "shop\n");
    write("/secret.shop", "shop\n");
    Files.createSymbolicLink(path("/shed/inside.shop"), path("shop/mill.shop"));
    Files.createSymbolicLink(path("/shed/outside.shop"), path("/secret.shop"));
    Files.createSymbolicLink(path("/shed/up"), path("/"));
    Loaded loaded =
        load("/shed", "inside.shop", "outside.shop", "up/secret.shop", "up/shed/shop/mill.shop");
    assertThat(loaded.workspace().files())
        .containsOnlyKeys("inside.shop", "up/shed/shop/mill.shop");
    assertThat(loaded.workspace().unreadable())
        .isEqualTo(
            Map.of(
                "outside.shop", "a link leads outside the workspace",
                "up/secret.shop", "a link leads outside the workspace"));
  }

  @Test
  void aRootBehindALinkIsStillTheRoot() throws IOException {
    write("/disk/shed/a.plan", "plan \"a\"\n");
    Files.createSymbolicLink(path("/shed"), path("/disk/shed"));
    assertThat(load("/shed", "a.plan").workspace().files()).containsOnlyKeys("a.plan");
  }

  @ParameterizedTest
  @CsvSource({
    "/home/x/launch/plans/a.plan, /home/x/launch/plans, /home/x/launch",
    "/home/x/launch/deep/er/a.plan, /, /home/x/launch/deep",
    "/boat/a.plan, /boat, /boat",
    "/boat/plans/a.plan, /boat, /boat",
    "/boat/plans/a.plan, /home, /boat/plans",
    "/a.plan, /home, /"
  })
  void findsTheRoot(String file, String workingDirectory, String root) throws IOException {
    Files.createDirectories(path("/home/x/launch/.git"));
    write("/home/x/launch/deep/.handwheel", "");
    assertThat(WorkspaceRoot.of(path(file), path(workingDirectory)).folder()).isEqualTo(path(root));
  }

  @Test
  void findsFilesInTheOrderOfTheirPaths() throws IOException {
    for (String name :
        List.of(
            "b.plan", "a/c.plan", "a.plan", "a/.d.plan", ".x/e.plan", "target/f.plan", "g.txt")) {
      write("/shed/" + name, "");
    }
    Files.createDirectories(path("/shed/folder.plan"));
    assertThat(FolderSearch.endingIn(".plan", path("/shed")).files())
        .containsExactly(path("/shed/a.plan"), path("/shed/a/c.plan"), path("/shed/b.plan"));
  }

  /** A file of exactly the largest size is read, one byte more is not. */
  @Test
  void theLimitIsExact() throws IOException {
    byte[] bytes = "#".repeat(TextFile.MOST_BYTES).getBytes(StandardCharsets.UTF_8);
    Files.write(path("/a.plan"), bytes);
    assertThat(TextFile.read(path("/a.plan"))).isInstanceOf(TextFile.Text.class);
    Files.write(path("/a.plan"), new byte[] {'#'}, java.nio.file.StandardOpenOption.APPEND);
    assertThat(TextFile.read(path("/a.plan")))
        .isEqualTo(new TextFile.Refused("it is larger than 10 MB"));
  }

  /** Byte sequences that UTF-8 forbids: RFC 3629, sections 3, 4 and 10. */
  @ParameterizedTest
  @CsvSource({
    "61 0A 80,          2, 3", // a continuation on its own
    "61 0D 0A 62 C0 AF, 2, 5", // an overlong slash
    "61 0D 62 ED A0 80, 2, 4", // a surrogate
    "F4 90 80 80,       1, 1", // beyond the last code point
    "EF BB BF 61 E2 82, 1, 5", // cut short
  })
  void strictUtf8(String hex, int line, int at) throws IOException {
    Files.write(path("/a.plan"), HexFormat.ofDelimiter(" ").parseHex(hex));
    assertThat(TextFile.read(path("/a.plan")))
        .isEqualTo(
            new TextFile.Refused(
                "it is not UTF-8 (line " + line + ", byte " + at + " of the file)"));
  }

  @Test
  void aByteOrderMarkIsNotPartOfTheText() throws IOException {
    write("/a.plan", "\ufeffplan");
    assertThat(TextFile.read(path("/a.plan"))).isEqualTo(new TextFile.Text("plan"));
  }

  /** A file system with backslashes and drives that does not tell capitals apart. */
  @Nested
  final class OnWindows {
    OnWindows() throws IOException {
      system.close();
      system = Jimfs.newFileSystem(Configuration.windows());
    }

    @Test
    void workspacePathsHaveForwardSlashes() throws IOException {
      write("C:\\shed\\plans\\a.plan", "plan \"a\"\r\n  use \"../shop/mill.shop\"\r\n");
      write("C:\\shed\\shop\\mill.shop", "shop\r\n");
      WorkspaceRoot root = new WorkspaceRoot(path("C:\\shed"));
      assertThat(root.workspacePath(path("C:\\shed\\plans\\a.plan"))).isEqualTo("plans/a.plan");
      assertThat(root.file("plans/a.plan")).isEqualTo(path("C:\\shed\\plans\\a.plan"));
      assertThat(WorkspaceRoot.slashed(path("D:\\x\\y"))).isEqualTo("D:/x/y");
      assertThat(load("C:\\shed", "plans/a.plan").workspace().files())
          .containsOnlyKeys("plans/a.plan", "shop/mill.shop");
    }

    @Test
    void namesInOtherCapitalsAreRefused() throws IOException {
      write("C:\\shed\\Shop\\Mill.shop", "shop\r\n");
      assertThat(Files.exists(path("C:\\shed\\shop\\mill.shop"))).isTrue();
      assertThat(load("C:\\shed", "shop/mill.shop").workspace().unreadable())
          .isEqualTo(Map.of("shop/mill.shop", "on disk its name is written \"Shop/Mill.shop\""));
    }

    @Test
    void namesThatWindowsDoesNotAllow() throws IOException {
      write("C:\\shed\\a.plan", "plan \"a\"\r\n  use \"mill?.shop\"\r\n");
      assertThat(load("C:\\shed", "a.plan").workspace().unreadable())
          .isEqualTo(Map.of("mill?.shop", "no file can have this name here"));
    }

    @Test
    void findsTheRootOnItsDrive() throws IOException {
      Files.createDirectories(path("C:\\launch\\.git"));
      Files.createDirectories(path("C:\\launch\\plans"));
      assertThat(WorkspaceRoot.of(path("C:\\launch\\plans\\a.plan"), path("C:\\")).folder())
          .isEqualTo(path("C:\\launch"));
      assertThat(WorkspaceRoot.of(path("plans\\a.plan"), path("C:\\launch")).folder())
          .isEqualTo(path("C:\\launch"));
    }
  }

  private Loaded load(String root, String... paths) {
    return new WorkspaceLoader(new WorkspaceRoot(path(root)), System::nanoTime)
        .load(List.of(paths), Map.of());
  }

  private Path path(String path) {
    return system.getPath(path);
  }

  private void write(String file, String text) throws IOException {
    Files.createDirectories(path(file).getParent());
    Files.writeString(path(file), text);
  }
}
