package org.vestibule.forward;

/**
 * An object that is not shown where it was sent, with what leads to other studies of its patient.
 *
 * @param patientId as in our object; may be empty
 * @param accessionNumber as in our object; may be empty
 */
public record Sought(Instance instance, String patientId, String accessionNumber) {}
