package org.vestibule.jpeg;

/**
 * One component of a frame as its header states it (ITU-T T.81 B.2.2).
 *
 * @param id component identifier, 0 to 255; not necessarily unique in the wild
 * @param horizontal horizontal sampling factor, 1 to 4
 * @param vertical vertical sampling factor, 1 to 4
 * @param quantTable quantisation table selector, 0 to 3
 */
public record JpegComponent(int id, int horizontal, int vertical, int quantTable) {}
