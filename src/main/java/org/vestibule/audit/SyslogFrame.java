package org.vestibule.audit;

import java.nio.charset.StandardCharsets;

/**
 * A message as syslog carries it: the header of RFC 5424 section 6, then UTF-8 with its mark. Over
 * TLS its length in bytes stands before it (RFC 5425 section 4.3); over UDP it is one datagram (RFC
 * 5426 section 3.1).
 */
final class SyslogFrame {

  /** Facility 10 (security and authorization), severity 5 (notice); PS3.15 A.6, from memory. */
  private static final int PRIORITY = 10 * 8 + 5;

  /** MSGID of DICOM's messages; PS3.15 A.6, from memory. */
  private static final String MESSAGE_ID = "DICOM+RFC3881";

  private static final String APPLICATION = "vestibule";
  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final int HOST_CHARACTERS = 255;

  private final String host;
  private final long process;

  SyslogFrame(String host, long process) {
    this.host = printable(host);
    this.process = process;
  }

  private static String printable(String host) {
    String clean = host.replaceAll("[^\\x21-\\x7E]", "");
    return clean.isEmpty() ? "-" : clean.substring(0, Math.min(clean.length(), HOST_CHARACTERS));
  }

  /** The whole message, as a datagram carries it. */
  byte[] datagram(String time, String xml) {
    String header =
        "<"
            + PRIORITY
            + ">1 "
            + time
            + " "
            + host
            + " "
            + APPLICATION
            + " "
            + process
            + " "
            + MESSAGE_ID
            + " - ";
    return (header + BYTE_ORDER_MARK + xml).getBytes(StandardCharsets.UTF_8);
  }

  /** The same with its length before it, as a stream carries it. */
  byte[] counted(String time, String xml) {
    byte[] message = datagram(time, xml);
    byte[] count = (message.length + " ").getBytes(StandardCharsets.US_ASCII);
    byte[] all = new byte[count.length + message.length];
    System.arraycopy(count, 0, all, 0, count.length);
    System.arraycopy(message, 0, all, count.length, message.length);
    return all;
  }
}
