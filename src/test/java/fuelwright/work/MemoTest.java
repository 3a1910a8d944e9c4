package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class MemoTest {

    private record Key(int number, boolean isLarge) implements Memo.Key<String> {}

    private final Memo memo = new Memo();

    private static Key key(int number) {
        return new Key(number, false);
    }

    @Test
    void whatWasOnlyTriedIsForgottenAndWhatAnAnalysisMadeStays() {
        memo.of(key(1), () -> "made");
        memo.forgetUnused();
        for (int position = 2; position < 100; position++) {
            memo.forgetTried();
            int now = position;
            memo.of(key(1), () -> "anew");
            memo.of(key(now), () -> "tried " + now);
            assertEquals(Optional.of("tried " + now), memo.known(key(now)));
            assertEquals(Optional.empty(), memo.known(key(now - 1)).filter(v -> now > 2));
        }
        assertEquals(Optional.of("made"), memo.known(key(1)));
    }

    @Test
    void whatTwoAnalysesHadNoUseForIsForgottenAtOnceWhereItIsLarge() {
        memo.of(key(1), () -> "small");
        memo.of(new Key(2, true), () -> "large");
        memo.forgetUnused();
        memo.forgetUnused();
        assertEquals(Optional.of("small"), memo.known(key(1)));
        assertEquals(Optional.empty(), memo.known(new Key(2, true)));
        memo.forgetUnused();
        assertEquals(Optional.empty(), memo.known(key(1)));
    }

    @Test
    void forOneAnalysisNothingIsKept() {
        Memo once = Memo.none();
        assertFalse(once.keeps());
        once.of(key(1), () -> "made");
        assertEquals(Optional.empty(), once.known(key(1)));
        assertEquals("anew", once.of(key(1), () -> "anew"));
    }
}
