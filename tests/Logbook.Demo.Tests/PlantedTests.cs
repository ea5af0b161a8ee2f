using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Demo.Tests;

/// <summary>What was planted must show where the list says, at whatever hour the demo is made.</summary>
public sealed class PlantedTests
{
    // Middle of a day shift, just after a shift change, before dawn, on the day after the clocks go back.
    public static TheoryData<string, int> Ends => new()
    {
        { "2026-11-25T10:14:00-05:00", 3 },
        { "2026-11-25T19:03:00-05:00", 4 },
        { "2026-07-02T08:31:00Z", 5 },
        { "2026-11-02T02:50:00-05:00", 6 },
    };

    private static readonly Dictionary<(string, int), DemoRun> _runs = [];

    private static DemoRun Run(string until, int seed)
    {
        lock (_runs)
        {
            return _runs.TryGetValue((until, seed), out var run) ? run : _runs[(until, seed)] = DemoRun.Make(until, 4, seed);
        }
    }

    /// <summary>The notes of the running shift and of the one before.</summary>
    private static IEnumerable<HandoverNote> LastNotes(DemoRun run)
    {
        var running = Calendar.ShiftAt(run.Desk.Site, run.Until);
        return [HandoverNote.Of(run.Desk, running.Start.AddMinutes(-1)), HandoverNote.Of(run.Desk, run.Until)];
    }

    private static string Words(DemoRun run, string section) =>
        string.Join('\n', LastNotes(run).SelectMany(n => n.Sections).Where(s => s.Id == section).SelectMany(s => s.Lines).Select(l => $"{l.Label} {l.Text}"));

    [Theory, InlineData("17:59"), InlineData("18:02"), InlineData("19:00"), InlineData("06:01")]
    public void The_demo_can_begin_just_before_a_shift_change_as_well(string time) =>
        Assert.NotEmpty(DemoRun.Make($"2026-11-13T{time}:00-05:00", 2, 1).Planted);

