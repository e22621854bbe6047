package org.vestibule.cli;

import picocli.CommandLine.Option;

/** Asks for the place of a failure; the launcher looks at the words of the command line for it. */
final class TraceOption {

  static final String NAME = "--trace";

  @Option(names = NAME, description = "If the program itself fails, show where.")
  boolean trace;
}
