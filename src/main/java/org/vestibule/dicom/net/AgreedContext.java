package org.vestibule.dicom.net;

/** A presentation context that the called side accepted. */
record AgreedContext(int id, String abstractSyntax, String transferSyntax) {}
