package org.vestibule.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.HandlerType;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.net.ssl.SSLParameters;
import org.eclipse.jetty.server.ConnectionLimit;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.jspecify.annotations.Nullable;
import org.vestibule.flow.Practice;
import org.vestibule.flow.WebRules;
import org.vestibule.keys.TlsSide;

/** The pages' server: one embedded Jetty, nothing but the routes of the table. */
public final class Server implements AutoCloseable {

  private static final int FEWEST_THREADS = 4;
  private static final int IDLE_MILLIS = 30_000;
  private static final int HEADER_BYTES = 8 * 1024;

  /** What comes or goes slower than the slowest of phones is cut off. */
  private static final int LEAST_BYTES_A_SECOND = 200;

  /** How long a connection may be silent where there are too many. */
  private static final int CROWDED_IDLE_MILLIS = 2_000;

  /** Their traces are not for people; held here, since the runtime forgets unheld loggers. */
  private static final List<Logger> CHATTY =
      List.of(Logger.getLogger("org.eclipse.jetty"), Logger.getLogger("io.javalin"));

  private final Javalin javalin;
  private final Site site;

  private Server(Javalin javalin, Site site) {
    this.javalin = javalin;
    this.site = site;
  }

  /**
   * Starts serving; {@link ServerStart} says beforehand whether that may be.
   *
   * @param tls null without TLS of our own
   * @param console told what whoever runs the server should know; nothing of a patient
   * @param defects told of failures that are bugs
   */
  static Server start(
      Practice practice,
      WebRules rules,
      @Nullable TlsSide tls,
      Consumer<String> console,
      Consumer<Throwable> defects) {
    return start(practice, rules, tls, Optional.empty(), console, defects);
  }

  /**
   * The same.
   *
   * @param trust the practice's own certificate; then one page is served at the next port without
   *     TLS, by which devices learn to trust it
   */
  static Server start(
      Practice practice,
      WebRules rules,
      @Nullable TlsSide tls,
      Optional<Trust> trust,
      Consumer<String> console,
      Consumer<Throwable> defects) {
    CHATTY.forEach(logger -> logger.setLevel(Level.OFF));
    Javalin javalin = Javalin.create(config -> configure(config, rules, tls, trust.isPresent()));
    Site site = new Site(practice, rules, practice.clock(), console, trust);
    Cookies cookies = new Cookies(site.isSecure());
    List<Route> routes = Routes.of(site);
    Gate gate = new Gate(site, new Shell(site, cookies, () -> routes), cookies);
    Server server = new Server(javalin, site);
    new Failures(site, gate, defects).register(javalin);
    for (Route route : routes) {
      javalin.addHttpHandler(
          HandlerType.valueOf(route.method()),
          route.path(),
          context -> gate.handle(context, route));
    }
    javalin.start();
    site.listensAt(javalin.port(), trust.isPresent() ? plainPort(javalin) : 0);
    return server;
  }

  private static int plainPort(Javalin javalin) {
    return ((ServerConnector) javalin.jettyServer().server().getConnectors()[1]).getLocalPort();
  }

  private static void configure(
      JavalinConfig config, WebRules rules, @Nullable TlsSide tls, boolean trusting) {
    config.showJavalinBanner = false;
    config.startupWatcherEnabled = false;
    config.useVirtualThreads = false;
    config.http.maxRequestSize = Long.MAX_VALUE;
    config.http.prefer405over404 = true;
    config.http.generateEtags = false;
    // A compressed page with a form's proof in it tells of the proof by its length.
    config.http.disableCompression();
    config.jetty.threadPool = new QueuedThreadPool(AtOnce.THREADS, FEWEST_THREADS, IDLE_MILLIS);
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.setSendDateHeader(true);
          http.setRequestHeaderSize(HEADER_BYTES);
          http.setMinRequestDataRate(LEAST_BYTES_A_SECOND);
          http.setMinResponseDataRate(LEAST_BYTES_A_SECOND);
        });
    config.jetty.modifyServer(server -> server.setErrorHandler(new PlainErrors()));
    config.jetty.addConnector((server, http) -> connector(server, http, rules, tls));
    if (trusting) {
      int next = rules.port() == 0 ? 0 : rules.port() + 1;
      WebRules beside = rules.at(next);
      config.jetty.addConnector((server, http) -> connector(server, http, beside, null));
    }
  }

  private static Connector connector(
      org.eclipse.jetty.server.Server server,
      HttpConfiguration http,
      WebRules rules,
      @Nullable TlsSide tls) {
    ServerConnector connector =
        tls == null
            ? new ServerConnector(server, new HttpConnectionFactory(http))
            : secure(server, http, tls);
    connector.setHost(rules.address());
    connector.setPort(rules.port());
    connector.setIdleTimeout(IDLE_MILLIS);
    connector.addBean(new Connections(rules.tls() == WebRules.Tls.PROXY));
    ConnectionLimit limit = new ConnectionLimit(Connections.OF_ALL, connector);
    limit.setIdleTimeout(CROWDED_IDLE_MILLIS);
    connector.addBean(limit);
    return connector;
  }

  private static ServerConnector secure(
      org.eclipse.jetty.server.Server server, HttpConfiguration http, TlsSide side) {
    SslContextFactory.Server tls = new SslContextFactory.Server();
    SSLParameters parameters = side.parameters();
    tls.setSslContext(side.context());
    tls.setIncludeProtocols(parameters.getProtocols());
    tls.setExcludeCipherSuites();
    tls.setIncludeCipherSuites(parameters.getCipherSuites());
    // The names that may be called are held by Hosts; an address has no name to indicate.
    http.addCustomizer(new SecureRequestCustomizer(false));
    return new ServerConnector(
        server, new SslConnectionFactory(tls, "http/1.1"), new HttpConnectionFactory(http));
  }

  /** The port it listens at. */
  public int port() {
    return javalin.port();
  }

  /** Where a browser finds it. */
  public String address() {
    return site.address();
  }

  /** Where a device finds the practice's own certificate before it trusts it. */
  String trustAddress() {
    return site.trustAddress();
  }

  /** The link that lets one browser in; empty where people sign in. */
  public String openingLink() {
    return site.hasAccounts() ? "" : openingAddress(site);
  }

  /** The secret stands behind the number sign: no browser sends that, and no log holds it. */
  static String openingAddress(Site site) {
    return site.address() + "/open#" + site.opening().current();
  }

  @Override
  public void close() {
    javalin.stop();
  }
}
