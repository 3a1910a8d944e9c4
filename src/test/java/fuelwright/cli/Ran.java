package fuelwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Stream;

/** What one command line gave. Every run is checked for stack traces. */
record Ran(int code, String out, String err) {

    /** The sample machine's engine and bodies, as options. */
    static final List<String> BODIES =
            List.of("--displacement", "720", "--bodies", "2", "--bore-before", "38", "--bore-after", "44");

    /** A command with what it is given first, and options after that. */
    static Ran of(List<?> first, Object... more) {
        return of(Stream.concat(first.stream(), Stream.of(more)).toArray());
    }

    static Ran of(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = new String[args.length];
        for (int i = 0; i < args.length; i++) {
            words[i] = args[i].toString();
        }
        int code = CommandLineTool.run(words, new PrintWriter(out), new PrintWriter(err));
        Ran ran = new Ran(code, out.toString(), err.toString());
        assertFalse(ran.err.contains("\tat ") || ran.err.contains("Exception"), ran.err);
        assertFalse(ran.err.contains("a fault of its own"), ran.err);
        return ran;
    }

    /** The run failed with this code and one line on standard error that has all of these words, and nothing on standard output. */
    void refused(int expected, String... words) {
        assertEquals(expected, code, err);
        assertEquals("", out);
        assertEquals(1, errLines().size(), err);
        has(words);
    }

    void has(String... words) {
        for (String word : words) {
            assertTrue(err.contains(word), "'" + word + "' in: " + err);
        }
    }

    List<String> errLines() {
        return err.lines().toList();
    }
}
