package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/** The orders that a worklist told of, each as often as it was told otherwise. */
public final class Orders {

  private final Database database;

  Orders(Database database) {
    this.database = database;
  }

  /** Records what a worklist says of a visit's order now; {@code at} of the row does not count. */
  public void add(OrderRow order, String who) {
    database.update(
        "INSERT INTO visit_order (practice, visit, station, step, json, who, at)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        order.visit(),
        order.station(),
        order.step(),
        order.json(),
        who,
        database.now());
  }

  /** What was told last of a visit's order. */
  public Optional<OrderRow> latest(String visit) {
    return database.one(
        "SELECT * FROM visit_order WHERE practice = ? AND visit = ? ORDER BY number DESC LIMIT 1",
        Orders::read,
        database.practice(),
        visit);
  }

  /** What was told last of every visit that has an order, in the order of telling. */
  public List<OrderRow> latest() {
    return database.list(
        "SELECT o.* FROM visit_order o WHERE o.practice = ? AND o.number = (SELECT max(number)"
            + " FROM visit_order n WHERE n.practice = o.practice AND n.visit = o.visit)"
            + " ORDER BY o.number",
        Orders::read,
        database.practice());
  }

  private static OrderRow read(Row row) throws SQLException {
    return new OrderRow(
        row.text("visit"), row.text("station"), row.text("step"), row.text("json"), row.time("at"));
  }
}
