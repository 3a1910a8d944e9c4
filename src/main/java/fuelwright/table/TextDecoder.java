package fuelwright.table;

import fuelwright.issue.Issue;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Text of a file whose encoding nobody states: a byte order mark decides; else zero bytes in every second place mean UTF-16; else
 * UTF-8 where the bytes are valid UTF-8; else Windows-1252. What was guessed is said as a note.
 */
final class TextDecoder {

    private TextDecoder() {}

    /**
     * @param issues modified: a note is added where the encoding was guessed and isn't UTF-8
     */
    static String decode(String file, byte[] bytes, List<Issue> issues) {
        if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
            return text(bytes, 3, StandardCharsets.UTF_8);
        }
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return text(bytes, 2, StandardCharsets.UTF_16LE);
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return text(bytes, 2, StandardCharsets.UTF_16BE);
        }
        Charset wide = wideCharset(bytes);
        if (wide != null) {
            issues.add(Issue.note(file, "The file has no byte order mark and was read as " + wide.name()));
            return text(bytes, 0, wide);
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            issues.add(Issue.note(file, "The file isn't UTF-8 and was read as Windows-1252"));
            return text(bytes, 0, Charset.forName("windows-1252"));
        }
    }

    private static Charset wideCharset(byte[] bytes) {
        int pairs = Math.min(bytes.length, 400) / 2;
        int evenZeros = 0;
        int oddZeros = 0;
        for (int i = 0; i < pairs; i++) {
            evenZeros += bytes[2 * i] == 0 ? 1 : 0;
            oddZeros += bytes[2 * i + 1] == 0 ? 1 : 0;
        }
        if (pairs > 0 && oddZeros > pairs * 0.9 && evenZeros == 0) {
            return StandardCharsets.UTF_16LE;
        }
        if (pairs > 0 && evenZeros > pairs * 0.9 && oddZeros == 0) {
            return StandardCharsets.UTF_16BE;
        }
        return null;
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        if (bytes.length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if ((bytes[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    private static String text(byte[] bytes, int from, Charset charset) {
        return new String(bytes, from, bytes.length - from, charset);
    }
}
