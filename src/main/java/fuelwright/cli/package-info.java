/**
 * The command line: the same work as the window, headless. Entry class: {@link fuelwright.cli.CommandLineTool}. Must not know the window,
 * nor do any work itself.
 */
package fuelwright.cli;
