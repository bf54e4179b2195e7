package org.handwheel.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionItemLabelDetails;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Completion;
import org.handwheel.ide.complete.Proposal;
import org.handwheel.syntax.SourceText;

/** Proposals in the words of the protocol. */
final class CompletionAnswers {
  private final ClientFacts client;
  private final View view;
  private final String uri;

  CompletionAnswers(ClientFacts client, View view, String uri) {
    this.client = client;
    this.view = view;
    this.uri = uri;
  }

  CompletionList at(Position position) {
    SourceText source = view.tree().source();
    Completion.Proposals proposals =
        Completion.at(view, client.positions().offset(source, position));
    Range range = client.positions().range(source, proposals.start(), proposals.end());
    List<CompletionItem> items = new ArrayList<>();
    for (Proposal proposal : proposals.proposals()) {
      items.add(item(proposal, range, items.size()));
    }
    return new CompletionList(false, items);
  }

  private CompletionItem item(Proposal proposal, Range range, int place) {
    CompletionItem item = new CompletionItem(proposal.label());
    item.setKind(kind(proposal.kind()));
    item.setSortText(sortText(place));
    if (!proposal.detail().isEmpty()) {
      if (client.completionDetails()) {
        CompletionItemLabelDetails details = new CompletionItemLabelDetails();
        details.setDescription(proposal.detail());
        item.setLabelDetails(details);
      } else {
        item.setDetail(proposal.detail());
      }
    }
    boolean snippet = client.snippets() && !proposal.snippet().equals(proposal.text());
    if (snippet) {
      item.setInsertTextFormat(InsertTextFormat.Snippet);
      item.setInsertTextMode(InsertTextMode.AdjustIndentation);
    }
    String text = snippet ? proposal.snippet() : proposal.text();
    item.setTextEdit(Either.forLeft(new TextEdit(range, text)));
    item.setFilterText(proposal.label());
    JsonObject data = new JsonObject();
    data.addProperty("uri", uri);
    data.addProperty("topic", proposal.topic());
    item.setData(data);
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
    String about = Completion.about(view, data(item, "topic"));
    if (!about.isEmpty()) {
      if (client.completionInMarkdown()) {
        item.setDocumentation(new MarkupContent(MarkupKind.MARKDOWN, about));
      } else {
        item.setDocumentation(about.replace("`", ""));
      }
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
