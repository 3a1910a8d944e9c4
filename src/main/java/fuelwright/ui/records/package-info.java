/**
 * The page of a folder of jobs: searched, two of them side by side, and what parts gave on engines like the open job's. Entry class:
 * {@link fuelwright.ui.records.RecordsView}.
 */
package fuelwright.ui.records;
