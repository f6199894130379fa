package gradepost.desk;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.CookieManager;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

/** Asks a desk as a browser does, cookies and all; and as no browser would. */
final class Browser {
  private final URI desk;
  private final int port;
  private final HttpClient client =
      HttpClient.newBuilder()
          .cookieHandler(new CookieManager())
          .connectTimeout(Duration.ofSeconds(20))
          .build();

  Browser(DeskServer desk) {
    this(desk, URI.create(desk.address()).getPort());
  }

  /** One that finds it elsewhere than its address says. */
  Browser(DeskServer desk, int port) {
    this.desk = URI.create(desk.address());
    this.port = port;
  }

  /** Of a desk in another process. */
  Browser(String address) {
    this.desk = URI.create(address);
    this.port = desk.getPort();
  }

  /** Goes in by the key. */
  Browser letIn() throws IOException, InterruptedException {
    get(desk.getPath() + "?" + desk.getQuery());
    return this;
  }

  HttpResponse<String> get(String path, String... headers)
      throws IOException, InterruptedException {
    return send(request(path, headers).GET());
  }

  HttpResponse<byte[]> bytes(String path) throws IOException, InterruptedException {
    return client.send(request(path).GET().build(), BodyHandlers.ofByteArray());
  }

  HttpResponse<String> post(String path, String form, String... headers)
      throws IOException, InterruptedException {
    return send(
        request(path, headers)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(form)));
  }

  /**
   * A form with files, as a browser sends it: names, texts of files; fields without a file name.
   */
  HttpResponse<String> upload(String path, String... parts)
      throws IOException, InterruptedException {
    StringBuilder body = new StringBuilder();
    for (int i = 0; i < parts.length; i += 3) {
      String file = parts[i + 1].isEmpty() ? "" : "; filename=\"" + parts[i + 1] + '"';
      body.append("--edge\r\nContent-Disposition: form-data; name=\"" + parts[i] + '"' + file)
          .append("\r\n\r\n" + parts[i + 2] + "\r\n");
    }
    return send(
        request(path)
            .header("Content-Type", "multipart/form-data; boundary=edge")
            .POST(HttpRequest.BodyPublishers.ofString(body + "--edge--\r\n")));
  }

  private HttpRequest.Builder request(String path, String... headers) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://" + desk.getAuthority() + path));
    if (headers.length > 0) {
      request.headers(headers);
    }
    return request;
  }

  private HttpResponse<String> send(HttpRequest.Builder request)
      throws IOException, InterruptedException {
    return client.send(request.build(), BodyHandlers.ofString());
  }

  /** Lines as they are, which a client of good manners would not send. */
  String raw(String... lines) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket
          .getOutputStream()
          .write((String.join("\r\n", lines) + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** Signs in by an account, from the form that the desk gives. */
  HttpResponse<String> signIn(String name, String password)
      throws IOException, InterruptedException {
    return post(
        "/sign-in",
        "token=%s&name=%s&password=%s".formatted(token("/sign-in"), coded(name), coded(password)));
  }

  /** The token that stands in the forms of a page. */
  String token(String page) throws IOException, InterruptedException {
    return get(page).body().replaceFirst("(?s).*?name=\"token\" value=\"([^\"]+)\".*", "$1");
  }

  static String coded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** Waits for the end of an issue that was begun, and gives the page that says so. */
  String ended(HttpResponse<String> begun) throws IOException, InterruptedException {
    String work = begun.headers().firstValue("Location").orElse("nowhere");
    String page = get(work).body();
    while (page.contains("are being made")) {
      Thread.sleep(100);
      page = get(work).body();
    }
    return page;
  }

  /** Hands a file in, as a form with a file does. */
  HttpResponse<String> upload(String path, String token, String name, byte[] bytes)
      throws IOException, InterruptedException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    String part = "--cut\r\nContent-Disposition: form-data; name=\"%s\"%s\r\n\r\n";
    body.writeBytes(
        (part.formatted("token", "") + token + "\r\n").getBytes(StandardCharsets.UTF_8));
    body.writeBytes(
        part.formatted("file", "; filename=\"" + name + "\"").getBytes(StandardCharsets.UTF_8));
    body.writeBytes(bytes);
    body.writeBytes("\r\n--cut--\r\n".getBytes(StandardCharsets.UTF_8));
    return send(
        request(path)
            .header("Content-Type", "multipart/form-data; boundary=cut")
            .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray())));
  }
}
