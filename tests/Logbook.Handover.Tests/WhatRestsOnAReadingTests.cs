using System.Collections.Immutable;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover.Tests;

/// <summary>What is computed is as old, and as doubtful, as the reading that it rests on: in Now and in the note alike.</summary>
public sealed class WhatRestsOnAReadingTests
{
    private static readonly DateTimeOffset Read = SmallLine.At("2026-11-24T06:05-05:00");

    /// <summary>The small line with the hours that its white liquor lasts, worked out of the level.</summary>
    private static Site WithHours(SmallLine line) => line.Desk.Site with
    {
        Points = [.. line.Desk.Site.Points, line.Desk.Site.FindPoint("WT-L")! with { Tag = "WT-H", Description = "Hours of white liquor", Kind = PointKind.Derived, Unit = Units.Find("h")!, Limits = Limits.None }],
        Calculations =
        [
            new CalculationBinding
            {
                Name = "white liquor tank", Use = "tank-hours",
                Inputs = new Dictionary<string, InputSource>(StringComparer.Ordinal) { ["level"] = new InputSource.FromPoint("WT-L") },
                Outputs = new Dictionary<string, string>(StringComparer.Ordinal) { ["hours-to-empty"] = "WT-H" },
            },
        ],
    };

    private static SeriesValue Value(string point, double value, DateTimeOffset at, long seq) => new(point, at, value, null, point == "WT-L" ? "%" : "h", null, null, "op1", seq, null);

    private static State With(params SeriesValue[] values) => State.Empty with { Latest = State.Empty.Latest.SetItems(values.Select(v => KeyValuePair.Create(v.Point, v))) };

