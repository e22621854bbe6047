package org.vestibule.dicom.net;

/** A command and the data set behind it; the data set is empty where the command has none. */
@SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
record Message(int contextId, CommandSet command, byte[] data) {}
