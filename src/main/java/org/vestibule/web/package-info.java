/**
 * The pages: one server, one table of routes ({@link org.vestibule.web.Routes}), one gate before
 * every page ({@link org.vestibule.web.Gate}). A page turns what was asked into an answer and knows
 * neither the server nor the session's keeping.
 */
@NullMarked
package org.vestibule.web;

import org.jspecify.annotations.NullMarked;
