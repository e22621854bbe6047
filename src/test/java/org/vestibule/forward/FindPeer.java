package org.vestibule.forward;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DataSetReader;
import org.vestibule.dicom.DataSetWriter;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.keys.TlsSide;

/**
 * An archive's side of C-FIND and C-STORE, put together from the tables of PS3.8 9.3, PS3.7 9.3.1,
 * 9.3.2 and D.3.3.5 (from memory of the 2024 editions); it accepts every context, in implicit VR if
 * it may.
 */
final class FindPeer implements AutoCloseable {

  private static final String IMPLICIT = "1.2.840.10008.1.2";

  /** What it answers to one question. */
  record Matches(int status, List<DataSet> found) {}

  /** The questions it was asked. */
  final List<DataSet> questions = Collections.synchronizedList(new ArrayList<>());

  /** Item 56H of the last request, empty if there was none. */
  volatile byte[] negotiated = new byte[0];

  /** How many objects it took whole. */
  final AtomicInteger stored = new AtomicInteger();

  /** What C-STORE is answered with: the status and what stands behind it (group 0000). */
  volatile int storeStatus;

  volatile byte[] storeComment = new byte[0];

  /** True if it keeps its reports of storage commitment for later, and hangs up. */
  volatile boolean reportsLater;

  /** What it has not reported yet, as it was asked for. */
  final BlockingQueue<DataSet> unreported = new LinkedBlockingQueue<>();

  private final ServerSocket door;
  private final Optional<TlsSide> tls;
  private final boolean relational;
  private final Function<DataSet, Matches> answers;

  FindPeer(boolean relational, Function<DataSet, Matches> answers) throws IOException {
    this(relational, answers, Optional.empty());
  }

  /**
   * @param tls its side of TLS; empty for a plain line
   */
  FindPeer(boolean relational, Function<DataSet, Matches> answers, Optional<TlsSide> tls)
      throws IOException {
    this.tls = tls;
    this.relational = relational;
    this.answers = answers;
    this.door = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    Thread thread = new Thread(this::serve, "find-peer");
    thread.setDaemon(true);
    thread.start();
  }

  int port() {
    return door.getLocalPort();
  }

  private void serve() {
    while (!door.isClosed()) {
      try (Socket plain = door.accept();
          Socket socket = tls.isPresent() ? tls.get().over(plain, "", 0) : plain) {
        talk(new DataInputStream(socket.getInputStream()), socket.getOutputStream());
      } catch (IOException callerLeft) {
        // the next one may call
      }
    }
  }

  private void talk(DataInputStream in, OutputStream out) throws IOException {
    byte[] command = new byte[0];
    while (true) {
      int type = in.readUnsignedByte();
      in.readByte();
      byte[] body = new byte[in.readInt()];
      in.readFully(body);
      if (type == 1) {
        out.write(pdu(2, accepted(body)));
      } else if (type == 5) {
        out.write(pdu(6, new byte[4]));
        return;
      } else if (type != 4) {
        return;
      } else if ((body[5] & 1) == 1) {
        command = body; // one fragment each: no question here is longer than a PDU
      } else if (number(command, 0x0100) == 1) {
        if ((body[5] & 2) == 2) {
          stored.incrementAndGet();
          byte[] answer =
              response(0x8001, number(command, 0x0110), 0x0101, storeStatus, storeComment);
          out.write(fragment(command[4], 3, answer));
        }
      } else if (number(command, 0x0100) == 0x0130) {
        commit(command, body, out);
        if (reportsLater) {
          return;
        }
      } else {
        answer(command, body, out);
      }
    }
  }

  /** The request as it came, each context answered. */
  private byte[] accepted(byte[] request) {
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    answer.write(request, 0, 68);
    ByteBuffer items = ByteBuffer.wrap(request, 68, request.length - 68);
    while (items.hasRemaining()) {
      int type = items.get();
      items.get();
      byte[] content = new byte[items.getShort()];
      items.get(content);
      if (type == 0x10) {
        answer.writeBytes(item(0x10, content));
      } else if (type == 0x20) {
        answer.writeBytes(
            item(
                0x21,
                join(
                    new byte[] {content[0], 0, 0, 0},
                    item(0x40, chosen(content).getBytes(US_ASCII)))));
      } else if (type == 0x50) {
        answer.writeBytes(item(0x50, user(content)));
      }
    }
    return answer.toByteArray();
  }

