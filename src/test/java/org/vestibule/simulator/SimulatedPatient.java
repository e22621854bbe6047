package org.vestibule.simulator;

/** An invented patient. */
public record SimulatedPatient(String id, String name) {}
