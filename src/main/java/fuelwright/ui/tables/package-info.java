/**
 * The stage Tables: fuel table and target table. Entry class: {@link fuelwright.ui.tables.TablesView}. Must not know other stages.
 */
package fuelwright.ui.tables;
