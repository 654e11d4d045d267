package bootmend.check;

import java.util.List;

/** Looks at one matter of a card; pure, so that what it says follows from its input alone. */
sealed interface Check
        permits ActiveLineCheck,
                BootChainCheck,
                ClockCheck,
                ConfigFileCheck,
                IncludeCheck,
                LeftFileCheck,
                LimitCheck,
                NumberCheck,
                OneTimeCheck,
                PracticeCheck,
                RepeatCheck,
                SectionCheck,
                SpellingCheck,
                TrialFileCheck,
                UpdateCheck,
                UseCheck,
                VolumeStateCheck,
                VoltageCheck {

    /** What it saw, in any order. */
    List<Remark> look(CardContent card);
}
