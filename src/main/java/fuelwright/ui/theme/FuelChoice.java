package fuelwright.ui.theme;

import fuelwright.mixture.Fuel;
import javafx.beans.property.Property;
import javafx.scene.control.ComboBox;
import javafx.util.StringConverter;

/** The choice of a fuel, each with its stoichiometric ratio. */
public final class FuelChoice extends ComboBox<Fuel> {

    public FuelChoice(Property<Fuel> fuel) {
        getItems().setAll(Fuel.values());
        setMaxWidth(Double.MAX_VALUE);
        setAccessibleText(Words.of("machine.fuel"));
        setConverter(new StringConverter<>() {
            @Override
            public String toString(Fuel one) {
                return one == null
                        ? ""
                        : Words.of("machine.fuel.item", one.words(), Figures.shortest(one.stoichiometricRatio()));
            }

            @Override
            public Fuel fromString(String text) {
                throw new UnsupportedOperationException("a fuel is chosen, not typed");
            }
        });
        valueProperty().bindBidirectional(fuel);
    }
}
