package org.vestibule.dicom.net;

import java.util.List;

/**
 * What A-ASSOCIATE-RQ and A-ASSOCIATE-AC say (PS3.8 9.3.2 and 9.3.3).
 *
 * @param contexts in a request what is proposed, in an answer what became of each
 */
record Associate(
    String called,
    String calling,
    String applicationContext,
    List<Context> contexts,
    UserInformation user) {

  static final int ACCEPTED = 0;
  static final int NO_ABSTRACT_SYNTAX = 3;
  static final int NO_TRANSFER_SYNTAX = 4;

  Associate {
    contexts = List.copyOf(contexts);
  }

  /**
   * One presentation context.
   *
   * @param id odd, 1 to 255
   * @param result of an answer: 0 accepted; 0 in a request
   * @param abstractSyntax of a request; empty in an answer
   * @param transferSyntaxes of a request all proposed, of an answer the chosen one
   */
  record Context(int id, int result, String abstractSyntax, List<String> transferSyntaxes) {
    Context {
      transferSyntaxes = List.copyOf(transferSyntaxes);
    }
  }
}
