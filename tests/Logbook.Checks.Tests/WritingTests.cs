using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class WritingTests
{
    private readonly Line _line = new();

    private static Carry Item(string kind, params (string Name, string Value)[] fields) => new(
        kind, "slaker", "as the test says", Some.Morning.AddHours(8), "op1", fields.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal));

    private void RefusedWith(Written written, string words)
    {
        Assert.Null(written.Record);
        Assert.Contains(written.Mistakes, m => m.ToString().Contains(words, StringComparison.Ordinal));
        Assert.Equal(Head.Empty, _line.Journal.Head);
    }

    [Fact]
    public void A_remark_names_equipment_or_an_area_and_an_earlier_record()
    {
        var first = Writing.Remark(_line.Desk, "lime is dusty", "LIME", null, "op1").Record!;
        var second = Writing.Remark(_line.Desk, "rinsed", "slaker", first.Seq, "op1").Record!;

        Assert.Equal("lime", Assert.IsType<Remark>(first.Body).On);
        Assert.Equal(first.Seq, Assert.IsType<Remark>(second.Body).Related);
    }

    [Fact]
    public void A_remark_about_nothing_known_is_refused()
    {
        RefusedWith(Writing.Remark(_line.Desk, "  ", null, null, "op1"), "the remark is empty");
        RefusedWith(Writing.Remark(_line.Desk, "x", "slakr", null, "op1"), "nearest: slaker");
        RefusedWith(Writing.Remark(_line.Desk, "x", null, 7, "op1"), "there is no record 7");
        RefusedWith(Writing.Remark(_line.Desk, "x", null, null, "op9"), "known: op1, eng1");
    }

    [Fact]
    public void Equipment_changes_to_a_known_state_since_a_time()
    {
        var record = Writing.ChangeState(_line.Desk, "SLAKER", "Acid", Some.Morning.AddMinutes(-20), "wash", "op1").Record!;

        Assert.Equal(new EquipmentStateChanged("slaker", "acid", Some.Morning.AddMinutes(-20), "wash"), record.Body);
        Assert.Equal(Some.Morning.AddMinutes(-20), record.At);
        Assert.Equal("acid", _line.Desk.State.StateOf("slaker"));
    }

    [Fact]
    public void An_unknown_state_or_equipment_or_time_to_come_is_refused()
    {
        RefusedWith(Writing.ChangeState(_line.Desk, "slaker", "broken", null, null, "op1"), "accepted: running, starting, stopped");
        RefusedWith(Writing.ChangeState(_line.Desk, "pump", "running", null, null, "op1"), "'pump' is no equipment");
        RefusedWith(Writing.ChangeState(_line.Desk, "lime-scrw", "running", null, null, "op1"), "nearest: lime-screw");
        RefusedWith(Writing.ChangeState(_line.Desk, "LIME", "acid", null, null, "op1"), "'lime' is an area, no equipment of this site; its equipment: lime-screw");
        RefusedWith(Writing.ChangeState(_line.Desk, "slaker", "running", Some.Morning.AddHours(1), null, "op1"), "future");
    }

    [Fact]
    public void A_carried_item_is_opened_and_closed_by_its_id()
    {
        var id = Writing.AddCarried(_line.Desk, Item("bypass", ("instead", "flow by hand each 30 min"), ("allowed-by", "eng1")), "op1").Record!.Seq;
        Assert.Equal(id, Assert.Single(_line.Desk.State.Carried).Id);

        Assert.Contains($"open: {id} bypass at slaker", Assert.Single(Writing.CloseCarried(_line.Desk, new CarryClosed(id + 5, "done"), "op1").Mistakes).Accepted, StringComparison.Ordinal);
        Assert.NotNull(Writing.CloseCarried(_line.Desk, new CarryClosed(id, "trip back in service"), "op1").Record);
        Assert.Empty(_line.Desk.State.Carried);
    }

    [Fact]
    public void What_began_earlier_is_opened_as_of_then_neither_ahead_nor_more_than_twelve_hours_back()
    {
        void Refused(Written written, string words) => Assert.Contains(words, Assert.Single(written.Mistakes).ToString(), StringComparison.Ordinal);
        var opened = Writing.AddCarried(_line.Desk, Item("action"), "op1", _line.Desk.Now.AddMinutes(-20)).Record!;

        Assert.Equal(_line.Desk.Now.AddMinutes(-20), opened.At);
        Assert.Equal(_line.Desk.Now, opened.Entered);
        Assert.Equal(opened.At, Assert.Single(_line.Desk.State.Carried).Since);
        Refused(Writing.AddCarried(_line.Desk, Item("action"), "op1", _line.Desk.Now.AddMinutes(5)), "lies in the future");
        Refused(Writing.AddCarried(_line.Desk, Item("action"), "op1", _line.Desk.Now.AddHours(-13)), "was more than 12 hours ago; an earlier begin belongs into the text");
    }

    [Fact]
    public void Another_owner_is_a_person_of_the_site_and_of_a_permit_named_by_who_may_count()
    {
        void Refused(Written written, string words) => Assert.Contains(words, Assert.Single(written.Mistakes).ToString(), StringComparison.Ordinal);
        Written Owner(long id, string owner, string by, bool seen = true) => Writing.ConfirmCarried(_line.Desk, new CarryConfirmed(id, seen, null, new Dictionary<string, string>(StringComparer.Ordinal), null) { Owner = owner }, by);
        var action = Writing.AddCarried(_line.Desk, Item("action") with { Owner = "op1" }, "op1").Record!.Seq;
        var permit = Writing.AddCarried(_line.Desk, Item("permit", ("number", "4417")) with { Owner = "eng1" }, "eng1").Record!.Seq;

        Refused(Owner(action, "op9", "op1"), "'op9' is not a person");
        Refused(Owner(action, "op1", "op1"), "is the owner of item");
        Refused(Owner(action, "eng1", "op1", seen: false), "what was not seen gets no other owner");
        Assert.NotNull(Owner(action, "eng1", "op1").Record);
        Assert.NotNull(Owner(permit, "op1", "eng1").Record);

        Assert.Equal(["eng1", "op1"], _line.Desk.State.Carried.Select(c => c.Owner!), StringComparer.Ordinal);
        Assert.Equal("op1", Assert.Single(_line.Desk.State.Carried[0].OwnersBefore));
    }

    [Fact]
    public void A_carried_item_must_say_what_its_kind_asks_for()
    {
        RefusedWith(Writing.AddCarried(_line.Desk, Item("permitt"), "op1"), "nearest: permit");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("permit"), "op1"), "a permit needs 'number'");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("permit", ("number", "4417")) with { Until = null }, "op1"), "a permit needs its end");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("bypass"), "op1"), "a bypass needs 'instead'");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("bypass", ("instead", "by hand")), "op1"), "it is not said who allowed the bypass");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("permit", ("number", "4417"), ("insde", "2")), "op1"), "a permit takes no 'insde'; --set NAME=VALUE with: number, entry, inside");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("permit", ("number", "4417"), ("inside", "two")), "op1"), "how many are inside begins with a number");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("sample", ("status", "gone")), "op1"), "accepted: taken, at the laboratory, lost");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("action") with { Text = "" }, "op1"), "the text is empty");
        RefusedWith(Writing.AddCarried(_line.Desk, Item("action") with { Owner = "op9" }, "op1"), "'op9' is not a person");
    }

    [Fact]
    public void Only_an_engineer_of_the_site_in_force_adopts_and_only_what_check_passes()
    {
        _line.Save("SL-T1=101");
        Desk Folder(params (string, string)[] words) => Some.Desk(_line.Clock, _line.Journal, Some.Changed(words));

        Assert.Contains("only an engineer", Assert.Single(Some.Adopt(Folder(("early", "early"), ("id = \"hourly\"", "id = \"each-hour\"")), "new id", "op1").Mistakes).Wrong, StringComparison.Ordinal);
        Assert.Contains("those in force", Assert.Single(Some.Adopt(Folder(), "why not", "eng1").Mistakes).Wrong, StringComparison.Ordinal);
        Assert.Contains("'dos'", Assert.Single(Some.Adopt(Folder(("use = \"dose\"", "use = \"dos\"")), "typo", "eng1").Mistakes).Wrong, StringComparison.Ordinal);
        Assert.Contains("site.toml", Assert.Single(Some.Adopt(Folder(("every = \"1h\"", "every = \"often\"")), "typo", "eng1").Mistakes).Where.File, StringComparison.Ordinal);
        Assert.Contains("an id does not change", Assert.Single(Some.Adopt(Folder(("id = \"line-t\"", "id = \"line-2\"")), "why", "eng1").Mistakes).Accepted, StringComparison.Ordinal);
        Assert.Equal(2, _line.Journal.Head.Seq);

        var desk = Folder(("140,30,,slaker", "150,30,,slaker"));
        Assert.NotNull(Some.Adopt(desk, "new motor", "eng1").Record);
        Assert.Equal(150, desk.Site.FindPoint("SL-I")!.Limits.UrgentHigh);
    }

    [Fact]
    public void Adopting_into_an_empty_journal_is_one_record()
    {
        Assert.NotNull(Some.Adopt(_line.Desk, "start", "eng1").Record);

        Assert.Equal("start", Assert.IsType<SiteAdopted>(Assert.Single(_line.Journal.Read()).Body).Why);
    }

    [Fact]
    public void Bad_files_and_an_empty_journal_refuse_every_record_with_the_files_mistakes()
    {
        var desk = Some.Desk(_line.Clock, _line.Journal, Some.Changed(("every = \"1h\"", "every = \"often\"")));

        Assert.Equal("site.toml", Assert.Single(RecordEntry.Run(desk, Some.Entry("SL-T1=101")).Mistakes).Where.File);
        Assert.Equal("site.toml", Assert.Single(Writing.Remark(desk, "x", null, null, "op1").Mistakes).Where.File);
        Assert.Equal(Head.Empty, _line.Journal.Head);
    }

    [Fact]
    public void Two_terminals_write_into_one_chain()
    {
        var other = Some.Desk(_line.Clock, _line.Journal);

        _line.Save("SL-T1=101");
        Assert.NotNull(Writing.Remark(other, "from the other one", null, null, "op1").Record);
        _line.Save("SL-I=100");

        Assert.Equal(["site", "entry", "remark", "entry"], _line.Journal.Read().Select(r => r.Kind), StringComparer.Ordinal);
        other.Follow();
        Assert.Equal(_line.Journal.Head, other.State.Head);
        Assert.Equal(_line.Journal.Head, _line.Desk.State.Head);
    }
}
