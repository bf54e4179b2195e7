package org.handwheel.lsp;

import com.google.gson.Gson;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;

/** Serves one editor over a pair of streams until it leaves. */
public final class Serve {
  private Serve() {}

  /** Serves without preparation, as for tests of many short sessions; what is logged stays. */
  public static int serve(InputStream in, OutputStream out, String version)
      throws InterruptedException {
    return serve(in, out, version, new CompletableFuture<>(), new CompletableFuture<>());
  }

  /**
   * Serves until the editor exits or its stream ends. Classes are loaded before they are asked for,
   * and keys rehearsed before they come.
   *
   * @param log takes what the server logs from now on, in this process, a line each
   * @return 0 if the editor shut the server down before it left, else 1, as the protocol asks
   */
  public static int serve(InputStream in, OutputStream out, PrintStream log, String version)
      throws InterruptedException {
    CompletableFuture<Gson> gson = new CompletableFuture<>();
    CompletableFuture<Void> answered = new CompletableFuture<>();
    // First of all, since it takes longest.
    WarmUp.start(gson, answered);
    LogLines.to(log);
    return serve(in, out, version, gson, answered);
  }

  private static int serve(
      InputStream in,
      OutputStream out,
      String version,
      CompletableFuture<Gson> gson,
      CompletableFuture<Void> answered)
      throws InterruptedException {
    CountDownLatch over = new CountDownLatch(1);
    HandwheelServer server = new HandwheelServer(version, over::countDown);
    ExecutorService reader =
        Executors.newSingleThreadExecutor(
            work -> {
              Thread thread = new Thread(work, "handwheel-reader");
              thread.setDaemon(true);
              return thread;
            });
    Launcher<LanguageClient> launcher =
        new Builder(gson)
            .setLocalService(server)
            .setRemoteInterface(LanguageClient.class)
            .setInput(new MessageLimit(in, server::tellRefused))
            .setOutput(out)
            .setExecutorService(reader)
            .configureGson(
                json ->
                    json.registerTypeAdapterFactory(new ReportVersions())
                        .registerTypeAdapterFactory(new AnnotatedEdits()))
            .setExceptionHandler(Serve::shortError)
            .wrapMessages(new Gate(server, answered)::wrap)
            .create();
    server.connect(launcher.getRemoteProxy());
    Future<Void> listening = launcher.startListening();
    Thread end =
        new Thread(
            () -> {
              try {
                listening.get();
              } catch (InterruptedException | ExecutionException e) {
                Thread.currentThread().interrupt();
              }
              over.countDown();
            },
            "handwheel-end");
    end.setDaemon(true);
    end.start();
    over.await();
    answered.cancel(false);
    return server.isShutDown() ? 0 : 1;
  }

  /** Tells how messages are read and written, as soon as that is known. */
  private static final class Builder extends Launcher.Builder<LanguageClient> {
    private final CompletableFuture<Gson> gson;

    Builder(CompletableFuture<Gson> gson) {
      this.gson = gson;
    }

    @Override
    protected MessageJsonHandler createJsonHandler() {
      MessageJsonHandler handler = super.createJsonHandler();
      gson.complete(handler.getGson());
      return handler;
    }
  }

  /** An error an editor may see: what happened, and no stack trace. */
  private static ResponseError shortError(Throwable failure) {
    ResponseError usual = RemoteEndpoint.DEFAULT_EXCEPTION_HANDLER.apply(failure);
    if (usual != null && usual.getCode() != ResponseErrorCode.InternalError.getValue()) {
      return usual;
    }
    Throwable cause = failure;
    while (cause.getCause() != null) {
      cause = cause.getCause();
    }
    return new ResponseError(
        ResponseErrorCode.InternalError,
        "internal error: " + cause.getClass().getSimpleName(),
        null);
  }
}
