using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Handover.Tests;

/// <summary>A reading that the cross-examination doubts: what is computed from it says so in the note.</summary>
public sealed class DoubtedTests
{
    /// <summary>Four titrations of a night, causticity 79, 81, 83 and 85 %; end point B of the last one does not fit.</summary>
    private static SmallLine Night(string code = "examine.named", Level level = Level.Watch)
    {
        var line = new SmallLine(SmallLine.At("2026-11-24T18:00-05:00"), Some.Files, Some.Calculations);
        string[] c = ["C=40.82", "C=40.06", "C=39.34", "C=38.65"];
        for (var i = 0; i < c.Length; i++)
        {
            line.Clock(SmallLine.At("2026-11-24T20:00-05:00").AddHours(2 * i));
            var request = new EntryRequest("op1", [SmallLine.Typed("WL-A=29.35"), SmallLine.Typed("WL-B=34.35"), SmallLine.Typed("WL-" + c[i])]);
            var entry = RecordEntry.Judge(line.Desk, request).Value!;
            line.Desk.Write(i < c.Length - 1 ? entry : entry with { Findings = [.. entry.Findings, new Finding(level, code, "WL-B", "White liquor, end point B (WL-B) does not fit.", [])] }, line.Desk.Now, "op1");
        }

        return line.Clock("2026-11-25T02:30-05:00");
    }

    private static string Text(SmallLine line, string section, string label) =>
        Assert.Single(HandoverNote.Of(line.Desk, line.Desk.Now).Sections.Single(s => s.Id == section).Lines, l => l.Label == label).Text;

    [Fact]
    public void A_figure_of_a_doubted_titration_carries_its_doubt()
    {
        using var line = Night();

        // What hangs on it is in its line, in the note as on the page.
        Assert.Matches("White liquor, end point B \\(WL-B\\) does not fit.* On it hang, beyond their limits: WL-CE 85.0 %", Text(line, "not-normal", "WL-B"));
        Assert.Contains("over 4 readings, that of 02:00 doubted (see WL-B); at that rate", Text(line, "moving", "WL-CE"), StringComparison.Ordinal);
    }

    /// <summary>A doubt is told once in full and then in short; bare, an alarm that hangs on it would be acted on.</summary>
    [Fact]
    public void An_alarm_that_hangs_on_a_doubted_reading_says_so_at_each_entry()
    {
        var links = new Links(Some.Site);
        var alarm = new Finding(Level.Watch, "limit.watch-high", "WL-CE", "Causticity 85.0 %, 1 point above the watch limit 84.0 %", []);
        var doubt = new Finding(Level.Watch, "examine.named", "WL-B", "WL-B does not fit: about 0.5 mL too high. A second titration would tell. This against that: 2 more, usually 0.", []) { Again = true };
        var other = new Finding(Level.Note, "stuck", "SL-T1", "ten times the same", []) { Again = true };

        var said = SaidAtOnce.Of(links, [alarm, doubt, other]);

        Assert.Equal(
            ["Causticity 85.0 %, 1 point above the watch limit 84.0 % (doubted: see WL-B)", "still: WL-B does not fit: about 0.5 mL too high. A second titration would tell."],
            said.Select(f => f.Text), StringComparer.Ordinal);
        Assert.Equal(alarm, Assert.Single(SaidAtOnce.Of(links, [alarm])));
    }

    [Fact]
    public void A_later_alarm_that_took_the_doubted_reading_is_doubted_until_it_is_read_again()
    {
        using var line = Night();
        string Alarm(params string[] readings)
        {
            line.Record(null, readings);
            return Doubted(line, line.Desk.State.Head.Seq);
        }

        line.Clock("2026-11-25T02:40-05:00");
        Assert.Equal("WL-B", Alarm("SL-T1=101.0")); // B of 02:00 is the newest still
        line.Clock("2026-11-25T02:50-05:00");
        Assert.Equal("", Alarm("WL-A=29.35", "WL-B=33.0", "WL-C=38.65"));
    }

    [Fact]
    public void What_hung_on_a_doubt_that_is_over_has_a_line_of_its_own_while_it_lasts()
    {
        using var line = Night();
        line.Clock("2026-11-25T02:40-05:00").Record(null, "WL-B=34.0"); // B alone: nothing is computed anew

        var told = HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines;

        Assert.Contains("(doubted: see WL-B)", Assert.Single(told, l => l.Label == "WL-CE").Text, StringComparison.Ordinal);
    }

    private static string Doubted(SmallLine line, long seq) => ShiftFacts.InHand(line.Desk).Doubted.See(seq, "WL-CE") ?? "";

    [Fact]
    public void What_is_only_unusual_is_no_doubt()
    {
        using var line = Night("examine.unusual", Level.Note);

        Assert.DoesNotContain("doubted", Text(line, "not-normal", "WL-CE"), StringComparison.Ordinal);
        Assert.DoesNotContain("doubted", Text(line, "moving", "WL-CE"), StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_that_doubts_an_earlier_reading_marks_the_figures_of_that_one()
    {
        using var line = Night("examine.unusual", Level.Note);
        line.Clock("2026-11-25T02:40-05:00");
        var entry = RecordEntry.Judge(line.Desk, new EntryRequest("op1", [SmallLine.Typed("SL-T1=99.0")])).Value!;
        line.Desk.Write(entry with { Findings = [new Finding(Level.Watch, "examine.named", "WL-B", "White liquor, end point B (WL-B) does not fit.", [])] }, line.Desk.Now, "op1");

        Assert.Contains("On it hang, beyond their limits: WL-CE ", Text(line, "not-normal", "WL-B"), StringComparison.Ordinal);
    }
}
