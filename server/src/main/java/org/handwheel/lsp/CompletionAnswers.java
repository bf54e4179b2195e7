package org.handwheel.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemDefaults;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionItemLabelDetails;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.InsertReplaceEdit;
import org.eclipse.lsp4j.InsertReplaceRange;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.handwheel.ide.Explanation;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Completion;
import org.handwheel.ide.complete.Proposal;
import org.handwheel.syntax.SourceText;
import org.jspecify.annotations.Nullable;

/** Proposals in the words of the protocol. */
final class CompletionAnswers {
  private static final String EDIT_RANGE = "editRange";

  private final ClientFacts client;
  private final View view;
  private final String uri;
  private final Supplier<List<String>> shops;

  CompletionAnswers(PlanTexts.Question question, View view) {
    this.client = question.client();
    this.view = view;
    this.uri = question.file().uri();
    this.shops = () -> Completion.shops(question.projects().workspace());
  }

  CompletionList at(Position position) {
    SourceText source = view.tree().source();
    int offset = client.positions().offset(source, position);
    Completion.Proposals proposals = Completion.at(view, offset, shops);
    Place place = place(source, proposals, offset);
    CompletionList list = new CompletionList();
    list.setIsIncomplete(proposals.extent() == Completion.Extent.NARROWED);
    boolean mostAreSnippets =
        proposals.proposals().stream().filter(this::isSnippet).count() * 2
            > proposals.proposals().size();
    InsertTextFormat usual =
        mostAreSnippets && client.completionDefaults().contains("insertTextFormat")
            ? InsertTextFormat.Snippet
            : InsertTextFormat.PlainText;
    list.setItemDefaults(defaults(place, usual));
    List<CompletionItem> items = new ArrayList<>();
    for (Proposal proposal : proposals.proposals()) {
      items.add(item(proposal, place, usual, items.size()));
    }
    list.setItems(items);
    return list;
  }

  /**
   * Where a proposal goes: it takes the place of the letters before the cursor, or of the whole
   * word; its joint goes behind the word before.
   */
  private record Place(Range typed, Range word, Range joint) {}

  private Place place(SourceText source, Completion.Proposals proposals, int offset) {
    int cursor = Math.min(Math.max(offset, proposals.start()), proposals.end());
    Positions positions = client.positions();
    return new Place(
        positions.range(source, proposals.start(), cursor),
        positions.range(source, proposals.start(), proposals.end()),
        positions.range(source, proposals.joint(), proposals.joint()));
  }

  /** What is said once for all items, if the editor can take it so. */
  private @Nullable CompletionItemDefaults defaults(Place place, InsertTextFormat usual) {
    CompletionItemDefaults defaults = new CompletionItemDefaults();
    if (client.completionDefaults().contains(EDIT_RANGE)) {
      defaults.setEditRange(
          client.insertsOrReplaces()
              ? Either.forRight(new InsertReplaceRange(place.typed(), place.word()))
              : Either.forLeft(place.word()));
    }
    if (usual != InsertTextFormat.PlainText) {
      defaults.setInsertTextFormat(usual);
    }
    return defaults.equals(new CompletionItemDefaults()) ? null : defaults;
  }

  private boolean isSnippet(Proposal proposal) {
    return client.snippets() && !proposal.snippet().equals(proposal.text());
  }

  private CompletionItem item(Proposal proposal, Place place, InsertTextFormat usual, int rank) {
    CompletionItem item = new CompletionItem(proposal.label());
    item.setKind(kind(proposal.kind()));
    item.setSortText(sortText(rank));
    if (!proposal.detail().isEmpty()) {
      if (client.completionDetails()) {
        CompletionItemLabelDetails details = new CompletionItemLabelDetails();
        details.setDescription(proposal.detail());
        item.setLabelDetails(details);
      } else {
        item.setDetail(proposal.detail());
      }
    }
    boolean snippet = isSnippet(proposal);
    InsertTextFormat format = snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText;
    if (format != usual) {
      item.setInsertTextFormat(format);
    }
    if (snippet && client.adjustsIndentation()) {
      item.setInsertTextMode(InsertTextMode.AdjustIndentation);
    }
    String text = snippet ? proposal.snippet() : proposal.text();
    if (client.completionDefaults().contains(EDIT_RANGE)) {
      if (!text.equals(proposal.label())) {
        item.setTextEditText(text);
      }
    } else {
      item.setTextEdit(
          client.insertsOrReplaces()
              ? Either.forRight(new InsertReplaceEdit(text, place.typed(), place.word()))
              : Either.forLeft(new TextEdit(place.word(), text)));
    }
    if (!proposal.joint().isEmpty()) {
      item.setAdditionalTextEdits(List.of(new TextEdit(place.joint(), proposal.joint())));
    }
    if (!proposal.topic().isEmpty()) {
      JsonObject data = new JsonObject();
      data.addProperty("uri", uri);
      data.addProperty("topic", proposal.topic());
      item.setData(data);
    }
    return item;
  }

  /** Keeps the order of the list: editors sort by it, as text. */
  private static String sortText(int place) {
    String digits = Integer.toString(place);
    return "0".repeat(Math.max(0, 5 - digits.length())) + digits;
  }

  private static CompletionItemKind kind(Proposal.Kind kind) {
    return switch (kind) {
      case KEYWORD -> CompletionItemKind.Keyword;
      case SECTION -> CompletionItemKind.Module;
      case STATEMENT -> CompletionItemKind.Snippet;
      case FACE, PLACE -> CompletionItemKind.EnumMember;
      case UNIT -> CompletionItemKind.Unit;
      case NAME -> CompletionItemKind.Variable;
      case VALUE -> CompletionItemKind.Value;
      case PROPERTY -> CompletionItemKind.Property;
      case RULE -> CompletionItemKind.Constant;
      case FILE -> CompletionItemKind.File;
    };
  }

  /** The item with its documentation. */
  CompletionItem resolved(CompletionItem item) {
    Explanation about = Completion.about(view, data(item, "topic"));
    if (about.isEmpty()) {
      return item;
    }
    if (client.completionInMarkdown()) {
      item.setDocumentation(new MarkupContent(MarkupKind.MARKDOWN, about.markdown()));
    } else {
      item.setDocumentation(about.plain());
    }
    return item;
  }

  /** The file an item was proposed for; empty if it does not say. */
  static String uri(CompletionItem item) {
    return data(item, "uri");
  }

  private static String data(CompletionItem item, String name) {
    if (!(item.getData() instanceof JsonObject data)) {
      return "";
    }
    JsonElement value = data.get(name);
    return value instanceof JsonPrimitive text ? text.getAsString() : "";
  }
}
