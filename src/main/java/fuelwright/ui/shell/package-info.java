/**
 * The frame around the stages: rail, top bar, status line, find-an-action, keys, dropped files. Entry class:
 * {@link fuelwright.ui.shell.Shell}.
 */
package fuelwright.ui.shell;
