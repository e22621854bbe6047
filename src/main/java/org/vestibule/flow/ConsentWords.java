package org.vestibule.flow;

/**
 * A consent as a person types it or a list has it; every part is text, empty if it wasn't said.
 *
 * @param patient the patient's number
 * @param issuer who issued the number; empty for the practice's usual one
 * @param purpose a purpose's key
 * @param given the day it was given, YYYY-MM-DD
 * @param until the last day on which it holds
 * @param face "yes" if pictures that show the face may be used, "no" or empty if not
 * @param form the version of the form that was signed
 * @param guardian who signed for the patient
 * @param ofAge at how many years the patient is of age by local law; needed with a guardian
 */
public record ConsentWords(
    String patient,
    String issuer,
    String purpose,
    String given,
    String until,
    String face,
    String form,
    String guardian,
    String ofAge) {}
