/**
 * Cautions: judges every table before it leaves the program and labels it; never lets a Stop go out unsaid. Entry classes:
 * {@link fuelwright.safety.Judge}, {@link fuelwright.safety.Caution}. Must not know files or the window.
 */
package fuelwright.safety;
