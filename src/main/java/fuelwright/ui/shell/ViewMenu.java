package fuelwright.ui.shell;

import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.RadioMenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.ToggleGroup;

/** How the window looks: theme, text size, units. */
final class ViewMenu extends MenuButton {

    ViewMenu(Session session) {
        super(Words.of("view.name"));
        getStyleClass().add("compact");
        setAccessibleText(Words.of("view.words"));
        setMinWidth(USE_PREF_SIZE);
        section("view.theme");
        choices(session.themeProperty(), Theme.values(), Theme::words);
        getItems().add(new SeparatorMenuItem());
        section("view.textsize");
        choices(session.textSizeProperty(), TextSize.values(), TextSize::words);
        getItems().add(new SeparatorMenuItem());
        section("view.measures");
        choices(session.measuresProperty(), Measures.values(), Measures::words);
    }

    private void section(String key) {
        MenuItem heading = new MenuItem(Words.of(key));
        heading.getStyleClass().add("menu-heading");
        heading.setDisable(true);
        getItems().add(heading);
    }

    private <T> void choices(ObjectProperty<T> property, T[] values, Function<T, String> words) {
        ToggleGroup group = new ToggleGroup();
        for (T value : values) {
            RadioMenuItem item = new RadioMenuItem(words.apply(value));
            item.setToggleGroup(group);
            item.setSelected(property.get() == value);
            item.setOnAction(e -> property.set(value));
            property.addListener((p, old, now) -> item.setSelected(now == value));
            getItems().add(item);
        }
    }
}
