package bootmend.gui.model;

import bootmend.operation.ChangeRequest;

/** The word by which the texts of each kind of request are found. */
public record RequestKey() implements ChangeRequest.Cases<String> {

    /** Such as {@code stock}. */
    public static String of(ChangeRequest request) {
        return request.match(new RequestKey());
    }

    @Override
    public String toStock(ChangeRequest.ToStock request) {
        return "stock";
    }

    @Override
    public String toProfile(ChangeRequest.ToProfile request) {
        return "profile";
    }

    @Override
    public String toSettings(ChangeRequest.ToSettings request) {
        return "like";
    }

    @Override
    public String toEarlier(ChangeRequest.ToEarlier request) {
        return "earlier";
    }

    @Override
    public String undo(ChangeRequest.Undo request) {
        return request.to().isPresent() ? "history" : "back";
    }

    @Override
    public String repair(ChangeRequest.Repair request) {
        return "repair";
    }

    @Override
    public String fromGood(ChangeRequest.FromGood request) {
        return "good";
    }

    @Override
    public String stage(ChangeRequest.Stage request) {
        return "stage";
    }

    @Override
    public String adopt(ChangeRequest.Adopt request) {
        return "adopt";
    }

    @Override
    public String unstage(ChangeRequest.Unstage request) {
        return "unstage";
    }

    @Override
    public String edit(ChangeRequest.Edit request) {
        return "edit";
    }
}
