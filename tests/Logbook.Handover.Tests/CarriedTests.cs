using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>Items that outlive the shift: confirmed, not seen, with effects on the rounds.</summary>
public sealed class CarriedTests
{
    private static string Hazards(SmallLine line) => string.Join('\n', NowView.Of(line.Desk).Hazards.Select(h => h.Text));

    private static Written Confirm(SmallLine line, long id, string by = "op1", string? changed = null, bool seen = true, string? step = null, params (string, string)[] fields) =>
        Writing.ConfirmCarried(line.Desk, new CarryConfirmed(id, seen, changed, fields.ToDictionary(f => f.Item1, f => f.Item2, StringComparer.Ordinal), step), by);

    [Fact]
    public void A_hazard_that_nobody_has_seen_in_the_running_shift_prints_not_seen()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var lockOut = line.Carry("isolation", "mud-pump", "seal change");

        Assert.DoesNotContain("Not seen", Hazards(line), StringComparison.Ordinal);
        line.Clock("2026-11-24T19:10-05:00");
        Assert.Contains("Not seen", Hazards(line), StringComparison.Ordinal);
        Assert.Empty(Confirm(line, lockOut).Mistakes);
        Assert.Contains("Seen 19:10 Operator one", Hazards(line), StringComparison.Ordinal);
        line.Clock("2026-11-25T07:01-05:00");
        Assert.Contains("Looked at 19:10 Operator one, not since the shift change.", Hazards(line), StringComparison.Ordinal);
        line.Clock("2026-11-25T19:01-05:00");
        Assert.Contains("Looked at 24 Nov 19:10 Operator one, not for 2 shifts.", Hazards(line), StringComparison.Ordinal);
    }

    [Fact]
    public void An_item_that_was_looked_for_in_vain_prints_not_seen_at_once()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var hose = line.Carry("temporary-change", "mud-pump", "hose at the pump", SmallLine.At("2026-12-24T08:00-05:00"));

        Confirm(line, hose, seen: false);

        Assert.Contains(Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), "not-seen"), f => f.Seq == hose);
    }

    [Fact]
    public void A_count_of_people_inside_is_as_old_as_its_last_report()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var permit = line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2"));
        line.Clock("2026-11-24T09:30-05:00");
        Assert.Contains("count unknown, treat as inside", Hazards(line), StringComparison.Ordinal);

        Confirm(line, permit, fields: ("inside", "1"));

        Assert.Contains("Counted 1 at 09:30", Hazards(line), StringComparison.Ordinal);
        Assert.DoesNotContain("count unknown", Hazards(line), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_tells_of_more_people_does_not_count_them_out()
    {
        using var flow = new FlowLine("2026-11-24T08:00-05:00");
        var line = flow.Line;
        var permit = line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "2"));
        line.Clock("2026-11-24T08:20-05:00");
        Assert.Empty(Confirm(line, permit, by: "op2", fields: ("inside", "5")).Mistakes);
        Assert.Contains("Counted 5 at 08:20, told by Operator two; Operator one counted 2 at 08:00.", Hazards(line), StringComparison.Ordinal);

        // op2 is not due, holds nothing and owns nothing: neither with a PIN nor without one.
        Assert.Contains("are not counted out", Assert.Single(Counted(flow, permit, "op2", "0").Mistakes).Wrong, StringComparison.Ordinal);

        // The opener's count was told over: to go below the 5 is signed, and then it is the opener's again.
        Assert.Contains("counted out by another", Assert.Single(Confirm(line, permit, fields: ("inside", "1")).Mistakes).Wrong, StringComparison.Ordinal);
        Assert.Equal(("pin", Signing.CountedOut), Assert.IsType<CarryConfirmed>(Counted(flow, permit, "op1", "1").Record!.Body).Signed is { } signed ? (signed.How, signed.Means) : default);
        Assert.Empty(Confirm(line, permit, fields: ("inside", "0")).Mistakes);
        Assert.Contains("Counted 0 at 08:20, told by Operator one.", Hazards(line), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_is_due_counts_people_out_by_PIN_and_then_goes_on_counting()
    {
        using var flow = new FlowLine("2026-11-24T08:00-05:00");
        var permit = flow.Line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "3"));
        flow.HeldBy("op2");

        Assert.Contains("PIN", Counted(flow, permit, "op2", "2", pin: null).Refused, StringComparison.Ordinal);
        Assert.Contains("Counted 3", Hazards(flow.Line), StringComparison.Ordinal);
        var signed = Counted(flow, permit, "op2", "2").Record!;
        Assert.EndsWith("inside 2; by PIN", LogLine.Of(flow.Desk, signed).Words, StringComparison.Ordinal);
        Assert.Null(Assert.IsType<CarryConfirmed>(Counted(flow, permit, "op2", "0").Record!.Body).Signed);
    }

    private static Handed Counted(FlowLine flow, long permit, string by, string inside, string? pin = FlowLine.Pin) =>
        SignedWriting.Confirm(flow.Desk, flow.Sign(pin), new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = inside }, null), by);

    [Fact]
    public void The_incoming_lock_goes_on_before_the_outgoing_one_comes_off()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var item = line.Carry("isolation", "mud-pump", "seal change");

        Assert.Empty(Confirm(line, item, "op1", step: "on").Mistakes);
        Assert.Contains("goes on first", Assert.Single(Confirm(line, item, "op1", step: "off").Mistakes).Accepted, StringComparison.Ordinal);
        Assert.Empty(Confirm(line, item, "eng1", step: "on").Mistakes);
        Assert.Contains("locks recorded", Assert.Single(Writing.CloseCarried(line.Desk, new CarryClosed(item, "done"), "eng1").Mistakes).Accepted, StringComparison.Ordinal);
        Assert.Empty(Confirm(line, item, "op1", step: "off").Mistakes);
        Assert.Contains("Locks recorded: Engineer one", Hazards(line), StringComparison.Ordinal);
        Assert.Contains("the own lock of eng1 is recorded as on", Assert.Single(Writing.CloseCarried(line.Desk, new CarryClosed(item, "done"), "eng1").Mistakes).Wrong, StringComparison.Ordinal);
        Assert.Contains("'on' is no step", Assert.Single(Writing.CloseCarried(line.Desk, new CarryClosed(item, "done") { Lock = "on" }, "eng1").Mistakes).Wrong, StringComparison.Ordinal);

        var closed = Writing.CloseCarried(line.Desk, new CarryClosed(item, "done") { Lock = "off" }, "eng1").Record!;
        Assert.Contains(", own lock off: done", LogLine.Of(line.Desk, closed).Words, StringComparison.Ordinal);
        Assert.Contains("Engineer one: done; own lock off (#", HazardFlag(line), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lock_that_nobody_hung_is_not_said_to_come_off()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var item = line.Carry("isolation", "mud-pump", "seal change");

        Assert.Contains("no lock of op1 is recorded", Assert.Single(Writing.CloseCarried(line.Desk, new CarryClosed(item, "done") { Lock = "off" }, "op1").Mistakes).Wrong, StringComparison.Ordinal);
        Assert.Empty(Writing.CloseCarried(line.Desk, new CarryClosed(item, "done"), "op1").Mistakes);
        Assert.DoesNotContain("lock", HazardFlag(line).Replace("locks", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void An_isolation_that_was_closed_with_a_lock_recorded_as_on_says_so_in_the_audit()
    {
        // Written as records that an older program could write.
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var item = line.Carry("isolation", "mud-pump", "seal change");
        Assert.Empty(Confirm(line, item, "op1", step: "on").Mistakes);
        line.Desk.Write(new CarryClosed(item, "done"), line.Desk.Now, "op1");

        Assert.Contains("done; LOCK STILL RECORDED AS ON: Operator one (#", HazardFlag(line), StringComparison.Ordinal);
    }

    private static string HazardFlag(SmallLine line) => Assert.Single(Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), Audit.Hazard)).Text;

    [Fact]
    public void An_end_that_is_over_already_opens_nothing()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var hose = new Carry("temporary-change", "mud-pump", "hose", SmallLine.At("2026-11-24T19:58-05:00"), null, new Dictionary<string, string>(StringComparer.Ordinal));

        var written = Writing.AddCarried(line.Desk, hose, "op1");

        Assert.Null(written.Record);
        Assert.Contains("is over already", Assert.Single(written.Mistakes).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bypass_puts_its_compensating_check_on_the_due_list_until_it_is_closed()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var bypass = line.Carry(
            "bypass", "slaker", "low-flow trip bridged", SmallLine.At("2026-11-24T14:00-05:00"), ("instead", "level by hand"), ("allowed-by", "eng1"), ("point", "WT-L"), ("every", "30m"));
        line.Clock("2026-11-24T08:31-05:00").Record(null, "WT-L=50.0");
        line.Clock("2026-11-24T09:50-05:00").Close(bypass, "trip back in service");

        var checks = line.Due("2026-11-24T08:00-05:00", "2026-11-24T12:00-05:00").Where(c => InsteadOfTrips.Is(c.Round)).ToList();

        Assert.Equal(["08:30", "09:00", "09:30"], checks.Select(c => c.DueAt.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)), StringComparer.Ordinal);
        Assert.Equal([CheckState.Done, CheckState.Missed, CheckState.Missed], checks.Select(c => c.State));
    }

    [Fact]
    public void Read_each_hour_at_another_minute_no_check_instead_of_a_trip_is_missed()
    {
        using var line = new SmallLine("2026-11-24T08:38-05:00");
        line.Carry("bypass", "slaker", "low-flow trip bridged", SmallLine.At("2026-11-24T18:00-05:00"), ("instead", "level by hand"), ("allowed-by", "eng1"), ("point", "WT-L"), ("every", "1h"));
        foreach (var hour in (string[])["10", "11", "12", "13"])
        {
            line.Clock($"2026-11-24T{hour}:06-05:00");
            Assert.Equal(CheckState.Due, Assert.Single(NowView.Of(line.Desk).Instead).State);
            line.Clock($"2026-11-24T{hour}:07-05:00").Record(null, "WT-L=50.0");
        }

        var checks = line.Due("2026-11-24T08:38-05:00", "2026-11-24T13:00-05:00").Where(c => InsteadOfTrips.Is(c.Round)).ToList();

        Assert.Equal(["09:38", "10:38", "11:38", "12:38"], checks.Select(c => c.DueAt.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)), StringComparer.Ordinal);
        Assert.All(checks, c => Assert.Equal(CheckState.Done, c.State));
    }

    [Fact]
    public void What_is_read_instead_of_a_trip_stays_due_in_an_upset()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("bypass", "slaker", "low-flow trip bridged", SmallLine.At("2026-11-24T14:00-05:00"), ("instead", "level by hand"), ("allowed-by", "eng1"), ("point", "WT-L"), ("every", "30m"));
        Writing.BeginUpset(line.Desk, null, "slaker boiling over", "op1");
        line.Clock("2026-11-24T10:00-05:00");

        var checks = line.Due("2026-11-24T08:00-05:00", "2026-11-24T09:30-05:00");

        Assert.All(checks.Where(c => InsteadOfTrips.Is(c.Round)), c => Assert.Equal(CheckState.Missed, c.State));
        Assert.Contains(checks, c => InsteadOfTrips.Is(c.Round));
        Assert.All(checks.Where(c => c.Round == "hourly" && c.Point == "WT-L"), c => Assert.True(c.Upset));
    }

    [Theory]
    [InlineData("point", "NO-SUCH", "point 'NO-SUCH'")]
    [InlineData("point", "WT-L", "belong together")]
    [InlineData("every", "2m", "belong together")]
    public void A_compensating_check_that_cannot_be_made_is_refused(string field, string value, string wrong)
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var fields = new Dictionary<string, string>(StringComparer.Ordinal) { ["instead"] = "by hand", ["allowed-by"] = "eng1", [field] = value };

        var written = Writing.AddCarried(line.Desk, new Carry("bypass", "slaker", "bridged", line.Desk.Now.AddHours(2), null, fields), "op1");

        Assert.Null(written.Record);
        Assert.Contains(written.Mistakes, m => m.ToString().Contains(wrong, StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_unsafe_to_reach_is_an_action_without_another_key()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var site = line.Desk.Site;
        Assert.DoesNotContain("unsafe to reach", site.Reasons.NotTaken, StringComparer.Ordinal);

        var entry = new Entry { Readings = [new Reading { Point = "SL-L1", Unit = "t/h", At = line.Desk.Now, Why = "unsafe to reach: ice on the stair" }] };
        var record = line.Desk.Write(entry, line.Desk.Now, "op1");

        var action = Assert.Single(line.Desk.State.Carried);
        Assert.Equal((record.Seq, "action", "slaker"), (action.Id, action.ItemKind, action.On));
        Assert.Equal("unsafe to reach (ice on the stair), make it safe to read: SL-L1", action.Text);

        // The next round says the same: one action, until it is closed; another point is another one.
        Unsafe("SL-L1");
        Assert.Equal(action, Assert.Single(line.Desk.State.Carried));
        Unsafe("SL-L1", "WT-L");
        Assert.Equal(["SL-L1", "WT-L"], line.Desk.State.Carried.Select(c => c.Text.Split(": ")[^1]), StringComparer.Ordinal);
        Assert.Contains("unsafe to reach, make it safe to read: WT-L", string.Join(' ', HandoverNote.Of(line.Desk, line.Desk.Now).Sections.Single(s => s.Id == "still-open").Lines.Select(l => l.Text)), StringComparison.Ordinal);

        foreach (var open in line.Desk.State.Carried)
        {
            line.Close(open.Id, "stair cleared");
        }

        Assert.Empty(line.Desk.State.Carried);
        Unsafe("SL-L1");
        Assert.Single(line.Desk.State.Carried);

        void Unsafe(params string[] tags) => line.Desk.Write(
            new Entry { Readings = [.. tags.Select(tag => new Reading { Point = tag, Unit = site.FindPoint(tag)!.Unit.Name, At = line.Desk.Now, Why = "unsafe to reach" })] }, line.Desk.Now, "op1");
    }

    [Fact]
    public void An_item_survives_a_hundred_shifts_and_keeps_its_words()
    {
        using var line = new SmallLine("2026-01-05T08:00-05:00");
        var id = line.Carry("action", "classifier", "tighten the guard bolt");
        for (var shift = 0; shift < 100; shift++)
        {
            line.Clock(SmallLine.At("2026-01-05T20:00-05:00").AddHours(12 * shift)).Record("hourly", "SL-T1=101.0");
        }

        var words = string.Join('\n', HandoverNote.Of(line.Desk, line.Desk.Now).Sections.SelectMany(s => s.Lines).Select(l => l.Text));

        Assert.Contains("tighten the guard bolt. Not seen.", words, StringComparison.Ordinal);
        Assert.Contains($"(#{id})", words, StringComparison.Ordinal);
        Assert.Contains("100 shifts", words, StringComparison.Ordinal);
    }
}
