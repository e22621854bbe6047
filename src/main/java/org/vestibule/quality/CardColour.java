package org.vestibule.quality;

import java.util.Optional;

/**
 * What a grey card says of a photograph's colours.
 *
 * @param difference CIEDE2000 difference from a grey of the card's lightness, 0 upwards
 * @param finding what is worth a word; empty if the colours are as they should be
 */
public record CardColour(double difference, Optional<QualityFinding> finding) {}
