/**
 * How the window looks and speaks: themes by colour role, palettes of maps, figures, words, small parts. Entry classes:
 * {@link fuelwright.ui.theme.Theme}, {@link fuelwright.ui.theme.Words}. Must not know jobs, stages or the shell.
 */
package fuelwright.ui.theme;
