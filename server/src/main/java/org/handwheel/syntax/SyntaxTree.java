package org.handwheel.syntax;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

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
    return parse(path, new SourceText(text));
  }

  private static SyntaxTree parse(String path, SourceText source) {
    List<Section> sections = new ArrayList<>();
    if (isTooLarge(source)) {
      sections.add(SectionParser.parse(path, SectionKind.PREAMBLE, source.text()));
    } else {
      split(path, source.text(), SectionKind.PREAMBLE, Map.of(), sections);
    }
    return new SyntaxTree(path, source, sections);
  }

  /** A text that is too large is read as one sign that means nothing. */
  private static boolean isTooLarge(SourceText source) {
    return source.length() > BoundedLexer.LARGEST_TEXT;
  }

  /**
   * The tree of a changed text. Sections before and after the change are taken over as they are,
   * and so are those between whose text is unchanged; only the others are parsed. The result equals
   * a parse from scratch.
   */
  public SyntaxTree update(String text) {
    String before = source.text();
    int shorter = Math.min(before.length(), text.length());
    int same = 0;
    while (same < shorter && before.charAt(same) == text.charAt(same)) {
      same++;
    }
    if (same == before.length() && same == text.length()) {
      return this;
    }
    int sameEnd = 0;
    while (sameEnd < shorter - same
        && before.charAt(before.length() - 1 - sameEnd)
            == text.charAt(text.length() - 1 - sameEnd)) {
      sameEnd++;
    }
    return update(source.changed(text, same, sameEnd), same, sameEnd);
  }

  /**
   * As {@link #update(String)}, by whoever knows where the text has changed.
   *
   * @param changed the changed text
   * @param same how many characters at the start are sure to be the same
   * @param sameEnd how many at the end are sure to be the same, without those at the start
   */
  public SyntaxTree update(SourceText changed, int same, int sameEnd) {
    if (isTooLarge(source) || isTooLarge(changed)) {
      return parse(path, changed);
    }
    String before = source.text();
    String text = changed.text();
    int head = keptBefore(same);
    int tail = keptFrom(before.length() - sameEnd);
    Map<Key, Deque<Section>> known = new HashMap<>();
    for (Section section : sections.subList(head, tail)) {
      known
          .computeIfAbsent(new Key(section.kind(), section.text()), key -> new ArrayDeque<>())
          .add(section);
    }
    int from = base(sections.get(head));
    int cut = tail == sections.size() ? 0 : before.length() - base(sections.get(tail));
    List<Section> next = new ArrayList<>(sections.subList(0, head));
    SectionKind kind = head == 0 ? SectionKind.PREAMBLE : sections.get(head).kind();
    split(path, text.substring(from, text.length() - cut), kind, known, next);
    next.addAll(sections.subList(tail, sections.size()));
    return new SyntaxTree(path, changed, next);
  }

  /** How many sections end, with the header that ends them, before a change at an offset. */
  private int keptBefore(int change) {
    int head = 0;
    while (head + 1 < sections.size()) {
      Section following = sections.get(head + 1);
      if (base(following) + following.source().lineEnd(0) >= change) {
        break;
      }
      head++;
    }
    return head;
  }

  /**
   * The first section that starts, with the line break before it, after a change up to an offset.
   */
  private int keptFrom(int changeEnd) {
    int tail = sections.size();
    while (tail > 1 && base(sections.get(tail - 1)) > changeEnd) {
      tail--;
    }
    return tail;
  }

  private record Key(SectionKind kind, String text) {
    // Written out: what a record has of its own is made at run time, which delays the start.

    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Key key && kind == key.kind && text.equals(key.text);
    }

    @Override
    public int hashCode() {
      return text.hashCode() * 31 + kind.hashCode();
    }
  }

  /**
   * Cuts a text into sections.
   *
   * @param first the kind of the section it begins with; PREAMBLE if that is still to be seen
   */
  private static void split(
      String path,
      String text,
      SectionKind first,
      Map<Key, Deque<Section>> known,
      List<Section> sections) {
    SourceText lines = new SourceText(text);
    SectionKind kind = first;
    int start = 0;
    for (int line = first == SectionKind.PREAMBLE ? 0 : 1; line < lines.lineCount(); line++) {
      int lineStart = lines.lineStart(line);
      SectionKind begun = SectionKind.startedBy(firstWord(text, lineStart));
      if (begun != SectionKind.PREAMBLE) {
        sections.add(section(path, kind, text.substring(start, lineStart), known));
        kind = begun;
        start = lineStart;
      }
    }
    sections.add(section(path, kind, text.substring(start), known));
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
