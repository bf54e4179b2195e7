package org.handwheel.lsp;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.messages.Message;
import org.eclipse.lsp4j.jsonrpc.messages.NotificationMessage;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseMessage;
import org.jspecify.annotations.Nullable;

/**
 * Lets through what the server's state allows: nothing before the editor introduced itself, and
 * nothing but the exit after it said goodbye.
 */
final class Gate {
  private final HandwheelServer server;
  private final CompletableFuture<Void> answered;
  private @Nullable MessageConsumer out;
  private volatile boolean greeted;

  /**
   * @param answered completed when the first findings, or the first answer after the greeting's,
   *     are on their way
   */
  Gate(HandwheelServer server, CompletableFuture<Void> answered) {
    this.server = server;
    this.answered = answered;
  }

  /** The way out is wrapped first, then the way in, which is the endpoint itself. */
  MessageConsumer wrap(MessageConsumer next) {
    if (next instanceof RemoteEndpoint) {
      return message -> pass(message, next);
    }
    out = next;
    return message -> tell(message, next);
  }

  private void tell(Message message, MessageConsumer next) {
    next.consume(message);
    if (answered.isDone()) {
      return;
    }
    boolean findings =
        message instanceof NotificationMessage notification
            && notification.getMethod().equals("textDocument/publishDiagnostics");
    if (findings || (greeted && message instanceof ResponseMessage)) {
      answered.complete(null);
    }
    greeted |= message instanceof ResponseMessage;
  }

  private void pass(Message message, MessageConsumer next) {
    if (message instanceof RequestMessage request) {
      Optional<ResponseError> refusal = refusal(request.getMethod());
      if (refusal.isPresent()) {
        refuse(request, refusal.get());
        return;
      }
    } else if (message instanceof NotificationMessage notification
        && !mayNotify(notification.getMethod())) {
      return;
    }
    next.consume(message);
  }

  private Optional<ResponseError> refusal(String method) {
    if (server.isShutDown()) {
      return error(ResponseErrorCode.InvalidRequest, "the server is shut down");
    }
    boolean greeting = method.equals("initialize");
    if (!server.isInitialized() && !greeting) {
      return error(ResponseErrorCode.ServerNotInitialized, "the server is not initialized yet");
    }
    return server.isInitialized() && greeting
        ? error(ResponseErrorCode.InvalidRequest, "the server is initialized already")
        : Optional.empty();
  }

  private static Optional<ResponseError> error(ResponseErrorCode code, String message) {
    return Optional.of(new ResponseError(code, message, null));
  }

  private void refuse(RequestMessage request, ResponseError error) {
    ResponseMessage response = new ResponseMessage();
    response.setRawId(request.getRawId());
    response.setError(error);
    if (out != null) {
      out.consume(response);
    }
  }

  private boolean mayNotify(String method) {
    return method.equals("exit") || (server.isInitialized() && !server.isShutDown());
  }
}
