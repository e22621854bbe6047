package org.vestibule.web;

import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.ssl.SslConnection;

/**
 * Counts the connections of each address and closes those that are too many, so that one machine
 * can't take all. Behind a proxy all come from one address, and the proxy has to count.
 */
final class Connections implements Connection.Listener {

  /** Of all addresses together; then no more are taken until some are gone. */
  static final int OF_ALL = 600;

  /** Many browsers of one practice may come from one address (common practice, no source). */
  static final int OF_AN_ADDRESS = 120;

  private final boolean behindProxy;
  private final Map<String, Integer> open = new HashMap<>();

  /** Where each came from; a closed one does not know that any more. */
  private final IdentityHashMap<Connection, String> addresses = new IdentityHashMap<>();

  Connections(boolean behindProxy) {
    this.behindProxy = behindProxy;
  }

  @Override
  public void onOpened(Connection connection) {
    String address = address(connection);
    if (!address.isEmpty() && more(connection, address) > OF_AN_ADDRESS) {
      connection.getEndPoint().close();
    }
  }

  private synchronized int more(Connection connection, String address) {
    addresses.put(connection, address);
    return open.merge(address, 1, Integer::sum);
  }

  @Override
  public synchronized void onClosed(Connection connection) {
    String address = addresses.remove(connection);
    if (address != null) {
      open.computeIfPresent(address, (any, count) -> count == 1 ? null : count - 1);
    }
  }

  /** Empty for one that does not count: TLS has two connections for one line. */
  private String address(Connection connection) {
    SocketAddress remote = connection.getEndPoint().getRemoteSocketAddress();
    return connection instanceof SslConnection
            || !(remote instanceof InetSocketAddress inet)
            || inet.getAddress() == null
            || (behindProxy && inet.getAddress().isLoopbackAddress())
        ? ""
        : inet.getAddress().getHostAddress();
  }
}
