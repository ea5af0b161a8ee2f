using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Demo.Tests;

/// <summary>What the demo's people do when nothing is planted.</summary>
public sealed class HonestWorkTests
{
    private static readonly DemoRun _week = DemoRun.Week;

    /// <summary>Whole shifts after the first and before anything of the last day was planted.</summary>
    private static readonly IReadOnlyList<ShiftInstance> _quiet =
    [
        .. Calendar.Shifts(_week.Desk.Site, _week.Until.AddDays(-_week.Days), _week.Until)
            .Where(s => s.Start > _week.Until.AddDays(-_week.Days) && s.End < _week.Until.AddHours(-26)),
    ];

    [Fact]
    public void One_seed_and_one_end_give_the_same_bytes()
    {
        var one = DemoRun.Make("2026-11-25T03:40:00-05:00", 2, 9);
        var two = DemoRun.Make("2026-11-25T03:40:00-05:00", 2, 9);
        var other = DemoRun.Make("2026-11-25T03:40:00-05:00", 2, 10);

        Assert.Equal(one.Desk.Store.Head, two.Desk.Store.Head);
        Assert.Equal(one.Planted, two.Planted);
        Assert.NotEqual(one.Desk.Store.Head, other.Desk.Store.Head);
    }

    [Fact]
    public void A_day_has_dozens_of_records_and_the_chain_holds()
    {
        Assert.InRange(_week.Desk.Store.Head.Seq / (double)_week.Days, 45, 90);
        Assert.True(_week.Desk.Store.Verify().Ok);
    }

    // What rests while the mud filter is washed is said at each wash, by its nature; the rest is chance at the limits. A number to hold.
    [Fact]
    public void Honest_rounds_raise_two_findings_a_shift_at_most_on_average_and_none_that_is_urgent()
    {
        var quiet = _quiet.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        var findings = _week.Findings.Where(f => quiet.Contains(f.Record.Shift) && f.Finding.Code != "calculation.resting").ToList();

        Assert.True(_quiet.Count >= 10);
        Assert.True(findings.Count <= 2 * _quiet.Count, string.Join('\n', findings.Select(f => f.Finding.Text)));
        Assert.DoesNotContain(findings, f => f.Finding.Level == Level.Urgent);
        Assert.All(findings.GroupBy(f => f.Record.Shift, StringComparer.Ordinal), shift => Assert.True(shift.Count() <= 6, string.Join('\n', shift.Select(f => f.Finding.Text))));
    }

    [Fact]
    public void No_honest_shift_misses_a_check()
    {
        var missed = Audit.Between(_week.Desk, _quiet[0].Start, _quiet[^1].End).Where(f => f.Flag == "missed");

        Assert.Empty(missed.Select(f => f.Text));
    }

    [Fact]
    public void Now_and_then_a_round_is_late_and_a_reading_is_not_taken_with_its_reason()
    {
        var flags = Audit.Between(_week.Desk, _quiet[0].Start, _quiet[^1].End);

        Assert.InRange(flags.Count(f => f.Flag == "late"), 1, 20);
        Assert.InRange(flags.Count(f => f.Flag == "not-taken"), 1, 30);
        Assert.All(_week.Records.Select(r => r.Body).OfType<Entry>().SelectMany(e => e.Readings).Where(r => r.NotTaken), r => Assert.False(string.IsNullOrEmpty(r.Why)));
    }

    [Fact]
    public void Rounds_are_typed_by_people_of_the_crew_that_is_due()
    {
        foreach (var record in _week.Records.Where(r => r.Body is Entry))
        {
            var due = Calendar.ShiftAt(_week.Desk.Site, record.Entered).Crew;
            Assert.Equal(due, _week.Desk.Site.FindPerson(record.By)!.Crew);
        }
    }

    [Fact]
    public void Field_walks_are_walked_first_and_typed_later()
    {
        var walks = _week.Records.Where(r => r.Body is Entry { Round: "field" }).ToList();

        Assert.NotEmpty(walks);
        Assert.All(walks, w =>
        {
            var entry = (Entry)w.Body;
            Assert.True(entry.WalkStart < entry.WalkEnd && entry.WalkEnd < w.Entered);
        });
    }

    [Fact]
    public void Every_read_point_of_the_site_has_a_value_in_the_journal()
    {
        var latest = _week.Desk.State.Latest;

        Assert.Empty(_week.Desk.Site.Points.Where(p => p.Kind == PointKind.Read && !latest.ContainsKey(p.Tag)).Select(p => p.Tag));
    }

    // 56.077 / 61.97854 = 0.90478 kg CaO for each kg of carbonate (as Na2O) turned into hydroxide: IUPAC atomic weights.
    [Fact]
    public void Typed_lime_and_typed_titrations_agree_over_the_week()
    {
        double Mean(string tag) => _week.Desk.Store.Series(tag, _quiet[0].Start, _quiet[^1].End).Where(v => v.Value is not null).Average(v => v.Value!.Value);
        double PerMl(string tag) => Mean(tag) * 0.5 / 5;

        // mol/L at the laboratory's 25 degC; a hot cubic metre holds 3.5 % less of everything.
        var carbonate = (PerMl("GL-C") - PerMl("GL-B")) / 2 * (1 / 1.0345);
        var shrunk = PerMl("GL-C") / PerMl("WL-C");
        var carbonateLeft = (PerMl("WL-C") - PerMl("WL-B")) / 2 * shrunk / 1.0345;
        var reacted = (carbonate - carbonateLeft) * 56.077;
        var fed = Mean("LM-F1") * 1000 / Mean("SL-F1") * Mean("LM-CAO") / 100;

        Assert.InRange(reacted / fed, 0.96, 1.02);
    }
}
