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