    [Theory, MemberData(nameof(Ends))]
    public void Everything_is_planted_within_the_last_two_shifts_but_what_takes_longer(string until, int seed)
    {
        var run = Run(until, seed);
        var before = Calendar.ShiftAt(run.Desk.Site, Calendar.ShiftAt(run.Desk.Site, run.Until).Start.AddMinutes(-1));

        string[] names =
        [
            "acid-wash", "copied-walk", "emergency-relief", "eyewash-out", "fault-again", "missed-round", "near-boil-over", "order-unread", "overdue-hose", "person-inside",
            "reservation", "stuck-transmitter", "titration-corrected", "titration-error", "trip-defeated", "upset",
        ];
        Assert.Equal(names, run.Planted.Select(e => e.Name).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.All(
            run.Planted.Where(e => e.Name is "acid-wash" or "eyewash-out" or "missed-round" or "near-boil-over" or "titration-error"),
            e => Assert.InRange(e.At, before.Start, run.Until));
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_misread_titration_stands_out_by_the_causticity_that_it_gives(string until, int seed)
    {
        var run = Run(until, seed);
        var misread = run.Event("titration-error");
        var entry = run.Records.Single(r => r.Seq == misread.Seq);

        Assert.Contains(((Entry)entry.Body).Findings, f => f.Point == "WL-CE" && f.Code == "limit.watch-high");
        Assert.Contains(NowView.Of(run.Desk).StandsOut, f => f.Seq == misread.Seq && f.Finding.Point == "WL-CE");
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_corrected_titration_is_in_the_audit_with_both_values(string until, int seed)
    {
        var run = Run(until, seed);
        var corrected = Assert.Single(Audit.Between(run.Desk, run.Until.AddDays(-2), run.Until), f => f.Flag == "corrected");

        Assert.Equal("WL-B", corrected.Point);
        Assert.Contains($"#{run.Event("titration-corrected").Seq}", corrected.Text, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_stuck_transmitter_is_found_and_stands_out_now(string until, int seed)
    {
        var run = Run(until, seed);

        Assert.Contains(NowView.Of(run.Desk).StandsOut, f => f.Finding is { Code: "stuck", Point: "RG-D" });
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_missed_round_is_in_the_audit_and_in_the_notes(string until, int seed)
    {
        var run = Run(until, seed);
        var missed = run.Event("missed-round");

        Assert.Contains(Audit.Between(run.Desk, run.Until.AddDays(-1), run.Until), f => f.Flag == "missed" && f.Round == "hourly" && f.At == missed.At);
        Assert.Contains("Line round", Words(run, "not-done"), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_near_boil_over_is_urgent_and_is_recovered_from(string until, int seed)
    {
        var run = Run(until, seed);
        var peak = run.Event("near-boil-over");
        var margins = run.Desk.Store.Series("SL-MARGIN", peak.At.AddHours(-1), peak.At.AddHours(2)).Select(v => v.Value!.Value).ToList();

        Assert.Contains(run.Findings, f => f.Record.Seq == peak.Seq && f.Finding is { Level: Level.Urgent, Point: "SL-MARGIN" });
        Assert.InRange(margins.Min(), 0, 1);
        Assert.True(margins[0] > 3 && margins[^1] > 3);
        Assert.Contains("SL-MARGIN", Words(run, "not-normal"), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_eyewash_is_a_hazard_now_and_in_the_notes(string until, int seed)
    {
        var run = Run(until, seed);

        Assert.Contains(NowView.Of(run.Desk).Hazards, h => h.Word == "out" && h.Seq == run.Event("eyewash-out").Seq);
        Assert.Contains("yewash", Words(run, "can-hurt"), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_acid_wash_is_a_hazard_now_and_brings_its_caution(string until, int seed)
    {
        var run = Run(until, seed);

        Assert.Equal("acid", run.Desk.State.StateOf("gl-filter"));
        Assert.Contains(NowView.Of(run.Desk).Hazards, h => h.Word == "acid");
        Assert.Contains(HandoverNote.Of(run.Desk, run.Until).Cautions, c => c.Text.Contains("Acid", StringComparison.OrdinalIgnoreCase));
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_temporary_hose_is_past_its_date(string until, int seed)
    {
        var run = Run(until, seed);
        var hose = Assert.Single(NowView.Of(run.Desk).Carried, i => i.Id == run.Event("overdue-hose").Seq);

        Assert.True(hose.Until < run.Until);
        Assert.Contains("PAST", Words(run, "not-normal"), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_defeated_trip_is_a_hazard_and_brings_its_own_check(string until, int seed)
    {
        var run = Run(until, seed);
        var trip = run.Event("trip-defeated");

        Assert.Contains(NowView.Of(run.Desk).Hazards, h => h.Word == "defeated" && h.Seq == trip.Seq);
        Assert.Contains(DueList.Between(run.Desk, trip.At, run.Until), c => c.Round == InsteadOfTrips.RoundId(trip.Seq!.Value) && c.Point == "SL-F1");
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_person_in_the_tank_is_first_of_what_can_hurt(string until, int seed)
    {
        var run = Run(until, seed);

        Assert.Equal(run.Event("person-inside").Seq, NowView.Of(run.Desk).Hazards[0].Seq);
        Assert.Contains("Counted 1", NowView.Of(run.Desk).Hazards[0].Text, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_audit_shows_the_upset_the_copied_walk_and_the_fault_that_came_again(string until, int seed)
    {
        var run = Run(until, seed);
        var flags = Audit.Between(run.Desk, run.Until.AddDays(-3), run.Until);

        Assert.Contains(flags, f => f.Flag == "upset" && f.At >= run.Event("upset").At && f.At < run.Event("upset").At.AddHours(2));
        Assert.Contains(flags, f => f.Flag == "same-as-earlier" && f.Seq == run.Event("copied-walk").Seq);
        Assert.Contains(flags, f => f.Flag == "recurrent" && f.Text.Contains("3rd time", StringComparison.Ordinal) && f.At == run.Event("fault-again").At);
        Assert.Contains(flags, f => f.Flag == "order-unread" && f.Seq == run.Event("order-unread").Seq);
    }

    [Theory, MemberData(nameof(Ends))]
    public void No_honest_walk_of_the_demo_looks_copied_or_too_smooth(string until, int seed)
    {
        var run = Run(until, seed);
        var flags = Audit.Between(run.Desk, run.Until.AddDays(-4), run.Until, "same-as-earlier", "varies-less");

        Assert.All(flags, f => Assert.Equal(run.Event("copied-walk").Seq, f.Seq));
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_running_shift_has_a_round_left_to_do(string until, int seed)
    {
        var run = Run(until, seed);

        Assert.Contains(NowView.Of(run.Desk).Rounds, r => r.State is CheckState.Due or CheckState.Missed && r.Done < r.Of);
    }

    [Theory, MemberData(nameof(Ends))]
    public void Every_shift_change_is_signed_and_somebody_holds_the_line(string until, int seed)
    {
        var run = Run(until, seed);
        var ended = Calendar.Shifts(run.Desk.Site, run.Until.AddDays(-3), Calendar.ShiftAt(run.Desk.Site, run.Until).Start).ToList();
        var taken = run.Records.Select(r => r.Body).OfType<HandoverAccepted>().Select(a => a.Note.Shift).ToList();

        Assert.All(ended, shift => Assert.Single(taken, id => id == shift.Id));
        Assert.True(NowView.Of(run.Desk).Held);
        Assert.DoesNotContain(run.Desk.State.Line.ToCountersign, t => t.Named is null);
        // By itself: the same digits may stand inside a computed number.
        Assert.DoesNotMatch($"(?<![0-9.]){DemoSite.Pin}(?![0-9])", string.Join('\n', run.Records.Select(r => System.Text.Encoding.UTF8.GetString(r.Bytes.Span))));
    }

    [Theory, MemberData(nameof(Ends))]
    public void The_emergency_relief_is_in_the_audit_and_the_reservation_on_the_note(string until, int seed)
    {
        var run = Run(until, seed);
        var reserved = run.Event("reservation");

        Assert.Contains(Audit.Between(run.Desk, run.Until.AddDays(-2), run.Until), f => f.Flag == "emergency" && f.Seq == run.Event("emergency-relief").Seq);
        Assert.Contains(HandoverNote.Of(run.Desk, Calendar.ShiftAt(run.Desk.Site, reserved.At).Start).OwnWords, l => l.Label == "reservation");
    }
}