    [Fact]
    public void What_was_computed_from_a_value_that_is_put_right_later_says_so()
    {
        using var line = new SmallLine(SmallLine.At("2026-11-24T08:00-05:00"), Testing.Some.Files, Testing.Some.Calculations);
        var lime = line.Record(null, "LM-CAO=60");
        line.Clock("2026-11-24T08:10-05:00").Record(null, "LM-F1=18.6");
        var dose = line.Clock("2026-11-24T08:20-05:00").Record(null, "SL-F1=300");
        string Log(long seq) => LogLine.Of(line.Desk, line.Desk.Store.Read(seq).First()).Words;
        Assert.DoesNotContain("computed from", Log(dose), StringComparison.Ordinal);

        var right = line.Clock("2026-11-24T08:30-05:00").Correct(lime, "LM-CAO=90", "misread");
        var said = $"LM-CAO (#{lime}), since put right (#{right})";

        Assert.Contains($"computed from {said}: SL-CAO", Log(dose), StringComparison.Ordinal);
        Assert.Contains(NowView.Of(line.Desk).StandsOut, f => f.Finding.Point == "SL-CAO" && f.Finding.Text.EndsWith($"(computed from {said})", StringComparison.Ordinal));
        Assert.Contains(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines, l => l.Label == "SL-CAO" && l.Text.Contains($"Computed from {said}.", StringComparison.Ordinal));
        Assert.Contains(Search.Of(line.Desk, "since put right", line.Desk.Now.AddHours(-2), line.Desk.Now.AddMinutes(1)), l => l.Seq == dose);

        // What is computed from then on takes the value as it was put right, and so does what is itself put right.
        line.Clock("2026-11-24T08:35-05:00").Correct(dose, "SL-F1=305", "misread");
        Assert.DoesNotContain(NowView.Of(line.Desk).StandsOut, f => f.Finding.Text.Contains("since put right", StringComparison.Ordinal));
        Assert.DoesNotContain("computed from", Log(line.Clock("2026-11-24T08:40-05:00").Record(null, "SL-F1=310")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_of_equal_readings_says_when_one_of_them_was_put_right_since()
    {
        using var line = new SmallLine("2026-11-23T08:00-05:00");
        for (var i = 0; i < 30; i++)
        {
            line.Clock(line.Desk.Now.AddHours(1)).Record(null, FormattableString.Invariant($"WT-L={50 + (i % 7 * 1.3):0.0}"));
        }

        List<long> same = [];
        for (var i = 0; i < 5; i++)
        {
            same.Add(line.Clock(line.Desk.Now.AddHours(1)).Record(null, "WT-L=61.0"));
        }

        string Now() => Assert.Single(NowView.Of(line.Desk).StandsOut, f => f.Finding.Code == "stuck").Finding.Text;
        Assert.DoesNotContain("put right", Now(), StringComparison.Ordinal);
        var right = line.Correct(same[2], "WT-L=-", "not read");

        Assert.EndsWith($"(one of them was put right since (#{right}))", Now(), StringComparison.Ordinal);
        Assert.Contains(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines, l => l.Text.Contains($"One of them was put right since (#{right}).", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_read_stands_before_the_urgent_value_that_is_computed_from_it()
    {
        using var line = new SmallLine(SmallLine.At("2026-11-24T08:00-05:00"), Testing.Some.Files, Testing.Some.Calculations);
        var entry = Checks.RecordEntry.Judge(line.Desk, new Checks.EntryRequest("op1", [SmallLine.Typed("SL-T1=103.6"), SmallLine.Typed("SL-I=145")])).Value!;
        Finding margin = new(Level.Urgent, "limit.urgent-low", "SL-MARGIN", "within 1 K of boiling: 0.4 K left; follow the site's high-temperature procedure now; keep clear of hatches, do not sample", []);
        Finding hot = new(Level.Urgent, "limit.urgent-high", "SL-T1", "Slaker temperature 103.6 degC, above the urgent limit", []);
        Finding current = new(Level.Urgent, "limit.urgent-high", "SL-I", "Slaker agitator current 145 A, above the urgent limit", []);
        line.Desk.Write(entry with { Findings = [current, margin, hot] }, line.Desk.Now, "op1");

        Assert.Equal(["SL-T1", "SL-MARGIN", "SL-I"], NowView.Of(line.Desk).StandsOut.Select(f => f.Finding.Point), StringComparer.Ordinal);
    }

    [Fact]
    public void Hours_that_a_tank_lasts_carry_the_time_of_its_level()
    {
        using var line = new SmallLine("2026-11-24T05:00-05:00");

        var stocks = Stock.Of(WithHours(line), With(Value("WT-L", 62, Read, 5), Value("WT-H", 6.1, Read.AddMinutes(40), 7)));

        Assert.Equal([Read, Read], stocks.Select(s => s.At));
    }

    [Fact]
    public void Hours_of_an_earlier_level_are_no_reserve_any_more()
    {
        using var line = new SmallLine("2026-11-24T05:00-05:00");

        var stocks = Stock.Of(WithHours(line), With(Value("WT-L", 62, Read.AddHours(1), 8), Value("WT-H", 6.1, Read, 7)));

        Assert.Equal(["WT-L"], stocks.Select(s => s.Point), StringComparer.Ordinal);
    }

    [Fact]
    public void What_is_computed_of_a_reading_that_does_not_fit_is_doubted_while_that_stands_and_no_longer()
    {
        using var line = new SmallLine("2026-11-24T05:00-05:00");
        var site = WithHours(line);
        Finding doubt = new(Level.Watch, "examine.reading", "WT-L", "White liquor tank level 62 % does not fit", []);
        var state = With(Value("WT-L", 62, Read, 5), Value("WT-H", 6.1, Read, 5)) with
        {
            Findings = State.Empty.Findings.SetItem("WT-L", ImmutableList.Create(new OpenFinding(5, 1, Read, doubt))),
        };

        OpenFinding Alarm(long seq) => new(seq, 2, Read, new Finding(Level.Watch, "limit.watch-low", "WT-H", "6.1 h", []));

        Assert.Equal("WT-L", new DoubtsNow(site, line.Desk.Store, state).See(Alarm(5)));
        Assert.Null(new DoubtsNow(site, line.Desk.Store, state).See(Alarm(4)));
        Assert.Null(new DoubtsNow(site, line.Desk.Store, state with { Findings = State.Empty.Findings }).See(Alarm(5)));
    }
}