  /** Implicit VR where it is offered, else what is offered first. */
  private static String chosen(byte[] context) {
    List<String> offered = new ArrayList<>();
    ByteBuffer items = ByteBuffer.wrap(context, 4, context.length - 4);
    while (items.hasRemaining()) {
      int type = items.get();
      items.get();
      byte[] content = new byte[items.getShort()];
      items.get(content);
      if (type == 0x40) {
        offered.add(new String(content, US_ASCII));
      }
    }
    return offered.contains(IMPLICIT) ? IMPLICIT : offered.get(0);
  }

  private byte[] user(byte[] asked) {
    negotiated = new byte[0];
    ByteBuffer items = ByteBuffer.wrap(asked);
    while (items.hasRemaining()) {
      int type = items.get();
      items.get();
      byte[] content = new byte[items.getShort()];
      items.get(content);
      if (type == 0x56) {
        negotiated = content;
      }
    }
    byte[] usual =
        join(item(0x51, new byte[] {0, 0, 0x40, 0}), item(0x52, "1.2.3.4".getBytes(US_ASCII)));
    return relational ? join(usual, item(0x56, negotiated)) : usual;
  }

  private void answer(byte[] command, byte[] data, OutputStream out) throws IOException {
    byte[] question = new byte[data.length - 6];
    System.arraycopy(data, 6, question, 0, question.length);
    DataSet asked = DataSetReader.read(question, new TransferSyntax(IMPLICIT)).orThrow();
    questions.add(asked);
    int context = command[4];
    int messageId = number(command, 0x0110);
    Matches matches = answers.apply(asked);
    for (DataSet found : matches.found()) {
      byte[] bytes = DataSetWriter.write(found, new TransferSyntax(IMPLICIT)).orThrow();
      out.write(fragment(context, 3, response(0x8020, messageId, 1, 0xFF00, new byte[0])));
      out.write(fragment(context, 2, bytes));
    }
    byte[] last = response(0x8020, messageId, 0x0101, matches.status(), new byte[0]);
    out.write(fragment(context, 3, last));
    out.flush();
  }

  /**
   * Storage commitment (PS3.7 10.3.1 and 10.3.5): takes the request, and reports on the same
   * association that it keeps everything, unless that is to come later.
   */
  private void commit(byte[] command, byte[] data, OutputStream out) throws IOException {
    byte[] action = Arrays.copyOfRange(data, 6, data.length);
    DataSet asked = DataSetReader.read(action, new TransferSyntax(IMPLICIT)).orThrow();
    byte[] taken = response(0x8130, number(command, 0x0110), 0x0101, 0, new byte[0]);
    out.write(fragment(command[4], 3, taken));
    if (reportsLater) {
      unreported.add(asked);
    } else {
      report(command[4], asked, out);
    }
  }

  private static void report(int context, DataSet asked, OutputStream out) throws IOException {
    byte[] elements =
        join(
            text(0x0002, "1.2.840.10008.1.20.1"),
            us(0x0100, 0x0100),
            us(0x0110, 7),
            us(0x0800, 1),
            text(0x1000, "1.2.840.10008.1.20.1.1"),
            us(0x1002, 1));
    out.write(fragment(context, 3, withLength(elements)));
    byte[] report = DataSetWriter.write(asked, new TransferSyntax(IMPLICIT)).orThrow();
    out.write(fragment(context, 2, report));
    out.flush();
  }

