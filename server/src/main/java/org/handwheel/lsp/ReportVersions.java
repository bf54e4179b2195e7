package org.handwheel.lsp;

import com.google.gson.Gson;
import com.google.gson.TypeAdapter;
import com.google.gson.TypeAdapterFactory;
import com.google.gson.reflect.TypeToken;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.WorkspaceFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.WorkspaceUnchangedDocumentDiagnosticReport;
import org.jspecify.annotations.Nullable;

/**
 * Writes reports of files of a folder with a version in every one: for a file that is not open the
 * protocol asks for a {@code null} that stands there, where other properties are left out.
 */
final class ReportVersions implements TypeAdapterFactory {
  @Override
  @SuppressWarnings({"unchecked", "NullAway"}) // The type was looked at; null is "not mine".
  public <T> TypeAdapter<T> create(Gson gson, TypeToken<T> type) {
    if (type.getRawType() == WorkspaceFullDocumentDiagnosticReport.class) {
      return (TypeAdapter<T>) new Full(gson);
    }
    return type.getRawType() == WorkspaceUnchangedDocumentDiagnosticReport.class
        ? (TypeAdapter<T>) new Unchanged()
        : null;
  }

  private static void head(
      JsonWriter out, String kind, String uri, @Nullable Integer version, String resultId)
      throws IOException {
    out.name("kind").value(kind).name("uri").value(uri).name("version");
    boolean before = out.getSerializeNulls();
    out.setSerializeNulls(true);
    out.value(version);
    out.setSerializeNulls(before);
    out.name("resultId").value(resultId);
  }

  /** Reports are only ever sent. */
  private static UnsupportedOperationException notRead() {
    return new UnsupportedOperationException("a report is not read");
  }

  private static final class Full extends TypeAdapter<WorkspaceFullDocumentDiagnosticReport> {
    private final TypeAdapter<List<Diagnostic>> items;

    Full(Gson gson) {
      items = gson.getAdapter(new TypeToken<List<Diagnostic>>() {});
    }

    @Override
    public void write(JsonWriter out, WorkspaceFullDocumentDiagnosticReport report)
        throws IOException {
      out.beginObject();
      head(out, report.getKind(), report.getUri(), report.getVersion(), report.getResultId());
      items.write(out.name("items"), report.getItems());
      out.endObject();
    }

    @Override
    public WorkspaceFullDocumentDiagnosticReport read(JsonReader in) {
      throw notRead();
    }
  }

  private static final class Unchanged
      extends TypeAdapter<WorkspaceUnchangedDocumentDiagnosticReport> {
    @Override
    public void write(JsonWriter out, WorkspaceUnchangedDocumentDiagnosticReport report)
        throws IOException {
      out.beginObject();
      head(out, report.getKind(), report.getUri(), report.getVersion(), report.getResultId());
      out.endObject();
    }

    @Override
    public WorkspaceUnchangedDocumentDiagnosticReport read(JsonReader in) {
      throw notRead();
    }
  }
}
