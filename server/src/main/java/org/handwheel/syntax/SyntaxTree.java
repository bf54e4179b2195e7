package org.handwheel.syntax;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * A file's text with its sections in order. Their texts put together are the file's text.
 *
 * <p>The first section is the preamble: the lines before any header, often empty.
 */
public final class SyntaxTree {
  private final String path;
  private final SourceText source;
  private final List<Section> sections;
  private final IdentityHashMap<Section, Integer> bases = new IdentityHashMap<>();

  private SyntaxTree(String path, SourceText source, List<Section> sections) {
    this.path = path;
    this.source = source;
    this.sections = List.copyOf(sections);
    int base = 0;
    for (Section section : this.sections) {
      bases.put(section, base);
      base += section.text().length();
    }
  }

  /** Parses any text; never fails. */
  public static SyntaxTree parse(String path, String text) {
    return parse(path, text, Map.of());
  }

  /**
   * The tree of a changed text. Sections whose text is unchanged are taken over as they are; only
   * the others are parsed. The result equals a parse from scratch.
   */
  public SyntaxTree update(String text) {
    Map<Key, Deque<Section>> known = new HashMap<>();
    for (Section section : sections) {
      known
          .computeIfAbsent(new Key(section.kind(), section.text()), key -> new ArrayDeque<>())
          .add(section);
    }
    return parse(path, text, known);
  }

  private record Key(SectionKind kind, String text) {}

  private static SyntaxTree parse(String path, String text, Map<Key, Deque<Section>> known) {
    SourceText source = new SourceText(text);
    List<Section> sections = new ArrayList<>();
    SectionKind kind = SectionKind.PREAMBLE;
    int start = 0;
    for (int line = 0; line < source.lineCount(); line++) {
      int lineStart = source.lineStart(line);
      SectionKind begun = SectionKind.startedBy(firstWord(text, lineStart));
      if (begun != SectionKind.PREAMBLE) {
        sections.add(section(path, kind, text.substring(start, lineStart), known));
        kind = begun;
        start = lineStart;
      }
    }
    sections.add(section(path, kind, text.substring(start), known));
    return new SyntaxTree(path, source, sections);
  }

  /** A section of the tree before with the same text, each used once, or a new one. */
  private static Section section(
      String path, SectionKind kind, String text, Map<Key, Deque<Section>> known) {
    Deque<Section> same = known.get(new Key(kind, text));
    Section before = same == null ? null : same.poll();
    return before == null ? SectionParser.parse(path, kind, text) : before;
  }

  private static String firstWord(String text, int lineStart) {
    return HeaderWord.at(text, lineStart);
  }

  public String path() {
    return path;
  }

  public SourceText source() {
    return source;
  }

  public List<Section> sections() {
    return sections;
  }

  /** Where a section starts in the file. */
  public int base(Section section) {
    Integer base = bases.get(section);
    if (base == null) {
      throw new IllegalArgumentException("the section is not of this tree");
    }
    return base;
  }

  public boolean contains(Origin origin) {
    return bases.containsKey(origin.section());
  }

  /** The offset in the file at which a place starts. */
  public int start(Origin origin) {
    return base(origin.section()) + origin.start();
  }

  public int end(Origin origin) {
    return base(origin.section()) + origin.end();
  }

  /** The line, from 0, on which a place starts. */
  public int line(Origin origin) {
    return source.lineAt(start(origin));
  }
}
