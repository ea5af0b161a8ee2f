using System.Globalization;
using System.Text.RegularExpressions;
using Logbook.Checks;
using Logbook.Checks.Examining;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Demo.Tests;

/// <summary>What an entry is told by the cross-examination when it is typed into the demo's line, half a day before anything of its last night begins.</summary>
public sealed class ACrossExaminedEntry
{
    private static readonly DemoRun Full = DemoRun.Long(9, 2);

    private static readonly DateTimeOffset Cut = Full.Until.AddHours(-30);

    [Fact]
    public void A_burette_misread_is_named_with_its_size_and_the_sample_that_would_tell()
    {
        var desk = Desk();

        var finding = Assert.Single(Examined(Titration(desk, misread: 1.5)), f => f.Level == Level.Watch);

        Assert.Equal("WL-B", finding.Point);
        Assert.Contains("White liquor, end point B", finding.Text, StringComparison.Ordinal);
        Assert.Contains("too high", finding.Text, StringComparison.Ordinal);
        Assert.Contains("A second titration of the white liquor sample would tell.", finding.Text, StringComparison.Ordinal);
        Assert.DoesNotMatch("probab|[0-9] ?% (sure|likely)", finding.Text);
    }

    [Fact]
    public void The_same_titration_read_rightly_is_told_nothing() => Assert.Empty(Examined(Titration(Desk(), misread: 0)));

    /// <summary>The same slip in the next titration goes on; after a sound one it is a new one.</summary>
    [Fact]
    public void A_doubt_that_goes_on_is_kept_with_each_reading_until_a_sound_one_came_between()
    {
        var clock = new FakeTimeProvider(Cut);
        var desk = Desk(clock: clock);
        var last = desk.State.Latest.ToDictionary(l => l.Key, l => l.Value.Value, StringComparer.Ordinal);
        Finding? Titrate(double misread)
        {
            clock.Advance(TimeSpan.FromMinutes(30));
            var typed = new[] { ("WL-A", 0.0), ("WL-B", misread), ("WL-C", 0) }.Select(t => new TypedReading(t.Item1, Text(last[t.Item1]!.Value + t.Item2), Place.Unknown));
            var written = RecordEntry.Run(desk, new EntryRequest(desk.Site.People[0].Code, [.. typed]) { Round = "white-liquor" });
            return Examined((Entry)written.Record!.Body).SingleOrDefault(f => f.Level == Level.Watch);
        }

        var said = new[] { 1.5, 1.5, 0, 1.5 }.Select(Titrate).ToList();

        Assert.Equal(["WL-B", "WL-B", null, "WL-B"], said.Select(f => f?.Point), StringComparer.Ordinal);
        Assert.Equal([null, true, null], said.OfType<Finding>().Select(f => f.Again));
    }

    /// <summary>End point B alone is no titration: a newer value of it takes no doubt away.</summary>
    [Fact]
    public void A_doubt_stands_while_nothing_compares_its_reading_beside_an_alarm_of_another_too()
    {
        var (desk, read) = AfterAMisreadB();
        var first = desk.State.Head.Seq;

        foreach (var beside in new[] { "", "SL-T1=105" })
        {
            var kept = Assert.Single(Examined(read(1.5, beside)));
            Assert.Equal(("WL-B", true, first), (kept.Point, kept.Again, kept.Of));
            Assert.Matches($@" Said [0-9: -]+ \(record {first}\): nothing has compared it since\.$", kept.Text);
            Assert.Equal(kept, Assert.Single(desk.State.Findings["WL-B"], f => f.Finding.Code.StartsWith("examine.", StringComparison.Ordinal)).Finding);
        }
    }

