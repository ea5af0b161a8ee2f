using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

public class AuditTests
{
    private static readonly DateTimeOffset From = SmallLine.At("2026-11-24T19:00-05:00");

    [Fact]
    public void A_slot_missed_as_a_whole_is_one_line_and_single_checks_one_each()
    {
        using var line = new SmallLine("2026-11-24T18:00-05:00");
        line.Clock("2026-11-24T20:05-05:00").Record("hourly", "SL-T1=101.0", "SL-L1=16.4");
        line.Clock("2026-11-24T20:25-05:00");

        var missed = Audit.Between(line.Desk, From, line.Desk.Now);

        Assert.Equal(
            ["Line round Tue 24 Nov 19:00, all 3 checks: no reading in the window", "Line round Tue 24 Nov 20:00, WT-L: no reading in the window"],
            missed.Select(f => f.Text), StringComparer.Ordinal);
        Assert.Equal([null, "WT-L"], missed.Select(f => f.Point), StringComparer.Ordinal);
    }

    [Fact]
    public void The_troubled_night_shows_every_kind_of_fact()
    {
        using var line = TroubledNight.Write();

        var flags = Audit.Between(line.Desk, From, line.Desk.Now);

        Assert.Equal(["missed", "not-taken", "corrected", "past-date", "unanswered", "to-countersign", "hazard"], flags.Select(f => f.Flag).Distinct(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal(5, flags.Count(f => f.Flag == "missed"));
        Assert.Equal((13, "SL-L1"), Fact(flags, "not-taken"));
        Assert.Equal((15, "SL-T1"), Fact(flags, "corrected"));
        Assert.Contains("first 112.1 degC, put right to 102.1 degC", flags.Single(f => f.Flag == "corrected").Text, StringComparison.Ordinal);
        Assert.Contains("PAST", flags.Single(f => f.Flag == "past-date").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_could_hurt_in_the_span_is_listed_with_who_opened_and_who_closed_it()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var locked = line.Carry("isolation", "mud-pump", "seal change");
        line.Carry("action", "slaker", "tighten the bolt");
        line.Clock("2026-11-24T20:00-05:00");
        var permit = line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-25T02:00-05:00"), ("number", "4417"));
        var acid = line.State("wl-filter", "acid");
        line.State("wl-filter", "acid");
        var unlocked = line.Clock("2026-11-24T22:00-05:00").Close(locked, "seal changed");
        var rinsed = line.State("wl-filter", "running");
        line.Clock("2026-11-25T06:00-05:00");

        Assert.Equal(
        [
            $"isolation, Lime mud pump: seal change. Opened Tue 24 Nov 08:00 Operator one (#{locked}); closed Tue 24 Nov 22:00 Operator one: seal changed (#{unlocked})",
            $"permit, lime mud tank: cleaning. Opened Tue 24 Nov 20:00 Operator one (#{permit}); OPEN at Wed 25 Nov 06:00; PAST ITS END of Wed 25 Nov 02:00 by 4 h",
            $"acid, White liquor filter. In since Tue 24 Nov 20:00, told by Operator one (#{acid}); running Tue 24 Nov 22:00 Operator one (#{rinsed})",
        ],
            Audit.Between(line.Desk, From, line.Desk.Now, "hazard").Select(f => f.Text), StringComparer.Ordinal);
    }

    [Fact]
    public void What_could_not_both_be_true_says_when_it_began_and_when_it_ended()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var locked = line.Carry("isolation", "mud-pump", "seal change");
        var running = line.State("mud-pump", "running");
        line.Clock("2026-11-24T20:00-05:00");
        var permit = line.Carry("permit", "wl-filter", "cloths", SmallLine.At("2026-11-25T02:00-05:00"), ("number", "4417"), ("inside", "2"));
        var acid = line.State("wl-filter", "acid");
        line.Clock("2026-11-24T21:00-05:00").State("wl-filter", "acid");
        var stopped = line.Clock("2026-11-24T22:00-05:00").State("wl-filter", "stopped");
        line.Clock("2026-11-25T06:00-05:00");

        var flags = Audit.Between(line.Desk, From, line.Desk.Now, "contradicted");

        Assert.Equal(
        [
            $"Lime mud pump is locked, DO NOT START (#{locked}), YET RECORDED AS RUNNING (#{running}), told by Operator one, the lock by Operator one: one of the two was not true. Began Tue 24 Nov 08:00 Operator one (#{running}); NOT ENDED at Wed 25 Nov 06:00",
            $"White liquor filter has a permit to enter, 2 counted inside (#{permit}), YET RECORDED AS ACID (#{acid + 1}), told by Operator one, the count by Operator one: one of the two was not true. Began Tue 24 Nov 20:00 Operator one (#{acid}); ended Tue 24 Nov 22:00 Operator one (#{stopped})",
        ],
            flags.Select(f => f.Text), StringComparer.Ordinal);
        Assert.Empty(Audit.Between(line.Desk, SmallLine.At("2026-11-24T06:00-05:00"), SmallLine.At("2026-11-24T07:59-05:00"), "contradicted"));
    }

    [Fact]
    public void An_eyewash_that_was_read_as_working_while_it_was_out_is_contradicted_once()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record(null, "SL-EYE=1");
        var item = line.Clock("2026-11-24T10:00-05:00").Carry("safety-equipment", "slaker", "eyewash out, no flow", null, ("instead", "the one at the filters"));
        var first = line.Clock("2026-11-24T12:00-05:00").Record(null, "SL-EYE=1");
        line.Clock("2026-11-24T16:00-05:00").Record(null, "SL-EYE=2");
        var last = line.Clock("2026-11-24T20:00-05:00").Record(null, "SL-EYE=1");
        var closed = line.Clock("2026-11-24T21:00-05:00").Close(item, "flows again");
        line.Clock("2026-11-25T00:00-05:00").Record(null, "SL-EYE=1");
        line.Clock("2026-11-25T06:00-05:00");

        var flag = Assert.Single(Audit.Between(line.Desk, SmallLine.At("2026-11-24T08:00-05:00"), line.Desk.Now, "contradicted"));

        Assert.Equal("SL-EYE", flag.Point);
        Assert.Equal(
            $"safety equipment, Slaker: eyewash out, no flow (#{item}), YET READ AS works, SL-EYE: one of the two was not true. Began Tue 24 Nov 12:00 Operator one (#{first}), 2 times, last Tue 24 Nov 20:00 Operator one (#{last}); the item was closed Tue 24 Nov 21:00 Operator one (#{closed})",
            flag.Text);
        Assert.Empty(Audit.Between(line.Desk, SmallLine.At("2026-11-24T21:30-05:00"), line.Desk.Now, "contradicted"));
    }

    [Fact]
    public void Gas_beyond_its_urgent_limit_stands_among_what_could_hurt_though_it_is_gone()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Record(null, "ST-H2S=2.4");
        var gas = line.Clock("2026-11-24T21:00-05:00").Record(null, "ST-H2S=12.4");
        line.Clock("2026-11-24T21:30-05:00").Record(null, "ST-H2S=0.3");

        var flag = Assert.Single(Audit.Between(line.Clock("2026-11-25T06:00-05:00").Desk, From, line.Desk.Now, "hazard"));

        Assert.Equal(gas, flag.Seq);
        Assert.StartsWith("gas, read: H2S at the sump 12.4 ppm", flag.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Beside it then", flag.Text, StringComparison.Ordinal);
        Assert.Contains($" Read next 21:30, 0.3 ppm (#{line.Desk.State.Head.Seq}).", flag.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("20:30", "2", true)] // while they were in
    [InlineData("21:15", "2", false)] // after they were out
    [InlineData("20:30", "0", false)]
    public void Gas_in_the_audit_says_who_was_inside_anything_then(string at, string counted, bool inside)
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var permit = line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("inside", counted), ("attendant", "op2"));
        void Gas() => line.Clock($"2026-11-24T{at}-05:00").Record(null, "ST-H2S=12.4");
        if (at == "20:30")
        {
            Gas();
        }

        line.Clock("2026-11-24T21:00-05:00");
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "0" }, null), "op1").Record);
        if (at != "20:30")
        {
            Gas();
        }

        var flag = Assert.Single(Audit.Between(line.Clock("2026-11-25T06:00-05:00").Desk, From, line.Desk.Now, "hazard"), f => f.Point == "ST-H2S");

        Assert.Equal(inside, flag.Text.Contains($" Beside it then: Lime mud pump has a permit to enter, 2 counted inside (#{permit}).", StringComparison.Ordinal));
        Assert.Equal(inside, flag.Text.Contains("Beside it then", StringComparison.Ordinal));
    }

    [Fact]
    public void A_count_after_the_span_is_not_told_in_it()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var permit = line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("inside", "2"));
        line.Clock("2026-11-24T22:00-05:00");
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "3" }, null), "op1").Record);
        line.Clock("2026-11-25T06:00-05:00");

        string Told(string to) => Assert.Single(Audit.Between(line.Desk, From, SmallLine.At(to), "hazard")).Text;
        Assert.DoesNotContain("last counted", Told("2026-11-24T21:00-05:00"), StringComparison.Ordinal);
        Assert.Contains("last counted 3", Told("2026-11-24T23:00-05:00"), StringComparison.Ordinal);
    }

    [Fact]
    public void An_injury_that_was_told_in_words_alone_stands_among_what_could_hurt()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var told = line.Remark("Operator two splashed at the launder, rinsed", "wl-filter");
        line.Clock("2026-11-25T06:00-05:00");

        var flag = Assert.Single(Audit.Between(line.Desk, SmallLine.At("2026-11-24T08:00-05:00"), line.Desk.Now, "hazard"));

        Assert.Equal(told, flag.Seq);
        Assert.StartsWith("injury, told in words: ", flag.Text, StringComparison.Ordinal);
        Assert.Contains("splashed at the launder", flag.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_item_without_a_date_is_carried_too_long_after_six_shifts()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("action", "slaker", "tighten the bolt");

        Assert.DoesNotContain(Audit.Between(line.Clock("2026-11-27T18:59-05:00").Desk, From, line.Desk.Now), f => f.Flag == "carried-too-long");
        Assert.Contains(Audit.Between(line.Clock("2026-11-27T19:01-05:00").Desk, From, line.Desk.Now), f => f.Flag == "carried-too-long");
    }

    [Fact]
    public void An_audit_of_the_past_shows_what_was_open_then()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var item = line.Carry("action", "slaker", "tighten the bolt", SmallLine.At("2026-11-25T08:00-05:00"));
        line.Clock("2026-11-28T08:00-05:00").Close(item, "done");
        line.Clock("2026-11-30T08:00-05:00");

        Assert.Contains(Audit.Between(line.Desk, From, SmallLine.At("2026-11-27T08:00-05:00")), f => f.Seq == item);
        Assert.DoesNotContain(Audit.Between(line.Desk, From, line.Desk.Now), f => f.Seq == item);
    }

    [Fact]
    public void A_round_read_late_as_a_whole_is_one_line_with_its_time()
    {
        using var line = new SmallLine("2026-11-24T18:30-05:00");
        line.Clock("2026-11-24T19:25-05:00").Record("hourly", "SL-T1=101.0", "SL-L1=16.4", "WT-L=50");

        var late = Assert.Single(Audit.Between(line.Desk, From, From.AddMinutes(1)));

        Assert.Equal("late", late.Flag);
        Assert.Equal("Line round Tue 24 Nov 19:00, all 3 checks: read 19:25, Operator one (#2)", late.Text);
    }

    [Fact]
    public void What_one_entry_brought_late_is_one_line_that_names_its_points()
    {
        using var line = new SmallLine("2026-11-24T18:30-05:00");
        line.Clock("2026-11-24T19:02-05:00").Record("hourly", "SL-T1=101.0");
        line.Clock("2026-11-24T19:25-05:00").Record("hourly", "SL-L1=16.4", "WT-L=50");

        var late = Assert.Single(Audit.Between(line.Desk, From, From.AddMinutes(1)));

        Assert.Equal("Line round Tue 24 Nov 19:00, SL-L1, WT-L: read 19:25, Operator one (#3)", late.Text);
    }

    private static (long?, string?) Fact(IReadOnlyList<AuditFlag> flags, string flag) => flags.Where(f => f.Flag == flag).Select(f => (f.Seq, f.Point)).Single();
}
