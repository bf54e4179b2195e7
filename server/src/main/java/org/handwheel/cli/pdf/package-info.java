/** Sheets as PDF files; the only package that knows the libraries that make them. */
@NullMarked
package org.handwheel.cli.pdf;

import org.jspecify.annotations.NullMarked;
