/**
 * The window. Entry class: {@link fuelwright.ui.WindowApp}. One package for each stage, {@code shell} around them, {@code session} under
 * them, {@code plot} and {@code theme} at the bottom. Must not be known by anything but the program's start.
 */
package fuelwright.ui;
