using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Handover.Tests;

/// <summary>Now: an alarm that hangs on a reading that is doubted still says so, also when an entry came since.</summary>
public sealed class DoubtedBeforeTheNewestTests
{
    private static readonly Finding Doubt = new(Level.Watch, "examine.named", "WL-B", "White liquor, end point B (WL-B) does not fit.", []);

    private static void Write(SmallLine line, Finding[] doubts, params string[] readings)
    {
        var entry = RecordEntry.Judge(line.Desk, Some.Entry(readings)).Value!;
        line.Desk.Write(entry with { Findings = [.. entry.Findings, .. doubts] }, line.Desk.Now, "op1");
    }

    private static string Alarm(SmallLine line) => NowView.Of(line.Desk).StandsOut.Single(f => f.Finding.Point == "WL-CE").Finding.Text;

    [Fact]
    public void A_figure_that_stands_in_for_a_defeated_trip_says_that_it_is_doubted_while_it_is()
    {
        using var line = new SmallLine(SmallLine.At("2026-11-24T20:00-05:00"), Some.Files, Some.Calculations);
        line.Carry("bypass", "lime-screw", "low-flow trip off", line.Desk.Now.AddHours(6), ("instead", "flow by hand"), ("allowed-by", "eng1"), ("point", "SL-F1"), ("every", "1h"));
        string Defeated() => NowView.Of(line.Desk).Hazards.Single(h => h.Word == "defeated").Text;
        line.Clock("2026-11-24T20:10-05:00");
        Write(line, [Doubt with { Point = "SL-F1", Text = "Green liquor flow (SL-F1) 262 m3/h does not fit: about 33 m3/h too low. Reading it again would show a slip." }], "SL-F1=262");
        Assert.Contains($" DOUBTED: Green liquor flow (SL-F1) 262 m3/h does not fit: about 33 m3/h too low (#{line.Desk.State.Head.Seq}).", Defeated(), StringComparison.Ordinal);

        line.Clock("2026-11-24T21:10-05:00");
        Write(line, [], "SL-F1=295");
        Assert.DoesNotContain("DOUBTED", Defeated(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_alarm_of_an_entry_before_the_newest_says_which_reading_is_doubted_while_it_is()
    {
        using var line = new SmallLine(SmallLine.At("2026-11-24T20:00-05:00"), Some.Files, Some.Calculations);
        Write(line, [Doubt], "WL-A=29.35", "WL-B=34.35", "WL-C=38.65");
        Assert.EndsWith(" (doubted: see WL-B)", Alarm(line), StringComparison.Ordinal);

        // B alone is read again, and does not fit either: nothing is computed anew, and the alarm stands.
        line.Clock("2026-11-24T20:20-05:00");
        Write(line, [Doubt with { Again = true }], "WL-B=34.40");
        Assert.EndsWith(" (doubted: see WL-B)", Alarm(line), StringComparison.Ordinal);

        line.Clock("2026-11-24T20:40-05:00");
        Write(line, [], "WL-B=33.0");
        Assert.EndsWith(" (doubted: see WL-B)", Alarm(line), StringComparison.Ordinal); // the alarm still hangs on what was read first

        line.Clock("2026-11-24T21:00-05:00");
        Write(line, [], "WL-A=29.35", "WL-B=33.0", "WL-C=38.65");
        Assert.DoesNotContain("doubted", NowView.Of(line.Desk).StandsOut.SingleOrDefault(f => f.Finding.Point == "WL-CE")?.Finding.Text ?? "", StringComparison.Ordinal);
    }
}
