package bootmend.check;

import java.util.List;

/** Looks at one matter of a card; pure, so that what it says follows from its input alone. */
sealed interface Check
        permits ActiveLineCheck,
                BootFileCheck,
                BootContentCheck,
                ClockCheck,
                CommandLineCheck,
                ConfigFileCheck,
                IncludeCheck,
                NumberCheck,
                PracticeCheck,
                RepeatCheck,
                SectionCheck,
                SpellingCheck,
                StartCheck,
                UseCheck,
                VolumeStateCheck,
                VoltageCheck {

    /** What it saw, in any order. */
    List<Remark> look(CardContent card);
}
