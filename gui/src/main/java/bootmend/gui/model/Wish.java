package bootmend.gui.model;

import bootmend.CardException;
import bootmend.operation.ProfileRequest;
import bootmend.operation.ProposedChange;
import bootmend.operation.PutProfileJob;
import bootmend.operation.RepairJob;
import bootmend.operation.RepairRequest;
import bootmend.operation.ResetJob;
import bootmend.operation.ResetRequest;
import bootmend.operation.StageJob;
import bootmend.operation.StageRequest;
import bootmend.operation.UndoJob;
import bootmend.operation.UndoRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;

/** What a user wants done to a card. */
public sealed interface Wish {

    /** The word by which this kind of wish's texts are found. */
    String key();

    /** The same, but a file on a full card may be overwritten where it stands. */
    Wish inPlace(boolean inPlace);

    /** Works the change out, on a card that is held for changing or only read. */
    ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException;

    /** Tuning lines back to stock. */
    record BackToStock(ResetRequest request) implements Wish {

        @Override
        public String key() {
            return "stock";
        }

        @Override
        public Wish inPlace(boolean inPlace) {
            return new BackToStock(new ResetRequest(request.remove(), request.also(), inPlace));
        }

        /** The same, with lines taken out rather than commented out. */
        public Wish removing(boolean remove) {
            return new BackToStock(new ResetRequest(remove, request.also(), request.inPlace()));
        }

        @Override
        public ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException {
            ResetJob job = new ResetJob(workplace);
            return forChanging ? job.begin(card, request) : job.preview(card, request);
        }
    }

    /** A profile's settings. */
    record PutProfile(ProfileRequest request) implements Wish {

        @Override
        public String key() {
            return "profile";
        }

        @Override
        public Wish inPlace(boolean inPlace) {
            return new PutProfile(new ProfileRequest(
                    request.name(), request.board(), request.otherBoard(), request.despiteBlockers(), inPlace));
        }

        @Override
        public ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException {
            PutProfileJob job = new PutProfileJob(workplace);
            return forChanging ? job.begin(card, request) : job.preview(card, request);
        }
    }

    /** The last change taken back, or all after a chosen one. */
    record TakeBack(UndoRequest request) implements Wish {

        @Override
        public String key() {
            return request.to().isPresent() ? "history" : "back";
        }

        @Override
        public Wish inPlace(boolean inPlace) {
            return new TakeBack(new UndoRequest(request.to(), inPlace));
        }

        @Override
        public ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException {
            UndoJob job = new UndoJob(workplace);
            return forChanging ? job.begin(card, request) : job.preview(card, request);
        }
    }

    /** Damage mended. */
    record Repair(RepairRequest request) implements Wish {

        /** Nothing freed that may hold a piece of a file. */
        static final Repair PLAIN = new Repair(RepairRequest.PLAIN);

        @Override
        public String key() {
            return "repair";
        }

        @Override
        public Wish inPlace(boolean inPlace) {
            return new Repair(new RepairRequest(request.freeLost(), inPlace));
        }

        @Override
        public ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException {
            RepairJob job = new RepairJob(workplace);
            return forChanging ? job.begin(card, request) : job.preview(card, request);
        }
    }

    /** Settings laid beside the config file, for one try. */
    record Stage(StageRequest request) implements Wish {

        @Override
        public String key() {
            return "stage";
        }

        @Override
        public Wish inPlace(boolean inPlace) {
            return new Stage(new StageRequest(request.board(), request.settings(), request.despiteBlockers(), inPlace));
        }

        @Override
        public ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException {
            return new StageJob(workplace).stage(card, request, forChanging);
        }
    }

    /** The staged settings made the config file's. */
    record Adopt(boolean overwriting) implements Wish {

        @Override
        public String key() {
            return "adopt";
        }

        @Override
        public Wish inPlace(boolean inPlace) {
            return new Adopt(inPlace);
        }

        @Override
        public ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException {
            return new StageJob(workplace).adopt(card, forChanging, overwriting);
        }
    }

    /** The staged settings taken away. */
    record Unstage() implements Wish {

        @Override
        public String key() {
            return "unstage";
        }

        @Override
        public Wish inPlace(boolean inPlace) {
            return this;
        }

        @Override
        public ProposedChange propose(Workplace workplace, CardRequest card, boolean forChanging) throws CardException {
            return new StageJob(workplace).unstage(card, forChanging);
        }
    }
}
