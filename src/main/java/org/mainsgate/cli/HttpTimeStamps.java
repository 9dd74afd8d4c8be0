package org.mainsgate.cli;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import org.mainsgate.signature.TimeStampAuthority;

/** A time-stamp authority that is asked over HTTP (RFC 3161, 3.4). */
record HttpTimeStamps(URI address) implements TimeStampAuthority {
  private static final Duration PATIENCE = Duration.ofSeconds(10);
  private static final int MOST = 64 << 10;

  private HttpResponse<InputStream> send(HttpClient client, HttpRequest post)
      throws IOException, InterruptedException {
    try {
      return client.send(post, HttpResponse.BodyHandlers.ofInputStream());
    } catch (IOException silent) {
      throw new IOException("the time-stamp authority " + address + " does not answer", silent);
    }
  }

  @Override
  public byte[] ask(byte[] request) throws IOException {
    HttpClient client =
        HttpClient.newBuilder()
            .connectTimeout(PATIENCE)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    HttpRequest post =
        HttpRequest.newBuilder(address)
            .timeout(PATIENCE)
            .header("Content-Type", "application/timestamp-query")
            .POST(HttpRequest.BodyPublishers.ofByteArray(request))
            .build();
    try {
      HttpResponse<InputStream> answer = send(client, post);
      try (InputStream body = answer.body()) {
        byte[] bytes = body.readNBytes(MOST + 1);
        if (answer.statusCode() != 200 || bytes.length > MOST) {
          throw new IOException(
              "the time-stamp authority " + address + " answered with " + answer.statusCode());
        }
        return bytes;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("the time-stamp authority " + address + " was not waited for");
    } catch (IllegalArgumentException e) {
      throw new IOException("`" + address + "` is no address of a time-stamp authority");
    }
  }
}
