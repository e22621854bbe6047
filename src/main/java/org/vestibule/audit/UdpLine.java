package org.vestibule.audit;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;

/** Syslog over UDP (RFC 5426): nobody says whether a message arrived, and anybody can read it. */
final class UdpLine implements SyslogLine {

  /** Most bytes of a datagram over IPv4 (RFC 5426 section 3.2). */
  private static final int MOST_BYTES = 65_507;

  private final DatagramSocket socket;
  private final SyslogFrame frame;

  UdpLine(String host, int port, SyslogFrame frame) throws IOException {
    this.frame = frame;
    this.socket = new DatagramSocket();
    try {
      socket.connect(new InetSocketAddress(InetAddress.getByName(host), port));
    } catch (IOException e) {
      socket.close();
      throw e;
    }
  }

  @Override
  public void send(String time, String xml) throws IOException {
    byte[] message = frame.datagram(time, xml);
    if (message.length > MOST_BYTES) {
      throw new MessageTooLongException(message.length);
    }
    socket.send(new DatagramPacket(message, message.length));
  }

  @Override
  public boolean settle() {
    return true; // UDP has nothing to ask
  }

  @Override
  public void close() {
    socket.close();
  }
}
