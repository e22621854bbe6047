package org.vestibule.flow.look;

import java.nio.file.Path;

/**
 * What a look found and where it stands.
 *
 * @param photographs photographs on the sheet
 * @param sittings groups by camera and time
 * @param leftOut files and folders that are no photograph
 * @param needPerson how many of those ask somebody to do something
 * @param sheet the page
 * @param manifest the list to be completed
 */
public record Looked(
    int photographs, int sittings, int leftOut, int needPerson, Path sheet, Path manifest) {}
