package org.vestibule.cli;

import java.lang.reflect.Constructor;
import picocli.CommandLine;

/** Makes commands, handing each its surroundings. */
final class CommandFactory implements CommandLine.IFactory {

  private final Surroundings surroundings;

  CommandFactory(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public <K> K create(Class<K> kind) throws Exception {
    for (Constructor<?> constructor : kind.getDeclaredConstructors()) {
      if (constructor.getParameterCount() == 1
          && constructor.getParameterTypes()[0] == Surroundings.class) {
        return kind.cast(constructor.newInstance(surroundings));
      }
    }
    return CommandLine.defaultFactory().create(kind);
  }
}
