using System.Text.Json;
using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

public class LogLineTests
{
    [Fact]
    public void Each_kind_reads_as_plain_words()
    {
        using var line = TroubledNight.Write();

        var words = line.Desk.Store.Read().Select(r => LogLine.Of(line.Desk, r)).ToDictionary(l => l.Seq, l => $"{l.Kind}: {l.Words}");

        Assert.Equal("site: Site files put in force: the line starts; by PIN", words[1]);
        Assert.Equal("carry: Opened: temporary change, Lime mud pump: hose instead of the flushing line; until 23 Nov 19:00", words[2]);
        Assert.Equal("entry: Line round: 3 readings", words[4]);
        Assert.Equal("state: White liquor filter acid since 23:04: cloth wash", words[12]);
        Assert.StartsWith("entry: Line round: 2 readings; not taken, instrument faulty: SL-L1; urgent: Slaker temperature 103.4 degC", words[13], StringComparison.Ordinal);
        Assert.Equal("correction: SL-T1 of 03:04: first 112.1 degC, put right to 102.1 degC (#14): digits swapped", words[15]);
        Assert.Equal("remark: Slaker: bowl may climb when the lime goes back up", words[18]);
    }

    [Fact]
    public void A_few_readings_without_a_round_are_listed_with_their_values()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record(null, "SL-T1=101.2", "SL-EYE=1", "SL-L1=-:no time");

        Assert.Equal("SL-T1 101.2 degC, SL-EYE works, SL-L1 not taken (no time)", Last(line).Words);
    }

    [Fact]
    public void The_worst_level_and_the_area_are_told()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record(null, "SL-T1=103.4");

        Assert.Equal((Level.Urgent, "slaker"), (Last(line).Worst, Last(line).Area));
    }

    [Fact]
    public void A_look_names_what_was_looked_at_open_or_closed_since()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var id = line.Carry("out-of-service", "slaker", "agitator spare");
        Assert.Empty(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(id, true, null, new Dictionary<string, string>(StringComparer.Ordinal), null), "op1").Mistakes);
        var look = line.Desk.Store.Read().Last();
        Assert.Equal("Still so: out of service, Slaker (#2)", LogLine.Of(line.Desk, look).Words);

        line.Close(id, "back");

        Assert.Equal("Still so: out of service, Slaker (#2)", LogLine.Of(line.Desk, look).Words);
    }

    [Fact]
    public void A_closed_item_names_what_it_closes()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Close(line.Carry("action", "slaker", "tighten the bolt"), "done by the fitter");

        Assert.Equal("Closed: action, Slaker (#2): done by the fitter", Last(line).Words);
    }

    [Fact]
    public void An_unknown_kind_is_shown_as_stored_with_control_characters_made_visible()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        using var raw = JsonDocument.Parse("""{"what":"siren\u202e"}""");

        var known = line.Desk.Store.Read().First();
        var words = LogLine.Of(line.Desk, known with { Body = new UnknownBody("drill\u001b[2J", raw.RootElement.Clone()) });

        Assert.Equal("drill\\u001B[2J", words.Kind);
        Assert.StartsWith("drill\\u001B[2J, not known to this version, as stored: {\"what\":\"siren\\u202e\"}", words.Words, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(words.Words, char.IsControl);
    }

    private static LogLine Last(SmallLine line) => LogLine.Of(line.Desk, line.Desk.Store.Read().Last());
}
