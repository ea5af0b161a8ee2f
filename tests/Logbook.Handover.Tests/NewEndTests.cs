using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>A wash, a permit or a bypass that goes on longer gets a new end; the old one stays in the record.</summary>
public sealed class NewEndTests
{
    private static readonly Dictionary<string, string> NoFields = new(StringComparer.Ordinal);

    [Fact]
    public void The_new_end_stands_wherever_the_old_one_did_and_the_record_names_both()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var wash = line.Carry("wash", "wl-filter", "acid wash", SmallLine.At("2026-11-24T10:00-05:00"), ("acid", "yes"));
        line.Clock("2026-11-24T09:30-05:00");

        Written Ends(string at) => Writing.ConfirmCarried(line.Desk, new CarryConfirmed(wash, true, null, NoFields, null) { Until = SmallLine.At($"2026-11-24T{at}-05:00") }, "op1");
        var first = Ends("12:00").Record!;
        var second = Ends("13:15").Record!;

        Assert.Equal(SmallLine.At("2026-11-24T13:15-05:00"), line.Desk.State.Carried.Single().Until);
        var coming = HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "coming").Lines.Where(l => l.Text.Contains("acid wash", StringComparison.Ordinal));
        Assert.Equal("13:15", Assert.Single(coming).Label);
        Assert.Contains("until 13:15", NowView.Of(line.Desk).Hazards.Single(h => h.Word == "acid").Text, StringComparison.Ordinal);
        Assert.Contains("Changed, its end", LogLine.Of(line.Desk, first).Words, StringComparison.Ordinal);
        Assert.Contains("ends Tue 24 Nov 12:00, formerly Tue 24 Nov 10:00", LogLine.Of(line.Desk, first).Words, StringComparison.Ordinal);
        Assert.Contains("ends Tue 24 Nov 13:15, formerly Tue 24 Nov 12:00", LogLine.Of(line.Desk, second).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bypass_goes_on_when_it_is_said_who_allows_that_and_waits_for_that_signature()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var trip = line.Carry("bypass", "slaker", "low-flow trip", SmallLine.At("2026-11-24T10:00-05:00"), ("instead", "feed by hand"), ("allowed-by", "eng1"), ("point", "SL-L1"), ("every", "30m"));
        var longer = new CarryConfirmed(trip, true, null, NoFields, null) { Until = SmallLine.At("2026-11-24T12:00-05:00") };

        Assert.Contains("who allows it to go on", Assert.Single(Writing.ConfirmCarried(line.Desk, longer, "op1").Mistakes).Wrong, StringComparison.Ordinal);
        var said = new Dictionary<string, string>(StringComparer.Ordinal) { ["allowed-by"] = "sup1" };
        Assert.Empty(Writing.ConfirmCarried(line.Desk, longer with { Fields = said }, "op1").Mistakes);
        Assert.Equal("sup1", Assert.Single(line.Desk.State.Line.ToCountersign).Named);
    }

    [Fact]
    public void An_end_that_is_over_or_that_the_item_never_had_is_refused()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var wash = line.Carry("wash", "wl-filter", "acid wash", SmallLine.At("2026-11-24T10:00-05:00"), ("acid", "yes"));
        var bolt = line.Carry("action", "classifier", "tighten the guard bolt");
        line.Clock("2026-11-24T09:30-05:00");

        string Refused(long id, string at) => Assert.Single(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(id, true, null, NoFields, null) { Until = SmallLine.At($"2026-11-24T{at}-05:00") }, "op1").Mistakes).Wrong;
        Assert.Contains("is over already", Refused(wash, "08:30"), StringComparison.Ordinal);
        Assert.Contains("was opened without an end", Refused(bolt, "12:00"), StringComparison.Ordinal);
    }
}
