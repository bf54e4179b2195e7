package org.handwheel.lsp;

import com.google.gson.Gson;
import com.google.gson.TypeAdapter;
import com.google.gson.TypeAdapterFactory;
import com.google.gson.reflect.TypeToken;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import org.eclipse.lsp4j.AnnotatedTextEdit;
import org.eclipse.lsp4j.TextEdit;

/**
 * Writes the annotation of an edit where one stands for a plain edit: the library's own writer goes
 * by the declared type and leaves it out.
 */
final class AnnotatedEdits implements TypeAdapterFactory {
  @Override
  @SuppressWarnings({"unchecked", "NullAway"}) // The type was looked at; null is "not mine".
  public <T> TypeAdapter<T> create(Gson gson, TypeToken<T> type) {
    if (type.getRawType() != TextEdit.class) {
      return null;
    }
    return (TypeAdapter<T>)
        new Edits(
            gson.getDelegateAdapter(this, TypeToken.get(TextEdit.class)),
            gson.getAdapter(AnnotatedTextEdit.class));
  }

  private static final class Edits extends TypeAdapter<TextEdit> {
    private final TypeAdapter<TextEdit> plain;
    private final TypeAdapter<AnnotatedTextEdit> annotated;

    Edits(TypeAdapter<TextEdit> plain, TypeAdapter<AnnotatedTextEdit> annotated) {
      this.plain = plain;
      this.annotated = annotated;
    }

    @Override
    public void write(JsonWriter out, TextEdit edit) throws IOException {
      if (edit instanceof AnnotatedTextEdit marked) {
        annotated.write(out, marked);
      } else {
        plain.write(out, edit);
      }
    }

    @Override
    public TextEdit read(JsonReader in) throws IOException {
      return plain.read(in);
    }
  }
}
