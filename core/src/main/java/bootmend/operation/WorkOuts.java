package bootmend.operation;

/** Gives each kind of request what works it out. */
record WorkOuts(Work work) implements ChangeRequest.Cases<WorkOut> {

    @Override
    public WorkOut toStock(ChangeRequest.ToStock request) {
        return new StockWork(work, request);
    }

    @Override
    public WorkOut toProfile(ChangeRequest.ToProfile request) {
        return new ProfileWork(work, request);
    }

    @Override
    public WorkOut toSettings(ChangeRequest.ToSettings request) {
        return new SettingsWork(work, request);
    }

    @Override
    public WorkOut toEarlier(ChangeRequest.ToEarlier request) {
        return new EarlierWork(work, request);
    }

    @Override
    public WorkOut undo(ChangeRequest.Undo request) {
        return new UndoWork(work, request);
    }

    @Override
    public WorkOut repair(ChangeRequest.Repair request) {
        return new RepairWork(work, request);
    }

    @Override
    public WorkOut fromGood(ChangeRequest.FromGood request) {
        return new GoodFilesWork(work, request);
    }

    @Override
    public WorkOut stage(ChangeRequest.Stage request) {
        return new StageWork(work, request);
    }

    @Override
    public WorkOut adopt(ChangeRequest.Adopt request) {
        return new AdoptWork(work);
    }

    @Override
    public WorkOut unstage(ChangeRequest.Unstage request) {
        return new UnstageWork(work);
    }

    @Override
    public WorkOut edit(ChangeRequest.Edit request) {
        return new EditWork(work, request);
    }
}
