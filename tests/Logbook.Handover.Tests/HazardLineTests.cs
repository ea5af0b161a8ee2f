using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover.Tests;

/// <summary>What a hazard's line must say: what the words tell though no field does, what contradicts it, and what stands in for a trip.</summary>
public sealed class HazardLineTests
{
    private static readonly (string, string)[] Bypass = [("instead", "level by hand"), ("allowed-by", "eng1"), ("point", "WT-L"), ("every", "30m")];

    private static HazardLine Only(SmallLine line, string word) => Assert.Single(NowView.Of(line.Desk).Hazards, h => h.Word == word);

    private static string InNote(SmallLine line) => string.Join('\n', HandoverNote.Of(line.Desk, line.Desk.Now).Sections.Single(s => s.Id == "can-hurt").Lines.Select(l => l.Text));

    [Theory]
    [InlineData("acid wash of the cloths", true)]
    [InlineData("cloths washed with HCl", true)]
    [InlineData("sulphamic, 5 %", true)]
    [InlineData("hot water through the cloths", false)]
    [InlineData("placid weather, water only", false)]
    public void A_wash_whose_words_say_acid_can_hurt_as_acid(string words, bool hurts)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("wash", "wl-filter", words);

        Assert.Equal(hurts ? ["acid"] : [], NowView.Of(line.Desk).Hazards.Select(h => h.Word), StringComparer.Ordinal);
    }

    [Fact]
    public void People_inside_under_a_permit_whose_isolation_has_no_lock_recorded_are_said_there()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("isolation", "mud-pump", "rake", null, ("permit", "4421"));
        Assert.DoesNotContain("LOCK RECORDED", Only(line, "locked").Brief, StringComparison.Ordinal);

        var permit = line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(4), ("number", "4421"), ("inside", "2"));

        Assert.Contains($"NO LOCK RECORDED, people inside (#{permit}).", Only(line, "locked").Brief, StringComparison.Ordinal);
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, Look(line.Desk.State.Carried.Single(i => i.ItemKind == "isolation").Id) with { Lock = "on" }, "op1").Record);
        Assert.DoesNotContain("NO LOCK RECORDED", Only(line, "locked").Brief, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "people may be inside (#P); locks still recorded: Operator three", "NO LOCK RECORDED, people may be inside (#P)")]
    [InlineData("2", "people inside (#P); locks still recorded: Operator three", "NO LOCK RECORDED, people inside (#P)")]
    [InlineData("0", null, null)]
    public void A_lock_that_comes_off_says_what_it_leaves_while_people_may_be_inside(string? inside, string? left, string? none)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var lockout = line.Carry("isolation", "mud-pump", "rake", null, ("permit", "4421"));
        Assert.All(["op1", "op3"], code => Assert.NotNull(Writing.ConfirmCarried(line.Desk, Look(lockout) with { Lock = "on" }, code).Record));
        var before = line.Desk.State.Carried.Single();
        var permit = line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(4), [("number", "4421"), .. inside is null ? Array.Empty<(string, string)>() : [("inside", inside)]]);
        string? Said(CarriedItem item, string by, string? step = "off") => LocksOn.OnLockOff(line.Desk.Site, line.Desk.State.Carried, item, Look(lockout) with { Lock = step }, by)?.Replace($"#{permit}", "#P", StringComparison.Ordinal);

        Assert.Equal(left, Said(before, "op1"));
        Assert.Equal(none, Said(before with { Locks = ["op1"] }, "op1"));
        Assert.Null(Said(before, "op1", "on"));
        Assert.Null(Said(before, "op1", null));
    }

    [Fact]
    public void An_entry_of_which_nobody_said_an_attendant_or_a_gas_test_says_so()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(4), ("number", "4421"), ("inside", "2"));
        Assert.Contains(" Not recorded: attendant, gas test.", Only(line, "inside").Brief, StringComparison.Ordinal);

        Assert.NotNull(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["gas-test"] = "H2S 0 ppm, O2 20.9 %, 07:50" }, null), "op1").Record);
        Assert.Contains(" Not recorded: attendant.", Only(line, "inside").Brief, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_took_the_line_over_and_counted_soon_after_is_not_told_to_count_again()
    {
        using var line = new FlowLine("2026-11-24T18:55-05:00").HeldBy("op1");
        var permit = line.Line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("inside", "2"));
        CarryConfirmed counted = new(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "2" }, null);
        bool Again() => Only(line.Line, "inside").Brief.Contains("Count again", StringComparison.Ordinal);
        Assert.True(Again()); // an opening is no count at takeover

        line.Line.Clock("2026-11-24T19:20-05:00");
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, counted, "op2").Record);
        Assert.True(Again()); // another one's count
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, counted, "op1").Record);
        Assert.False(Again());

        line.Line.Clock("2026-11-25T05:00-05:00");
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, counted, "op1").Record);
        Assert.True(Again()); // for whoever comes next
    }

    [Fact]
    public void Each_change_that_was_told_in_the_last_day_stands_and_none_takes_another_back()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(30), ("number", "4421"), ("inside", "2"));
        Assert.NotNull(Writing.ConfirmCarried(line.Clock("2026-11-24T09:00-05:00").Desk, Look(permit) with { Changed = "no attendant since 08:50" }, "op1").Record);
        Assert.NotNull(Writing.ConfirmCarried(line.Clock("2026-11-24T10:00-05:00").Desk, Look(permit) with { Changed = "welder inside" }, "op1").Record);
        Assert.NotNull(Writing.ConfirmCarried(line.Clock("2026-11-24T10:30-05:00").Desk, Look(permit) with { Until = line.Desk.Now.AddHours(40) }, "op1").Record);

        Assert.Contains("; changed 09:00, no attendant since 08:50; 10:00, welder inside.", Only(line, "inside").Brief, StringComparison.Ordinal);
        line.Clock("2026-11-25T11:00-05:00");
        Assert.Contains("; changed 24 Nov 10:00, welder inside.", Only(line, "inside").Brief, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wash_whose_equipment_is_rinsed_by_now_says_so()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("wash", "wl-filter", "acid wash of the cloths");
        line.Clock("2026-11-24T20:30-05:00").State("wl-filter", "acid");
        Assert.DoesNotContain("Recorded as", Only(line, "acid").Text, StringComparison.Ordinal);

        var rinsed = line.Clock("2026-11-24T22:00-05:00").State("wl-filter", "washing", "hot water");

        Assert.Contains($" Recorded as washing since 22:00, hot water (#{rinsed}).", Only(line, "acid").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_written_of_the_wrong_equipment_is_taken_back_by_a_remark_about_it()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.State("wl-filter", "acid");
        var wrong = line.Clock("2026-11-24T21:10-05:00").Remark("hose of the seal water drips", "wl-filter");
        Assert.Contains("hose of the seal water", Only(line, "acid").Text, StringComparison.Ordinal);

        Assert.NotNull(Writing.Remark(line.Desk, "asked the mechanic", null, wrong, "op1").Record);
        Assert.Contains("hose of the seal water", Only(line, "acid").Text, StringComparison.Ordinal);
        Assert.NotNull(Writing.Remark(line.Desk, "Taken back: it was the mud pump's", null, wrong, "op1").Record);

        Assert.DoesNotContain("hose of the seal water", Only(line, "acid").Text, StringComparison.Ordinal);
        Assert.Equal(3, line.Desk.Store.Read().Count(r => r.Body is Remark)); // all of it stays in the log
    }

    [Fact]
    public void People_inside_are_told_that_what_is_locked_for_them_runs()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("isolation", "mud-pump", "rake", null, ("permit", "4421"));
        line.Carry("permit", "slaker", "inspection", line.Desk.Now.AddHours(4), ("number", "4421"), ("inside", "2"));
        Assert.DoesNotContain("YET", Only(line, "inside").Text, StringComparison.Ordinal);

        var runs = line.Clock("2026-11-24T20:30-05:00").State("mud-pump", "running");

        Assert.Contains($"YET Lime mud pump RECORDED AS RUNNING since 20:30 (#{runs})", Only(line, "inside").Text, StringComparison.Ordinal);
        Assert.Contains("go by the attendant and the lock board at once", Only(line, "inside").Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "Owner named: isolation, Lime mud pump")]
    [InlineData(10, "Changed, its end: isolation, Lime mud pump")]
    public void Who_is_named_as_owner_has_looked_at_nothing(int? until, string said)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var locked = line.Carry("isolation", "mud-pump", "rake", line.Desk.Now.AddHours(8));
        line.Clock("2026-11-24T09:00-05:00");
        DateTimeOffset? end = until is { } hours ? line.Desk.Now.AddHours(hours) : null;

        var named = Writing.ConfirmCarried(line.Desk, Look(locked) with { Owner = "op2", Until = end }, "op2").Record!;

        var item = line.Desk.State.Carried.Single();
        Assert.Equal(("op2", null, item.Since, end ?? item.Until), (item.Owner, item.Confirmed, item.LastSeen, item.Until));
        Assert.StartsWith(said, LogLine.Of(line.Desk, named).Words, StringComparison.Ordinal);

        Assert.NotNull(Writing.ConfirmCarried(line.Desk, Look(locked) with { Until = line.Desk.Now.AddHours(2) }, "op2").Record);
        Assert.Equal(line.Desk.Now, line.Desk.State.Carried.Single().LastSeen);
    }

    [Fact]
    public void What_was_written_of_equipment_in_acid_stands_in_its_line_and_nowhere_else()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Remark("cloths looked grey", "wl-filter");
        line.Clock("2026-11-24T20:30-05:00").State("wl-filter", "acid");
        var plugged = line.Clock("2026-11-24T21:10-05:00").Remark("drain plugged, acid to the floor channel", "wl-filter");

        var note = HandoverNote.InHand(line.Desk);
        string Of(string section) => string.Join('\n', note.Sections.Where(s => s.Id == section).SelectMany(s => s.Lines).Select(l => l.Text));
        Assert.Contains($" Written 21:10, Operator one: drain plugged, acid to the floor channel. (#{plugged})", Of("can-hurt"), StringComparison.Ordinal);
        Assert.Contains(" Written 21:10, Operator one: drain plugged", Only(line, "acid").Brief, StringComparison.Ordinal);
        Assert.DoesNotContain("plugged", Of("remarks"), StringComparison.Ordinal);
        Assert.Contains("grey", Of("remarks"), StringComparison.Ordinal);
        Assert.DoesNotContain("grey", Of("can-hurt"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_owner_of_an_isolation_moves_no_lock_and_the_line_goes_on_saying_whose_hangs_there()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var isolation = line.Carry("isolation", "mud-pump", "seal change");
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, Look(isolation) with { Owner = "op1" }, "op1").Record);
        Assert.DoesNotContain("stays until", Only(line, "locked").Text, StringComparison.Ordinal);
        var before = line.Desk.State.Carried.Single();
        var look = Look(isolation) with { Owner = "eng1" };
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, look, "eng1").Record);

        var lockOf = $" lock of {Say.Person(line.Desk.Site, "op1")}, if one is on, stays until it is removed by the site's procedure";
        Assert.Contains("A" + lockOf, Only(line, "locked").Brief, StringComparison.Ordinal);
        Assert.Contains($"owner {Say.Person(line.Desk.Site, "eng1")}", Only(line, "locked").Text, StringComparison.Ordinal);
        Assert.Contains("a" + lockOf, LocksOn.OnNewOwner(line.Desk.Site, before, look), StringComparison.Ordinal);
        Assert.Contains($"owner now {Say.Person(line.Desk.Site, "eng1")}, formerly {Say.Person(line.Desk.Site, "op1")}", LogLine.Of(line.Desk, line.Desk.Store.Read(line.Desk.State.Head.Seq).Single()).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_owners_before_only_those_whose_lock_is_recorded_have_one_that_stays()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var isolation = line.Carry("isolation", "mud-pump", "seal change");
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, Look(isolation) with { Owner = "op1", Lock = "on" }, "op1").Record);
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, Look(isolation) with { Owner = "op2" }, "op1").Record);
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, Look(isolation) with { Owner = "eng1" }, "op1").Record);

        Assert.Contains($"Lock of {Say.Person(line.Desk.Site, "op1")} stays until it is removed by the site's procedure.", Only(line, "locked").Brief, StringComparison.Ordinal);
        Assert.DoesNotContain("ock of Operator two", Only(line, "locked").Brief, StringComparison.Ordinal);
    }

    private static CarryConfirmed Look(long id) => new(id, true, null, new Dictionary<string, string>(StringComparer.Ordinal), null);

    [Fact]
    public void A_wash_that_is_changed_to_acid_hurts_until_it_is_closed()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var wash = line.Carry("wash", "wl-filter", "hot water");
        Changed(line, wash, "acid now, water did not help");
        Changed(line, wash, "second filling");

        Assert.Contains("second filling", Only(line, "acid").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_locked_and_recorded_as_running_says_so_when_either_is_recorded_and_in_the_note()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        Assert.Null(YetRecorded.Warning(line.Desk, "mud-pump"));
        line.Carry("isolation", "mud-pump", "seal change");
        Assert.Null(YetRecorded.Warning(line.Desk, "mud-pump"));

        Assert.Empty(Writing.ChangeState(line.Desk, "mud-pump", "running", null, null, "op1").Mistakes);

        Assert.Contains("YET RECORDED AS RUNNING since 08:00", YetRecorded.Warning(line.Desk, "mud-pump"), StringComparison.Ordinal);
        Assert.Contains("YET RECORDED AS RUNNING", Only(line, "locked").Brief, StringComparison.Ordinal);
        Assert.Contains("YET RECORDED AS RUNNING", InNote(line), StringComparison.Ordinal);
        Writing.ChangeState(line.Desk, "mud-pump", "stopped", null, null, "op1");
        Assert.Null(YetRecorded.Warning(line.Desk, "mud-pump"));
        Assert.DoesNotContain("YET", InNote(line), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("slaker high-temperature trip bridged, false trips by the splash", false)]
    [InlineData("low-flow trip bridged", true)]
    public void A_look_at_one_trip_is_no_look_at_another_that_lies_there(string text, bool same)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.AdoptATrip();
        line.Carry("bypass", "slaker", text, SmallLine.At("2026-11-24T14:00-05:00"), ("instead", "by hand"), ("allowed-by", "eng1"));
        line.Record(null, "SL-TRIP=2");

        Assert.Equal(same, Only(line, "defeated").Text.Contains("Last look", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("low-flow trip of the lime feed bridged", "SL-L1", "defeated")]
    [InlineData("overload trip of the lime feed bridged", "SL-L1", "defeated seen")]
    [InlineData("low-flow trip of the lime feed bridged", "WT-L", "defeated seen")]
    public void A_trip_that_is_bridged_at_what_it_stops_is_one_line_with_what_was_seen_of_it_where_it_lies(string text, string byHand, string words)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.AdoptATrip();
        line.Carry("bypass", "mud-pump", text, SmallLine.At("2026-11-24T14:00-05:00"), ("instead", "feed by hand"), ("allowed-by", "eng1"), ("point", byHand), ("every", "1h"));
        line.Record(null, "SL-TRIP=2");

        var lines = NowView.Of(line.Desk).Hazards;

        Assert.Equal(words, string.Join(' ', lines.Select(h => h.Word)));
        Assert.Equal(lines.Count == 1, lines[0].Text.Contains("Last look: defeated", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("acid")]
    [InlineData("washing")]
    [InlineData("draining")]
    [InlineData("running")]
    [InlineData("starting")]
    public void People_inside_contradict_whatever_moves_washes_or_drains_the_equipment(string state)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2"));
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));
        var said = $"RECORDED AS {state.ToUpperInvariant()} since 08:00";

        Assert.Contains($"2 counted inside (#2). YET ABOUT TO BE {said}, told by Operator one, the count by Operator one: one of the two is not true; go by the attendant", Before(line, state), StringComparison.Ordinal);
        var told = line.State("wl-filter", state);

        Assert.Contains($"2 counted inside (#2). YET {said} (#{told}), told by Operator one, the count by Operator one: one of the two is not true", YetRecorded.Warning(line.Desk, "wl-filter"), StringComparison.Ordinal);
        Assert.Contains("YET " + said, Only(line, "inside").Text, StringComparison.Ordinal);
        Assert.Contains("YET " + said, Only(line, "inside").Brief, StringComparison.Ordinal);
        Assert.Contains("YET " + said, InNote(line), StringComparison.Ordinal);
        line.State("wl-filter", "stopped");
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));
    }

    [Fact]
    public void A_permit_with_people_at_what_is_in_acid_is_contradicted_until_none_is_inside()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.State("wl-filter", "acid");
        var item = new Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), null, new Dictionary<string, string>(StringComparer.Ordinal) { ["number"] = "4417", ["inside"] = "2" });

        Assert.Contains("has a permit to enter, 2 counted inside. YET RECORDED AS ACID since 08:00 (#2)", YetRecorded.Before(line.Desk.Site, line.Desk.State.Equipment, line.Desk.State.Carried, item, "op1", line.Desk.Now), StringComparison.Ordinal);
        var permit = line.Carry("permit", "wl-filter", "cloths changed", item.Until, ("number", "4417"), ("inside", "2"));
        Assert.Contains("YET RECORDED AS ACID since 08:00 (#2)", YetRecorded.Warning(line.Desk, "wl-filter"), StringComparison.Ordinal);
        Told(line, permit, "0");
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));
        Told(line, permit, "1");
        Assert.Contains("1 counted inside", YetRecorded.Warning(line.Desk, "wl-filter"), StringComparison.Ordinal);
    }

    [Fact]
    public void People_inside_contradict_an_open_acid_wash()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2"));

        line.Carry("wash", "wl-filter", "hot water through the cloths");
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));
        var wash = line.Carry("wash", "wl-filter", "acid wash of the cloths");

        Assert.Contains($"YET RECORDED AS IN AN ACID WASH since 08:00 (#{wash})", YetRecorded.Warning(line.Desk, "wl-filter"), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_is_inside_an_area_may_be_inside_any_equipment_of_it()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("permit", "white-liquor-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2"));
        line.State("mud-pump", "running");
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));

        line.State("wl-filter", "acid");

        Assert.Contains("2 counted inside (#2). YET White liquor filter RECORDED AS ACID since 08:00", YetRecorded.Warning(line.Desk, "wl-filter"), StringComparison.Ordinal);
        Assert.Contains("YET White liquor filter RECORDED AS ACID", Only(line, "inside").Text, StringComparison.Ordinal);
        Assert.Null(YetRecorded.Warning(line.Desk, "mud-pump"));
    }

    [Theory]
    [InlineData("acid")]
    [InlineData("washing")]
    [InlineData("draining")]
    [InlineData("starting")]
    public void A_permit_of_which_nobody_counted_counts_as_people_inside(string state)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"));
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));
        var said = $"RECORDED AS {state.ToUpperInvariant()} since 08:00";
        var go = "treat people as inside until the attendant has counted none";

        Assert.Contains($"has an open permit, NOBODY COUNTED: people may be inside (#2). YET ABOUT TO BE {said}, told by Operator one, the permit by Operator one: {go}", Before(line, state), StringComparison.Ordinal);
        line.State("wl-filter", state);

        Assert.Contains($"people may be inside (#2). YET {said}", YetRecorded.Warning(line.Desk, "wl-filter"), StringComparison.Ordinal);
        Assert.Contains("YET " + said, Only(line, "permit").Text, StringComparison.Ordinal);
        Assert.Contains("YET " + said, Only(line, "permit").Brief, StringComparison.Ordinal);
        Assert.Contains(go, InNote(line), StringComparison.Ordinal);
        Assert.Contains("nobody was counted, so people may have been inside", Assert.Single(Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), ["contradicted"])).Text, StringComparison.Ordinal);
        Told(line, permit, "0");
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));
        Assert.DoesNotContain("YET", InNote(line), StringComparison.Ordinal);
    }

    [Fact]
    public void A_permit_that_lets_nobody_in_contradicts_nothing_that_runs_until_somebody_is_counted_inside()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "mud-pump", "welding at the base frame", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("entry", "no"));
        line.State("mud-pump", "running");

        Assert.Null(YetRecorded.Warning(line.Desk, "mud-pump"));
        Assert.EndsWith("welding at the base frame; until 18:00; number 4417. By its words nobody goes in.", Only(line, "permit").Brief, StringComparison.Ordinal);
        var locked = line.Carry("isolation", "mud-pump", "breaker off", null, ("permit", "4417"));
        Assert.Contains("close the permit first, when its work is done and everybody is clear", SignedWriting.LocksForPeople(line.Desk.Site, line.Desk.State.Carried, line.Desk.State.Carried.Single(i => i.Id == locked)), StringComparison.Ordinal);
        Told(line, permit, "1");
        Assert.Contains("1 counted inside", YetRecorded.Warning(line.Desk, "mud-pump"), StringComparison.Ordinal);
        Assert.Contains("Counted 1 at 08:00", Only(line, "inside").Brief, StringComparison.Ordinal);
    }

    [Fact]
    public void A_permit_with_none_counted_inside_is_a_permit_and_no_person_in_it()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "0"));

        Assert.EndsWith("Counted 0 at 08:00. Ask the attendant before you go by it.", Only(line, "permit").Brief, StringComparison.Ordinal);
        Assert.Equal(["permit spans the change"], HandoverNote.Of(line.Desk, line.Desk.Now).TakeLonger, StringComparer.Ordinal);
        Assert.EndsWith("Counted 0 at 08:00. That is over an hour ago: somebody may have gone in since. Ask the attendant before you go by it.", Only(line.Clock("2026-11-24T09:01-05:00"), "permit").Brief, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_of_acid_names_who_is_or_may_be_inside_in_its_area_and_whose_lock_is_on_it()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.State("wl-filter", "acid");
        Assert.DoesNotContain("INSIDE", Only(line, "acid").Text, StringComparison.Ordinal);
        line.Carry("permit", "mud-pump", "another area", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4400"));
        var inside = line.Carry("permit", "white-liquor-filter", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2"));
        var open = line.Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4418"));
        var locked = line.Carry("isolation", "wl-filter", "cloths changed");

        var acid = Only(line, "acid");

        foreach (var text in new[] { acid.Text, acid.Brief, InNote(line) })
        {
            Assert.Contains($"2 counted inside (#{inside})", text, StringComparison.Ordinal);
            Assert.Contains($"PEOPLE MAY BE INSIDE: White liquor filter has an open permit, NOBODY COUNTED: people may be inside (#{open}).", text, StringComparison.Ordinal);
            Assert.Contains($"LOCKED: White liquor filter is locked, DO NOT START (#{locked}).", text, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("Lime mud pump", acid.Text, StringComparison.Ordinal);
        Told(line, open, "0");
        Assert.DoesNotContain("MAY BE INSIDE", Only(line, "acid").Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("isolation", "permit", "9001")]
    [InlineData("isolation", "permit", "")]
    [InlineData("permit", "number", "9001")]
    public void A_lockout_and_the_permit_that_stands_on_it_are_not_parted(string which, string field, string value)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var locked = line.Carry("isolation", "mud-pump", "locked for entry", null, ("permit", "4417"));
        var permit = line.Carry("permit", "lime-mud-tank", "inspection", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"));
        Written Set(string name, string to) => Writing.ConfirmCarried(line.Desk, new CarryConfirmed(which == "permit" ? permit : locked, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { [name] = to }, null), "op1");

        Assert.StartsWith($"permit 4417 (item {permit}) stands on isolation {locked}, and both are open", Assert.Single(Set(field, value).Mistakes).Wrong, StringComparison.Ordinal);
        Assert.Empty(Set(field, "4417").Mistakes);
        Assert.NotNull(SignedWriting.LocksForPeople(line.Desk.Site, line.Desk.State.Carried, line.Desk.State.Carried.Find(i => i.Id == locked)!));
    }

    [Fact]
    public void What_was_done_about_gas_stands_beside_its_line()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var read = line.Record(null, "ST-H2S=6.0");
        var answer = Writing.Answer(line.Desk, $"{read}.1", "area cleared, gas watch told", "op1").Record!.Seq;

        Assert.EndsWith($"Answered, Operator one: area cleared, gas watch told. (#{answer})", Only(line, "gas").Text, StringComparison.Ordinal);
        Assert.Contains("area cleared, gas watch told", InNote(line), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("op1")]
    [InlineData("OP1")]
    [InlineData("Operator one")]
    public void Who_defeats_a_trip_does_not_allow_it(string allowedBy)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var until = SmallLine.At("2026-11-24T14:00-05:00");
        Carry Trip(string by) => new("bypass", "slaker", "level trip bridged", until, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["instead"] = "level by hand", ["allowed-by"] = by });

        Assert.Equal("Operator one cannot allow the own bypass", Assert.Single(Writing.AddCarried(line.Desk, Trip(allowedBy), "op1").Mistakes).Wrong);
        var id = Writing.AddCarried(line.Desk, Trip("eng1"), "op1").Record!.Seq;
        Assert.Single(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(id, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["allowed-by"] = allowedBy }, null), "op2").Mistakes);
    }

    [Theory]
    [InlineData("op2", "Operator two cannot allow a bypass: an engineer or a supervisor does")]
    [InlineData("the boss", "'the boss', who is said to have allowed the bypass, is no person of this site")]
    public void Who_cannot_sign_for_a_bypass_is_not_named_as_having_allowed_it(string allowedBy, string wrong)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");

        var mistake = Assert.Single(Writing.AddCarried(line.Desk, new Carry("bypass", "slaker", "level trip bridged", SmallLine.At("2026-11-24T14:00-05:00"), null,
            new Dictionary<string, string>(StringComparer.Ordinal) { ["instead"] = "level by hand", ["allowed-by"] = allowedBy }), "op1").Mistakes);

        Assert.Equal(wrong, mistake.Wrong);
        Assert.Contains("eng1", mistake.Accepted, StringComparison.Ordinal);
        Assert.Contains("sup1", mistake.Accepted, StringComparison.Ordinal);
        Assert.DoesNotContain("op", mistake.Accepted!.Split("one of: ")[1], StringComparison.Ordinal);
    }

    [Fact]
    public void People_are_counted_out_by_who_can_know_it_and_the_audit_says_who_counted_last()
    {
        using var flow = new FlowLine("2026-11-24T08:00-05:00");
        var line = flow.Line;
        var permit = line.Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2"));
        Written Count(string inside, string by) => Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = inside }, null), by);
        var due = OnShift.DueBy(line.Desk.Site, Calendar.ShiftAt(line.Desk.Site, line.Desk.Now), line.Desk.State.Roster);
        var stranger = new[] { "op2", "op3" }.First(code => !due.Contains(code, StringComparer.Ordinal));

        var refused = Assert.Single(Count("0", stranger).Mistakes);
        Assert.Contains($"people are not counted out of permit 4417 (item {permit}) by {stranger}", refused.Wrong, StringComparison.Ordinal);
        Assert.Contains("op1", refused.Accepted, StringComparison.Ordinal);
        Assert.Equal("2", line.Desk.State.Carried.Single().Fields["inside"]);

        // Who tells of more is believed at once, and has counted nobody out by it.
        Assert.Empty(Count("3", stranger).Mistakes);
        Assert.Contains("are not counted out", Assert.Single(Count("0", stranger).Mistakes).Wrong, StringComparison.Ordinal);

        var colleague = due.First(code => code != "op1");
        Assert.Contains("the PIN", Assert.Single(Count("0", colleague).Mistakes).Accepted, StringComparison.Ordinal);
        var none = SignedWriting.Confirm(line.Desk, flow.Sign(), new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "0" }, null), colleague);

        Assert.Contains(Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), Audit.Hazard), f =>
            f.Text.Contains($"last counted 0 Tue 24 Nov 08:00 {Say.Person(line.Desk.Site, colleague)}, who is not its owner; by PIN (#{none.Record!.Seq})", StringComparison.Ordinal));
    }

    [Fact]
    public void A_permit_of_which_nobody_counted_is_not_said_to_be_empty_by_somebody_from_elsewhere()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "wl-filter", "cloths changed", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"));
        Written Told(string field, string value, string by) => Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { [field] = value }, null), by);

        Assert.Single(Told("inside", "0", "sup1").Mistakes);
        Assert.Single(Told("entry", "no", "sup1").Mistakes);
        Assert.Empty(Told("inside", "1", "sup1").Mistakes);
        Assert.Contains("the PIN", Assert.Single(Told("inside", "0", "op1").Mistakes).Accepted, StringComparison.Ordinal);
    }

    private static string? Before(SmallLine line, string state) =>
        YetRecorded.Before(line.Desk.Site, line.Desk.State.Equipment, line.Desk.State.Carried, new EquipmentStatus("wl-filter", state, line.Desk.Now, null, 0, "op1"), line.Desk.Now);

    private static void Told(SmallLine line, long permit, string inside) =>
        Assert.Empty(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = inside }, null), "op1").Mistakes);

    [Theory]
    [InlineData("WT-L=50.0", "50.0 % (#")]
    [InlineData("WT-L=20.0", "20.0 %, below its watch limit 30.0 % (#")]
    [InlineData("WT-L=10.0", "10.0 %, BELOW its urgent limit 15.0 % (#")]
    [InlineData("WT-L=95.0", "95.0 %, ABOVE its urgent limit 94.0 % (#")]
    public void What_is_read_instead_of_a_trip_says_how_it_lies_to_its_limits(string reading, string said)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("bypass", "slaker", "level trip bridged", SmallLine.At("2026-11-24T14:00-05:00"), Bypass);
        line.Clock("2026-11-24T08:31-05:00").Record(null, reading);

        Assert.Contains(said, Only(line, "defeated").Text, StringComparison.Ordinal);
        Assert.Contains(said, Only(line, "defeated").Brief, StringComparison.Ordinal);
    }

    [Fact]
    public void A_defeated_trip_says_that_its_check_was_typed_only_later()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("bypass", "slaker", "level trip bridged", SmallLine.At("2026-11-24T14:00-05:00"), Bypass);
        var late = line.Clock("2026-11-24T09:50-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("WT-L=50.0")]) { At = SmallLine.At("2026-11-24T08:31-05:00") });

        var said = $"This check was MISSED at 08:30 (said later: read 08:31, typed 09:50 (#{late})), 09:00, 09:30.";
        Assert.Contains(said, Only(line, "defeated").Brief, StringComparison.Ordinal);
        Assert.Contains(said, InNote(line), StringComparison.Ordinal);
    }

    [Fact]
    public void A_defeated_trip_says_who_allowed_it_and_when_its_check_was_missed()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("bypass", "slaker", "level trip bridged", SmallLine.At("2026-11-24T14:00-05:00"), Bypass);
        line.Clock("2026-11-24T08:31-05:00").Record(null, "WT-L=50.0");
        line.Clock("2026-11-24T09:50-05:00");

        const string Said = "Allowed, it is said, by Engineer one: not yet signed by them.";
        Assert.Contains(Said, Only(line, "defeated").Text, StringComparison.Ordinal);
        Assert.Contains(Said, Only(line, "defeated").Brief, StringComparison.Ordinal);
        using var flow = new FlowLine(line);
        Assert.NotNull(Countersigning.Countersign(line.Desk, flow.Sign(), "eng1", null, "allowed until 14:00").Record);
        Assert.Contains(" Allowed by Engineer one.", Only(line, "defeated").Text, StringComparison.Ordinal);
        Assert.Contains("This check was MISSED at 09:00, 09:30.", Only(line, "defeated").Brief, StringComparison.Ordinal);
        Assert.Contains("This check was MISSED at 09:00, 09:30.", InNote(line), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_eyewashes_that_are_out_do_not_send_people_to_each_other()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("safety-equipment", "slaker", "eyewash frozen", null, ("instead", "the one at the filter"));
        line.Carry("safety-equipment", "wl-filter", "eyewash has no flow", null, ("instead", "the one at the slaker"));

        Assert.Equal(
            ["ALSO OUT: White liquor filter; nobody is sent there instead.", "ALSO OUT: Slaker; nobody is sent there instead."],
            NowView.Of(line.Desk).Hazards.Where(h => h.Word == "out").Select(h => h.Brief[h.Brief.IndexOf("ALSO", StringComparison.Ordinal)..]), StringComparer.Ordinal);
    }

    [Fact]
    public void A_permit_that_was_closed_says_on_whose_count()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "1"));
        var count = new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "0" }, null);
        Assert.Empty(Writing.ConfirmCarried(line.Clock("2026-11-24T09:00-05:00").Desk, count, "op1").Mistakes);
        line.Clock("2026-11-24T09:05-05:00").Close(permit, "all out");

        Assert.Contains("permit, lime mud tank: all out; last counted 0 09:00 Operator one (#", InNote(line), StringComparison.Ordinal);
    }

    [Fact]
    public void Safety_equipment_that_is_out_is_named_and_not_only_its_place()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("safety-equipment", "slaker", "gas monitor shows a fault, sent for repair");

        Assert.Equal("Slaker, gas monitor shows a fault", Only(line, "out").Name);
        Assert.Contains("safety equipment out: Slaker, gas monitor shows a fault", HandoverNote.Of(line.Desk, line.Desk.Now).TakeLonger, StringComparer.Ordinal);
    }

    [Fact]
    public void A_permit_with_people_counted_inside_is_not_closed_and_no_pin_is_asked()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2 by the attendant"));
        var sign = new SignWith(new Pins(new PinsInMemory(), rounds: 1), _ => throw new InvalidOperationException("nothing is to be signed"));

        var refused = SignedWriting.Close(line.Desk, sign, new CarryClosed(permit, "work done"), "op1");

        Assert.Null(refused.Record);
        Assert.Contains("2 by the attendant counted inside; it is closed when everybody is out", refused.Refused, StringComparison.Ordinal);
        Assert.Empty(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "0" }, null), "op1").Mistakes);
        Assert.NotNull(line.Desk.State.Carried.Find(c => c.Id == permit));
        Assert.DoesNotContain("counted inside", SignedWriting.Close(line.Desk, sign with { Ask = _ => null }, new CarryClosed(permit, "work done"), "op1").Refused, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("permit", "4417", null)]
    [InlineData("card", "118", "118")]
    public void The_lockout_that_people_inside_stand_on_is_not_closed_and_what_is_closed_under_a_permit_is_said(string field, string value, string? named)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var pins = new Pins(new PinsInMemory(), rounds: 1);
        pins.Set("op1", "274951");
        var sign = new SignWith(pins, _ => "274951");
        var other = line.Carry("isolation", "wl-filter", "cloths", null, ("permit", "9001"));
        var locked = line.Carry("isolation", "mud-pump", "locked for entry into the mud tank", null, (field, value));
        (string, string)[] told = [("number", "4417"), ("inside", "2"), .. named is null ? [] : new[] { ("isolation", named) }];
        var permit = line.Carry("permit", "lime-mud-tank", "inspection", SmallLine.At("2026-11-24T18:00-05:00"), told);

        var refused = SignedWriting.Close(line.Desk, sign, new CarryClosed(locked, "done"), "op1");

        Assert.Null(refused.Record);
        Assert.StartsWith($"2 counted inside under permit 4417, lime mud tank (#{permit}): isolation {locked}, Lime mud pump, is closed when everybody is out;", refused.Refused, StringComparison.Ordinal);
        Assert.NotNull(SignedWriting.Close(line.Desk, sign, new CarryClosed(other, "done"), "op1").Record);
        Assert.DoesNotContain("NO LOCKOUT", Only(line, "inside").Text, StringComparison.Ordinal);
        Told(line, permit, "0");
        Assert.StartsWith($"permit 4417, lime mud tank (#{permit}), is STILL OPEN and stands on this lockout", SignedWriting.PermitStands(line.Desk.Site, line.Desk.State.Carried, line.Desk.State.Carried.Find(i => i.Id == locked)!), StringComparison.Ordinal);
        var closed = SignedWriting.Close(line.Desk, sign, new CarryClosed(locked, "done"), "op1").Record!.Seq;
        Told(line, permit, "1");
        Assert.Contains($"NO LOCKOUT STANDS FOR IT ANY MORE: it was closed (#{closed}).", Only(line, "inside").Text, StringComparison.Ordinal);
        Assert.Contains("NO LOCKOUT STANDS FOR IT ANY MORE", InNote(line), StringComparison.Ordinal);
        line.Carry("isolation", "mud-pump", "locked again", null, ("permit", "4417"));
        Assert.DoesNotContain("NO LOCKOUT", InNote(line), StringComparison.Ordinal);
    }

    private static void Changed(SmallLine line, long id, string words) =>
        Assert.Empty(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(id, true, words, new Dictionary<string, string>(StringComparer.Ordinal), null), "op1").Mistakes);
}
