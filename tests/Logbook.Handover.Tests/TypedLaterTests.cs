using Logbook.Checks;

namespace Logbook.Handover.Tests;

/// <summary>A check for safety whose value was typed only after its window is missed, and says when it was typed.</summary>
public sealed class TypedLaterTests
{
    private static readonly DateTimeOffset From = SmallLine.At("2026-11-24T07:00-05:00");

    private static DueCheck Check(SmallLine line, string round, string point, string at) => Assert.Single(
        line.Due("2026-11-24T07:00-05:00", "2026-11-24T19:00-05:00"), c => c.Round == round && c.Point == point && c.DueAt == SmallLine.At($"2026-11-24T{at}-05:00"));

    private static EntryRequest Said(string at, params string[] readings) =>
        new("op1", [.. readings.Select(SmallLine.Typed)]) { Round = "hourly", At = SmallLine.At($"2026-11-24T{at}-05:00") };

    [Fact]
    public void What_stands_in_for_a_trip_stays_missed_whatever_is_typed_for_it_later()
    {
        using var line = new SmallLine("2026-11-24T07:30-05:00");
        var trip = line.Clock("2026-11-24T08:00-05:00").Carry("bypass", "slaker", "Low-flow lime trip", SmallLine.At("2026-11-24T14:00-05:00"), ("instead", "feed by hand"), ("allowed-by", "eng1"), ("point", "SL-L1"), ("every", "30m"));
        var round = InsteadOfTrips.RoundId(trip);
        line.Clock("2026-11-24T09:47-05:00");
        int Missed() => Audit.Between(line.Desk, From, line.Desk.Now, "missed").Count(f => f.Round == round);
        var before = Missed();
        var seq = line.Record(Said("09:02", "SL-T1=101.0", "SL-L1=16.0"));

        var check = Check(line, round, "SL-L1", "09:00");
        Assert.Equal((CheckState.Missed, true, seq, "said later: read 09:02, typed 09:47"), (check.State, check.TypedLater, check.Seq, check.Why));
        Assert.Equal(before, Missed());
        Assert.Contains(Audit.Between(line.Desk, From, line.Desk.Now, "missed"), f => f.Text.EndsWith($"SL-L1: said later: read 09:02, typed 09:47, Operator one (#{seq})", StringComparison.Ordinal));
        Assert.DoesNotContain(Audit.Between(line.Desk, From, line.Desk.Now, "late"), f => f.Round == round);
        var now = NowView.Of(line.Desk);
        Assert.Equal($"said later 09:47 (#{seq})", now.Instead.Single(r => r.DueAt == check.DueAt).SaidLater);
        Assert.Contains($"This check was MISSED at 08:30, 09:00 (said later: read 09:02, typed 09:47 (#{seq})), 09:30.", now.Hazards.Single(h => h.Word == "defeated").Text, StringComparison.Ordinal);
        Assert.Contains(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-done").Lines, l => l.Label == "missed" && l.Text.EndsWith($"09:00, SL-L1: said later: read 09:02, typed 09:47 (#{seq})", StringComparison.Ordinal));
    }

    [Fact]
    public void A_safety_point_stays_missed_and_the_other_checks_of_the_entry_are_late()
    {
        using var line = new SmallLine("2026-11-24T07:30-05:00");
        line.Clock("2026-11-24T09:47-05:00").Record(Said("09:02", "SL-T1=101.0", "SL-L1=16.0"));

        Assert.Equal(CheckState.Missed, Check(line, "hourly", "SL-T1", "09:00").State);
        Assert.Equal((CheckState.Late, "read 09:02, typed later, 09:47"), (Check(line, "hourly", "SL-L1", "09:00").State, Check(line, "hourly", "SL-L1", "09:00").Why));
    }

    [Fact]
    public void What_was_walked_with_its_times_is_late_and_so_is_what_was_read_too_late_and_typed_at_once()
    {
        using var line = new SmallLine("2026-11-24T07:30-05:00");
        line.Clock("2026-11-24T08:16-05:00").Record("hourly", "SL-T1=101.0");
        line.Clock("2026-11-24T10:10-05:00").Record(Said("09:02", "SL-T1=101.0") with { WalkStart = SmallLine.At("2026-11-24T09:00-05:00"), WalkEnd = SmallLine.At("2026-11-24T09:05-05:00") });

        Assert.Equal([CheckState.Late, CheckState.Late], new[] { "08:00", "09:00" }.Select(at => Check(line, "hourly", "SL-T1", at).State));
    }

    [Fact]
    public void A_reason_that_was_given_for_a_safety_point_is_not_covered_by_a_value_typed_later()
    {
        using var line = new SmallLine("2026-11-24T07:30-05:00");
        line.Clock("2026-11-24T09:02-05:00").Record("hourly", "SL-T1=-:no time");
        line.Clock("2026-11-24T09:47-05:00").Record(Said("09:05", "SL-T1=101.0"));

        Assert.Equal((CheckState.NotTaken, "no time"), (Check(line, "hourly", "SL-T1", "09:00").State, Check(line, "hourly", "SL-T1", "09:00").Why));
    }
}