    [Theory]
    [InlineData(0, "")] // clearly another value: the doubt never was of it
    [InlineData(0, "WL-A WL-C")] // a whole titration, which fits
    public void A_doubt_goes_with_a_value_that_lies_elsewhere_or_was_compared(double off, string beside)
    {
        var (desk, read) = AfterAMisreadB();
        read(1.5, "");

        Assert.Empty(Examined(read(off, string.Join(' ', beside.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => $"{t}={Text(desk.State.Latest[t].Value!.Value)}")))));
    }

    [Fact]
    public void A_doubt_that_stands_goes_with_its_entry_being_put_right()
    {
        var (desk, read) = AfterAMisreadB();
        var first = desk.State.Head.Seq;
        var typed = desk.State.Latest["WL-B"].Value!.Value;
        read(1.5, "");

        Assert.Empty(Writing.Correct(desk, first, [new TypedReading("WL-B", Text(typed - 1.5), Place.Unknown)], "misread", desk.Site.People[0].Code).Mistakes);

        Assert.DoesNotContain(desk.State.Findings.GetValueOrDefault("WL-B") ?? [], f => f.Finding.Code.StartsWith("examine.", StringComparison.Ordinal));
    }

    /// <summary>The desk after it, and a way to read B again, off by so much, ten minutes later each time, with others beside it.</summary>
    private static (Desk Desk, Func<double, string, Entry> Read) AfterAMisreadB()
    {
        var clock = new FakeTimeProvider(Cut);
        var desk = Desk(clock: clock);
        var sound = desk.State.Latest["WL-B"].Value!.Value;
        Assert.Equal("WL-B", Assert.Single(Examined(Titration(desk, misread: 1.5)), f => f.Level == Level.Watch).Point);
        return (desk, (off, beside) =>
        {
            clock.Advance(TimeSpan.FromMinutes(10));
            var typed = beside.Split(' ', StringSplitOptions.RemoveEmptyEntries).Prepend($"WL-B={Text(sound + off)}");
            return Save(desk, [.. typed.Select(t => t.Split('=')).Select(t => new TypedReading(t[0], t[1], Place.Unknown))]);
        });
    }

    /// <summary>A thermometer that reads low makes the slaker look safer than it is.</summary>
    [Fact]
    public void A_slaker_that_reads_too_cold_is_told_with_the_margin_that_is_then_left()
    {
        var entry = TooCold(Desk());

        var finding = Assert.Single(Examined(entry), f => f.Level == Level.Watch);
        Assert.Equal("SL-T1", finding.Point);
        var margin = Regex.Match(finding.Text, @"too low\. If so, Margin of the slaker to boiling \(SL-MARGIN\) is (?<right>[0-9.]+) K, not (?<shown>[0-9.]+) K\. Reading SL-T1 again", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));
        Assert.True(margin.Success, finding.Text);
        Assert.True(Value(margin, "right") < Value(margin, "shown") - 2, finding.Text);
    }

    /// <summary>It takes nothing from the alarm, and asks for no reading.</summary>
    [Fact]
    public void Beside_an_alarm_the_smaller_margin_is_said_and_nothing_is_doubted()
    {
        var entry = TooCold(Desk(), new TypedReading("SL-TRIP", "defeated", Place.Unknown));

        Assert.Empty(Examined(entry));
        var margin = Assert.Single(entry.Findings, f => f.Code == "margin");
        Assert.Equal((Level.Watch, "SL-MARGIN"), (margin.Level, margin.Point));
        Assert.Contains("go by the worse of the two", margin.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("again", margin.Text, StringComparison.Ordinal);
    }

    /// <summary>The slaker's round once more, its thermometer 4 K lower.</summary>
    private static Entry TooCold(Desk desk, params TypedReading[] beside)
    {
        TypedReading As(string tag, double off) => new(tag, Number(desk.State.Latest[tag].Value!.Value + off, desk.Site.FindPoint(tag)!), Place.Unknown);
        return Save(desk, [As("SL-T1", -4), As("GC-T2", 0), As("SL-F1", 0), As("LM-F1", 0), As("LM-N1", 0), .. beside]);
    }

    private static double Value(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [Fact]
    public void Beside_an_urgent_slaker_nothing_is_doubted()
    {
        var desk = Desk();

        var entry = Titration(desk, misread: 1.5, "SL-T1=105");

        Assert.Contains(entry.Findings, f => f.Level == Level.Urgent);
        Assert.Empty(Examined(entry));
        var report = Examine.Newest(desk)!;
        Assert.Null(report.Named);
        Assert.Empty(report.Group);
        Assert.Equal("something is urgent and counts as true: beside it nothing is doubted", report.Text);
    }

    [Fact]
    public void Beside_its_own_urgent_limit_a_step_is_said_and_doubts_nothing()
    {
        var entry = Save(Desk(), [new TypedReading("SL-F1", "0", Place.Unknown)]);

        Assert.Contains(entry.Findings, f => f is { Level: Level.Urgent, Point: "SL-F1" });
        Assert.DoesNotContain("misread", Assert.Single(entry.Findings, f => f.Code == "step" && f.Point == "SL-F1").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_that_nothing_contradicts_but_its_own_past_is_a_note()
    {
        var finding = Assert.Single(Examined(Save(Desk(), [new TypedReading("GF-F", "390", Place.Unknown)])));

        Assert.Equal((Level.Note, "examine.unusual", "GF-F"), (finding.Level, finding.Code, finding.Point));
        Assert.Contains("was expected: changed much more than usual; the plant changed, or misread", finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stays_where_it_went_has_changed_once()
    {
        var clock = new FakeTimeProvider(Cut);
        var desk = Desk(clock: clock);
        IReadOnlyList<Finding> Read()
        {
            clock.Advance(TimeSpan.FromMinutes(30));
            return [.. Examined(Save(desk, [new TypedReading("GF-F", "390", Place.Unknown)]))];
        }

        Assert.Single(Read());
        Assert.Empty(Read());
    }

    [Theory]
    [InlineData("WW-A", "2.05", null, "slip.factor-10")] // a decimal point that slipped
    [InlineData("RG-T", "86.0", null, "step")]
    [InlineData("GF-F", "640", "read twice", "range.outside")]
    public void What_another_check_has_told_is_not_told_again_as_unusual(string tag, string value, string? why, string told)
    {
        var entry = Save(Desk(), [new TypedReading(tag, value, Place.Unknown) { Why = why }]);

        Assert.Contains(entry.Findings, f => f.Code == told && f.Point == tag);
        Assert.DoesNotContain(entry.Findings, f => f.Code == "examine.unusual");
    }

    [Fact]
    public void Of_two_readings_that_lie_apart_the_one_that_is_odd_is_not_doubted_alone()
    {
        var entry = Save(Desk(), [new TypedReading("GF-F", "390", Place.Unknown) { Second = "310" }]);

        Assert.Contains(entry.Findings, f => f is { Code: "twice", Point: "GF-F", Level: Level.Watch });
        Assert.DoesNotContain(entry.Findings, f => f.Code == "examine.unusual");
    }

    [Fact]
    public void Without_a_fit_nothing_is_examined_and_a_sentence_says_why()
    {
        var desk = Desk(withFit: false);

        Assert.Empty(Examined(Titration(desk, misread: 1.5)));
        Assert.StartsWith("not fitted yet: ", Examine.WhyNot(desk), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SL-T1=", "")] // one reading alone has nothing beside it
    [InlineData("WL-A=", "WL-B WL-C")] // half a titration is none
    [InlineData("", "SL-T1 SL-F1 LM-F1 LM-N1")] // nothing was taken
    [InlineData("LB-N=", "")] // a point that hardly ever changes, and has not
    public void What_cannot_be_compared_is_told_nothing(string taken, string notTaken)
    {
        var desk = Desk();
        TypedReading Again(string tag) => new(tag, Number(desk.State.Latest[tag].Value!.Value, desk.Site.FindPoint(tag)!), Place.Unknown);
        IEnumerable<TypedReading> readings = taken.Split('=', StringSplitOptions.RemoveEmptyEntries).Select(Again)
            .Concat(notTaken.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => new TypedReading(t, "-", Place.Unknown) { Why = "no time" }));

        Assert.Empty(Examined(Save(desk, [.. readings])));
    }

    [Fact]
    public void A_replay_of_quiet_days_asks_no_crew_for_more_than_its_budget()
    {
        var desk = Desk();

        var report = Replaying.Of(desk, Cut.AddDays(-2), Cut);

        Assert.True(report.Examined > 20);
        Assert.All(report.Shifts, s => Assert.False(s.OverBudget, $"{s.Shift}: {s.Demands} demands"));
    }

    [Fact]
    public void Limits_that_nobody_has_put_in_force_are_tried_on_the_past()
    {
        var desk = Desk();
        var (from, limit) = (Cut.AddDays(-3), 93.0);
        Assert.True(desk.Site.FindPoint("RG-T")!.Limits.WatchLow < limit - 3);
        var tried = desk.Site with { Points = [.. desk.Site.Points.Select(p => p.Tag == "RG-T" ? p with { Limits = p.Limits with { WatchLow = limit } } : p)] };

        var (now, then) = (Replaying.Of(desk, from, Cut, new ToTry(tried)), Replaying.Of(desk, from, Cut));

        var below = desk.Store.Series("RG-T", from, Cut).Count(v => v.Value < limit);
        Assert.InRange(below, 5, 100);
        Assert.Equal(("RG-T", 0, below), Assert.Single(now.Limits) is var row ? (row.Point, row.Then, row.Tried) : default);
        Assert.True(now.Shifts.Sum(s => s.Demands) > then.Shifts.Sum(s => s.Demands));
        Assert.Equal(then.Shifts, Replaying.Of(desk, from, Cut, new ToTry(desk.Site)).Shifts);
        Assert.Empty(then.Limits);
    }

    [Fact]
    public void What_other_days_teach_is_tried_on_the_past_and_put_in_force_by_nobody()
    {
        var desk = Desk(withFit: false);
        var (learned, mistake) = Fitting.Learn(desk, Full.Records.First().At, Cut.AddDays(-2));
        Assert.Null(mistake);

        var report = Replaying.Of(desk, Cut.AddDays(-2), Cut, new ToTry(Fit: learned));

        Assert.True(report.Examined > 20);
        Assert.Null(desk.State.Fit);
        Assert.NotNull(Fitting.Learn(desk, Cut.AddDays(-1), Cut).Mistake);
    }

    /// <summary>Nothing is examined in an upset, but who reads of too small a dose must see that screw and heat tell a larger one.</summary>
    [Fact]
    public void In_an_upset_a_dose_beyond_its_limit_says_what_other_ways_give()
    {
        var desk = Desk();
        Assert.Empty(Writing.BeginUpset(desk, desk.Now.AddMinutes(-5), "lime surge", Full.Desk.Site.People[0].Code).Mistakes);
        TypedReading As(string tag, string text) => new(tag, text, Place.Unknown);

        var saved = RecordEntry.Run(desk, new EntryRequest(Full.Desk.Site.People[0].Code, [As("SL-F1", "298"), As("LM-F1", "8.1"), As("LM-N1", "30"), As("SL-T1", "98.5"), As("GC-T2", "86")])).Record!;

        var dose = Assert.Single(((Entry)saved.Body).Findings, f => f.Point == "SL-CAO" && f.Code == "limit.watch-low").Text;
        Assert.Matches(@"below the watch limit 45\.0 kg/m3 \(but [4-7]\d\.\d kg/m3 by SL-CAOS and [4-7]\d\.\d kg/m3 by SL-CAOT\)$", dose);
        Assert.True(Examine.WasInUpset(desk, saved.Seq));
    }

    /// <summary>The line as it stood at the cut, at a terminal of its own.</summary>
    private static Desk Desk(bool withFit = true, FakeTimeProvider? clock = null)
    {
        var store = new InMemoryJournal();
        foreach (var r in Full.Records.Where(r => r.Entered <= Cut && (withFit || r.Body is not FitAdopted)))
        {
            store.Append(new RecordDraft(r.Body, r.Chain, r.At, r.Entered, r.Shift, r.By, r.Terminal));
        }

        var desk = new Desk(store, Full.Desk.Files, Full.Desk.Calculations, new InlineGuard(), clock ?? new FakeTimeProvider(Cut), "demo:test");
        desk.Follow();
        return desk;
    }

    /// <summary>The last white liquor titration once more, with end point B off by so much.</summary>
    private static Entry Titration(Desk desk, double misread, params string[] beside)
    {
        double Last(string tag) => desk.State.Latest[tag].Value!.Value;
        string[] typed = [$"WL-A={Text(Last("WL-A"))}", $"WL-B={Text(Last("WL-B") + misread)}", $"WL-C={Text(Last("WL-C"))}", .. beside];
        return Save(desk, [.. typed.Select(t => t.Split('=')).Select(t => new TypedReading(t[0], t[1], Place.Unknown))]);
    }

    private static Entry Save(Desk desk, IReadOnlyList<TypedReading> readings)
    {
        var written = RecordEntry.Run(desk, new EntryRequest(desk.Site.People[0].Code, readings));
        return Assert.IsType<Entry>((written.Record ?? throw new InvalidOperationException(string.Join("; ", written.Mistakes))).Body);
    }

    private static IEnumerable<Finding> Examined(Entry entry) => entry.Findings.Where(f => f.Code.StartsWith("examine.", StringComparison.Ordinal));

    private static string Number(double value, Point point) => value.ToString("F" + point.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Text(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);
}
