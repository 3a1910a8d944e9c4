package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import fuelwright.handover.OutputException.Why;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {

    @TempDir
    Path home;

    @Test
    void out01_a_new_folder_is_made_with_the_folders_above_it() throws IOException {
        OutputFolder.write(home.resolve("a/b/out"), files("1"), false);
        assertEquals(Map.of("one.csv", "1", "two.csv", "1!"), contents(home.resolve("a/b/out")));
        assertEquals(List.of("out"), names(home.resolve("a/b")));
    }

    @Test
    void out02_an_empty_folder_is_filled() throws IOException {
        Files.createDirectory(home.resolve("out"));
        OutputFolder.write(home.resolve("out"), files("1"), false);
        assertEquals(List.of("one.csv", "two.csv"), names(home.resolve("out")));
    }

    @Test
    void out03_files_of_other_names_stay_as_they_are() throws IOException {
        Path out = Files.createDirectory(home.resolve("out"));
        Files.writeString(out.resolve("mine.txt"), "mine");
        Files.createDirectory(out.resolve("kept"));
        Files.writeString(out.resolve("kept/inside.txt"), "inside");
        OutputFolder.write(out, files("1"), false);
        OutputFolder.write(out, files("2"), true);
        assertEquals(List.of("kept", "mine.txt", "one.csv", "two.csv"), names(out));
        assertEquals("mine", Files.readString(out.resolve("mine.txt")));
        assertEquals("inside", Files.readString(out.resolve("kept/inside.txt")));
        assertEquals("2", Files.readString(out.resolve("one.csv")));
    }

    @Test
    void out03b_what_a_killed_write_left_is_cleared_by_the_next_and_nothing_set_aside_is_lost() throws IOException {
        Path out = Files.createDirectory(home.resolve("out"));
        Path killed =
                Files.createDirectories(out.resolve(".fuelwright.part-1/old")).getParent();
        Files.writeString(killed.resolve("old/one.csv"), "older");
        Files.writeString(killed.resolve("old/other.csv"), "set aside");
        Files.createDirectories(out.resolve(".fuelwright.part-7/new"));
        OutputFolder.write(out, files("1"), false);
        assertEquals(List.of("one.csv", "other.csv", "two.csv"), names(out));
        assertEquals("1", Files.readString(out.resolve("one.csv")));
        assertEquals("set aside", Files.readString(out.resolve("other.csv")));
    }

    @Test
    void out04_one_file_that_is_there_keeps_all_from_being_written() throws IOException {
        Path out = Files.createDirectory(home.resolve("out"));
        Files.writeString(out.resolve("two.csv"), "older");
        OutputException refused = assertThrows(OutputException.class, () -> OutputFolder.write(out, files("1"), false));
        assertEquals(Why.EXISTS, refused.why());
        assertTrue(refused.getMessage().contains("two.csv"), refused.getMessage());
        assertTrue(refused.getMessage().contains("--replace"), refused.getMessage());
        assertEquals(Map.of("two.csv", "older"), contents(out));
    }

    @Test
    void out05_a_file_in_the_folders_place_is_left_alone() throws IOException {
        Path out = Files.writeString(home.resolve("out"), "a file");
        OutputException refused = assertThrows(OutputException.class, () -> OutputFolder.write(out, files("1"), true));
        assertEquals(Why.WRONG_KIND, refused.why());
        assertEquals("a file", Files.readString(out));
    }

    @Test
    void out06_a_file_among_the_folders_above_is_named() throws IOException {
        Files.writeString(home.resolve("file"), "a file");
        OutputException refused = assertThrows(
                OutputException.class, () -> OutputFolder.write(home.resolve("file/deep/out"), files("1"), true));
        assertEquals(Why.WRONG_KIND, refused.why());
        assertEquals(List.of("file"), names(home));
    }

    @Test
    void out07_a_folder_in_a_files_place_is_left_alone_even_with_replace() throws IOException {
        Path out = Files.createDirectories(home.resolve("out/one.csv")).getParent();
        OutputException refused = assertThrows(OutputException.class, () -> OutputFolder.write(out, files("1"), true));
        assertEquals(Why.WRONG_KIND, refused.why());
        assertEquals(List.of("one.csv"), names(out));
    }

    @Test
    void out08_a_read_only_folder_gives_a_sentence_and_nothing_changes() throws IOException {
        Path parent = Files.createDirectory(home.resolve("locked"));
        Files.setPosixFilePermissions(parent, PosixFilePermissions.fromString("r-xr-xr-x"));
        assumeTrue(!Files.isWritable(parent), "the one who runs this may write anywhere");
        OutputException refused =
                assertThrows(OutputException.class, () -> OutputFolder.write(parent.resolve("out"), files("1"), false));
        assertEquals(Why.NOT_ALLOWED, refused.why());
        assertEquals(List.of(), names(parent));
    }

    @Test
    void out09_what_the_system_never_lets_one_write_gives_a_sentence() {
        assumeTrue(Files.isDirectory(Path.of("/proc/self")), "no such file system here");
        OutputException refused = assertThrows(
                OutputException.class, () -> OutputFolder.write(Path.of("/proc/self/out"), files("1"), false));
        assertTrue(refused.getMessage().contains("Nothing was written"), refused.getMessage());
    }

    @Test
    void out10_a_device_without_room_gives_a_sentence_and_leaves_nothing() {
        IOException full = new IOException("No space left on device");
        OutputException told = OutputFolder.explained(Path.of("out"), full);
        assertEquals(Why.NO_ROOM, told.why());
        assertEquals(
                "There is no room for out. Nothing was written: free some space or give another folder",
                told.getMessage());
    }

    @Test
    void out11_a_failure_half_way_puts_the_old_files_back() throws IOException {
        Path out = Files.createDirectory(home.resolve("out"));
        Files.writeString(out.resolve("one.csv"), "older");
        Map<String, byte[]> broken = new LinkedHashMap<>(files("1"));
        broken.put("n".repeat(300) + ".csv", new byte[1]);
        assertThrows(OutputException.class, () -> OutputFolder.write(out, broken, true));
        assertEquals(Map.of("one.csv", "older"), contents(out));
        assertThrows(OutputException.class, () -> OutputFolder.write(home.resolve("x/y"), broken, true));
        assertEquals(List.of("out"), names(home));
    }

    @Test
    void out12_a_link_to_a_folder_is_followed() throws IOException {
        Path real = Files.createDirectory(home.resolve("real"));
        Path link = Files.createSymbolicLink(home.resolve("link"), real);
        OutputFolder.write(link, files("1"), false);
        assertEquals(List.of("one.csv", "two.csv"), names(real));
        assertTrue(Files.isSymbolicLink(link));
    }

    @Test
    void out13_left_overs_of_a_killed_run_are_no_hindrance() throws IOException {
        Files.createDirectories(home.resolve(".out.part-1/new"));
        OutputFolder.write(home.resolve("out"), files("1"), false);
        assertEquals(List.of("one.csv", "two.csv"), names(home.resolve("out")));
    }

    @Test
    void out14_names_that_lead_elsewhere_are_a_programmers_mistake() {
        for (String name : List.of("", "../x", "a/b", "a\\b", ".hidden")) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> OutputFolder.write(home.resolve("out"), Map.of(name, new byte[0]), true));
        }
        assertFalse(Files.exists(home.resolve("out")));
    }

    @Test
    void out15_bytes_come_out_as_they_went_in() throws IOException {
        byte[] all = new byte[256 * 1024];
        for (int i = 0; i < all.length; i++) {
            all[i] = (byte) (i * 31);
        }
        OutputFolder.write(home.resolve("out"), Map.of("all.bin", all), false);
        assertArrayEquals(all, Files.readAllBytes(home.resolve("out/all.bin")));
    }

    private static Map<String, byte[]> files(String text) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("two.csv", (text + "!").getBytes(StandardCharsets.UTF_8));
        files.put("one.csv", text.getBytes(StandardCharsets.UTF_8));
        return files;
    }

    private static List<String> names(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    private static Map<String, String> contents(Path folder) throws IOException {
        Map<String, String> contents = new TreeMap<>();
        for (String name : names(folder)) {
            contents.put(name, Files.readString(folder.resolve(name)));
        }
        return contents;
    }
}
