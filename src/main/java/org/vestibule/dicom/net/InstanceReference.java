package org.vestibule.dicom.net;

/** One object, by its class and its own UID. */
public record InstanceReference(String sopClass, String sopInstance) {}