  /**
   * Calls our door (PS3.8 9.3.2, role selection of PS3.7 D.3.3.4: it is the provider) and reports
   * what it was asked for first and has not reported yet.
   *
   * @return the status that it was answered with (PS3.7 10.1.1)
   */
  int reportTo(int port) throws IOException {
    String service = "1.2.840.10008.1.20.1";
    byte[] context =
        join(
            new byte[] {1, 0, 0, 0},
            item(0x30, service.getBytes(US_ASCII)),
            item(0x40, IMPLICIT.getBytes(US_ASCII)));
    byte[] role =
        join(
            new byte[] {0, (byte) service.length()}, service.getBytes(US_ASCII), new byte[] {0, 1});
    byte[] request =
        join(
            new byte[] {0, 1, 0, 0},
            "VESTIBULE       ARCHIVE         ".getBytes(US_ASCII),
            new byte[32],
            item(0x10, "1.2.840.10008.3.1.1.1".getBytes(US_ASCII)),
            item(0x20, context),
            item(
                0x50,
                join(
                    item(0x51, new byte[] {0, 0, 0x40, 0}),
                    item(0x52, "1.2.3.4".getBytes(US_ASCII)),
                    item(0x54, role))));
    try (Socket caller = new Socket(InetAddress.getLoopbackAddress(), port)) {
      OutputStream out = caller.getOutputStream();
      DataInputStream in = new DataInputStream(caller.getInputStream());
      out.write(pdu(1, request));
      take(in, 2);
      report(1, unreported.remove(), out);
      byte[] answer = take(in, 4);
      out.write(pdu(5, new byte[4]));
      take(in, 6);
      return number(answer, 0x0900);
    }
  }

  private static byte[] take(DataInputStream in, int expected) throws IOException {
    int type = in.readUnsignedByte();
    in.readByte();
    byte[] body = new byte[in.readInt()];
    in.readFully(body);
    if (type != expected) {
      throw new IOException("a PDU of type " + type + " came instead of " + expected);
    }
    return body;
  }

  private static int number(byte[] command, int element) {
    ByteBuffer elements =
        ByteBuffer.wrap(command, 6, command.length - 6).order(ByteOrder.LITTLE_ENDIAN);
    TreeMap<Integer, Integer> numbers = new TreeMap<>();
    while (elements.hasRemaining()) {
      elements.getShort();
      int tag = elements.getShort() & 0xFFFF;
      byte[] value = new byte[elements.getInt()];
      elements.get(value);
      if (value.length == 2) {
        numbers.put(tag, (value[0] & 0xFF) | (value[1] & 0xFF) << 8);
      }
    }
    return numbers.get(element);
  }

  /** An element of group 0000 with text. */
  static byte[] text(int element, String text) {
    byte[] value = (text.length() % 2 == 0 ? text : text + " ").getBytes(US_ASCII);
    return join(
        ByteBuffer.allocate(8)
            .order(ByteOrder.LITTLE_ENDIAN)
            .putShort((short) 0)
            .putShort((short) element)
            .putInt(value.length)
            .array(),
        value);
  }

  private static byte[] response(
      int field, int messageId, int dataSetType, int status, byte[] more) {
    byte[] elements =
        join(
            us(0x0100, field),
            us(0x0120, messageId),
            us(0x0800, dataSetType),
            us(0x0900, status),
            more);
    return withLength(elements);
  }

  private static byte[] withLength(byte[] elements) {
    ByteBuffer length = ByteBuffer.allocate(12).order(ByteOrder.LITTLE_ENDIAN);
    length.putShort((short) 0).putShort((short) 0).putInt(4).putInt(elements.length);
    return join(length.array(), elements);
  }

  private static byte[] us(int element, int value) {
    return ByteBuffer.allocate(10)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort((short) 0)
        .putShort((short) element)
        .putInt(2)
        .putShort((short) value)
        .array();
  }

  private static byte[] fragment(int context, int header, byte[] value) {
    return pdu(
        4,
        join(
            ByteBuffer.allocate(4).putInt(value.length + 2).array(),
            new byte[] {(byte) context, (byte) header},
            value));
  }

  private static byte[] pdu(int type, byte[] body) {
    return join(
        new byte[] {(byte) type, 0}, ByteBuffer.allocate(4).putInt(body.length).array(), body);
  }

  private static byte[] item(int type, byte[] content) {
    return join(
        new byte[] {(byte) type, 0},
        ByteBuffer.allocate(2).putShort((short) content.length).array(),
        content);
  }

  private static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  @Override
  public void close() throws IOException {
    door.close();
  }
}
