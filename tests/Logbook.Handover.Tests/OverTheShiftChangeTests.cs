using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>A shift change takes nothing away that was known a minute before: a look, a check that was not made, the next one, what ended.</summary>
public sealed class OverTheShiftChangeTests
{
    private static readonly (string, string)[] Bypass = [("instead", "level by hand"), ("allowed-by", "eng1"), ("point", "WT-L"), ("every", "1h")];

    private static string Hazard(SmallLine line, string word) => Assert.Single(NowView.Of(line.Desk).Hazards, h => h.Word == word).Text;

    private static IReadOnlyList<NoteLine> InNote(SmallLine line, string section) => HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == section).Lines;

    private static void Look(SmallLine line, long id) =>
        Assert.Empty(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(id, true, null, new Dictionary<string, string>(StringComparer.Ordinal), null), "op1").Mistakes);

    [Fact]
    public void A_look_just_before_the_change_stays_a_look_beside_people_inside_too()
    {
        using var line = new SmallLine("2026-11-24T16:00-05:00");
        var permit = line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T23:00-05:00"), ("number", "4417"), ("inside", "2"));
        Look(line.Clock("2026-11-24T18:57-05:00"), permit);

        line.Clock("2026-11-24T19:00:01-05:00");

        Assert.Contains("Looked at 18:57 Operator one, not since the shift change.", Hazard(line, "inside"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_audit_tells_of_a_look_that_was_missed_once_its_shift_has_ended()
    {
        using var line = new SmallLine("2026-11-24T16:00-05:00");
        var locked = line.Carry("isolation", "mud-pump", "seal change");
        bool Told() => Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), "not-seen").Any(f => f.Seq == locked);

        line.Clock("2026-11-24T19:01-05:00");
        Assert.False(Told());
        line.Clock("2026-11-25T06:59-05:00");
        Assert.False(Told());
        line.Clock("2026-11-25T07:01-05:00");
        Assert.True(Told());
        Look(line, locked);
        Assert.False(Told());
    }

    [Fact]
    public void A_check_instead_of_a_trip_that_is_not_made_is_told_over_the_change_and_the_next_one_comes()
    {
        using var line = new SmallLine("2026-11-24T16:00-05:00");
        var trip = line.Carry("bypass", "slaker", "level trip bridged", SmallLine.At("2026-11-25T04:00-05:00"), Bypass);
        line.Clock("2026-11-24T17:20-05:00").Record(null, "WT-L=50.0");

        line.Clock("2026-11-24T18:30-05:00");
        Assert.DoesNotContain("NOT READ", Hazard(line, "defeated"), StringComparison.Ordinal);
        line.Clock("2026-11-24T19:00:30-05:00");

        Assert.Contains("NOT READ for 1 h 40 min, due each 1 h.", Hazard(line, "defeated"), StringComparison.Ordinal);
        Assert.Contains(InNote(line, "can-hurt"), l => l.Text.Contains("NOT READ for 1 h 40 min, due each 1 h.", StringComparison.Ordinal));
        Assert.Contains(InNote(line, "coming"), l => l.Label == "19:00" && l.Text == $"WT-L by hand instead of the trip, then each 1 h (#{trip})");
        Assert.Equal(CheckState.Due, Assert.Single(NowView.Of(line.Desk).Instead).State);
        line.Clock("2026-11-24T19:10-05:00").Record(null, "WT-L=50.0");
        Assert.DoesNotContain("NOT READ", Hazard(line, "defeated"), StringComparison.Ordinal);
        var next = Assert.Single(NowView.Of(line.Desk).Instead);
        Assert.Equal((CheckState.Coming, SmallLine.At("2026-11-24T20:00-05:00")), (next.State, next.DueAt));
    }

    [Fact]
    public void A_check_that_was_never_made_is_told_from_when_the_trip_was_defeated()
    {
        using var line = new SmallLine("2026-11-24T18:00-05:00");
        line.Carry("bypass", "slaker", "level trip bridged", SmallLine.At("2026-11-25T04:00-05:00"), Bypass);

        line.Clock("2026-11-24T19:20-05:00");

        Assert.Contains("WT-L has not been read since. NOT READ for 1 h 20 min, due each 1 h.", Hazard(line, "defeated"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_that_was_made_early_in_its_window_is_not_asked_for_again()
    {
        using var line = new SmallLine("2026-11-24T16:00-05:00");
        line.Carry("bypass", "slaker", "level trip bridged", SmallLine.At("2026-11-25T04:00-05:00"), Bypass);
        line.Clock("2026-11-24T16:50-05:00").Record(null, "WT-L=50.0");

        Assert.Equal(SmallLine.At("2026-11-24T18:00-05:00"), Assert.Single(InsteadOfTrips.Next(line.Desk)).DueAt);
    }

    [Fact]
    public void What_could_hurt_and_ended_in_the_shift_is_a_short_line()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var locked = line.Carry("isolation", "mud-pump", "seal change");
        var wash = line.Carry("wash", "wl-filter", "acid wash of the cloths");
        var bolt = line.Carry("action", "classifier", "tighten the guard bolt");
        line.State("wl-filter", "acid");
        line.Clock("2026-11-24T14:20-05:00");
        var unlocked = line.Close(locked, "seal changed, locks off");
        line.Close(bolt, "tightened");
        var rinsed = line.State("wl-filter", "running");
        var washed = line.Close(wash, "rinsed, pH 7");

        Assert.Equal(
        [
            $"14:20 isolation, Lime mud pump: seal changed, locks off. Operator one (#{unlocked})",
            $"14:20 acid, White liquor filter: running since 14:20. Operator one (#{rinsed})",
            $"14:20 wash, White liquor filter: rinsed, pH 7. Operator one (#{washed})",
        ],
            InNote(line, "can-hurt").Where(l => l.Label == "ended").Select(l => l.Text), StringComparer.Ordinal);
        line.Clock("2026-11-24T19:30-05:00");
        Assert.DoesNotContain(HandoverNote.Of(line.Desk, line.Desk.Now).Sections[0].Lines, l => l.Label == "ended");
    }

    [Fact]
    public void Acid_that_is_told_once_more_is_in_since_the_first_time()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.State("wl-filter", "acid", "cloths");
        line.Clock("2026-11-24T11:00-05:00").State("wl-filter", "acid");

        Assert.Contains("in acid since 08:00, cloths.", Hazard(line, "acid"), StringComparison.Ordinal);
        line.State("wl-filter", "running");
        line.Clock("2026-11-24T12:00-05:00").State("wl-filter", "acid");
        Assert.Contains("in acid since 12:00", Hazard(line, "acid"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_runs_against_an_open_acid_wash_or_with_people_inside_is_told_at_once()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.State("wl-filter", "running");
        line.Carry("wash", "wl-filter", "acid wash of the cloths");
        Assert.Null(YetRecorded.Warning(line.Desk, "wl-filter"));
        line.State("wl-filter", "running");
        Assert.Contains("has an open acid wash", YetRecorded.Warning(line.Desk, "wl-filter"), StringComparison.Ordinal);
        Assert.Contains("YET RECORDED AS RUNNING since 08:00", Hazard(line, "acid"), StringComparison.Ordinal);

        line.Carry("permit", "mud-pump", "cleaning the casing", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "1"));
        Assert.Null(YetRecorded.Warning(line.Desk, "mud-pump"));
        line.State("mud-pump", "starting");
        Assert.Contains("YET RECORDED AS STARTING since 08:00", YetRecorded.Warning(line.Desk, "mud-pump"), StringComparison.Ordinal);
        Assert.Contains("YET RECORDED AS STARTING", Hazard(line, "inside"), StringComparison.Ordinal);
    }

    [Fact]
    public void Closing_an_acid_wash_says_what_is_still_recorded_as_in_acid()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var pins = new Pins(new PinsInMemory(), rounds: 1);
        pins.Set("op1", "274951");
        var sign = new SignWith(pins, _ => "274951");
        var wash = line.Carry("wash", "wl-filter", "acid wash of the cloths");
        var acid = line.State("wl-filter", "acid");

        var closed = SignedWriting.Close(line.Desk, sign, new CarryClosed(wash, "done"), "op1");

        Assert.NotNull(closed.Record);
        Assert.Equal($"STILL RECORDED AS IN ACID: White liquor filter since 08:00 (#{acid}); once it is rinsed say of wl-filter that it is running, or what it does then", closed.Beside);
        line.State("wl-filter", "running");
        Assert.Null(SignedWriting.Close(line.Desk, sign, new CarryClosed(line.Carry("wash", "wl-filter", "acid wash of the cloths"), "done"), "op1").Beside);
    }

    [Fact]
    public void What_is_prepared_again_keeps_the_lines_of_the_first_time_unless_they_are_dropped()
    {
        using var flow = new FlowLine("2026-11-24T18:30-05:00").HeldBy("op1");
        flow.Line.Carry("isolation", "mud-pump", "seal change");
        Assert.NotNull(flow.Prepare("op1", "bowl may climb").Record);
        PrepareRequest Again(params string[] words) => new("op1", FlowLine.All("checked"), [], words);

        var again = Preparing.Prepare(flow.Desk, flow.Sign(), Again("sticking valve"));

        var body = (HandoverPrepared)again.Record!.Body;
        Assert.Equal(["if it turns, then call instrument duty"], body.IfThen, StringComparer.Ordinal);
        Assert.Equal(["bowl may climb", "sticking valve"], body.Words, StringComparer.Ordinal);
        Assert.Contains("kept of what was prepared before: if it turns, then call instrument duty; bowl may climb", again.Beside, StringComparison.Ordinal);
        Assert.Single(Preparing.Prepare(flow.Desk, flow.Sign(), Again() with { Anew = true }).Mistakes);
        var anew = Preparing.Prepare(flow.Desk, flow.Sign(), Again() with { Anew = true, IfThen = ["if it leaks, then call"] });
        Assert.Equal(["if it leaks, then call"], ((HandoverPrepared)anew.Record!.Body).IfThen, StringComparer.Ordinal);
        Assert.Empty(((HandoverPrepared)anew.Record!.Body).Words);
    }
}
