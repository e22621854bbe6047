package org.vestibule.cli;

import picocli.CommandLine.Option;

/** Whose consent it is, and for what. */
final class ConsentOfOption {

  @Option(
      names = "--patient",
      required = true,
      paramLabel = "NUMBER",
      description = "The patient's number.")
  String patient = "";

  @Option(
      names = "--issuer",
      paramLabel = "WORDS",
      description = "Who issued the number, where several do.")
  String issuer = "";

  @Option(
      names = "--purpose",
      required = true,
      paramLabel = "PURPOSE",
      description = "For what: referral, laboratory, insurer, teaching, publication, website.")
  String purpose = "";
}
