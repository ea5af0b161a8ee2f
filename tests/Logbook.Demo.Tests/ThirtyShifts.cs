using Logbook.Checks.Examining;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Demo.Tests;

/// <summary>What thirty shifts of the demo ask of their crews, its bad last night among them.</summary>
public sealed class ThirtyShifts
{
    /// <summary>Findings from watch on, one for each excursion: what waits for somebody to do something.</summary>
    private const int MostDemands = 12;

    private static readonly DemoRun Run = DemoRun.Make("2026-11-25T10:14:00-05:00", 20, 4);

    [Fact]
    public void No_shift_of_thirty_has_more_than_twelve_demands()
    {
        var shifts = Replaying.Of(Run.Desk, Run.Until.AddDays(-15), Run.Until).Shifts;

        Assert.True(shifts.Count >= 30);
        Assert.All(shifts, s => Assert.True(s.Demands <= MostDemands, $"{s.Shift}: {s.Demands} demands"));
        Assert.Contains(shifts, s => s.Demands > 3); // the bad night does ask for something
    }

    [Fact]
    public void No_field_walk_typed_later_is_flagged_as_copied_or_too_smooth()
    {
        var walks = Run.Records.Where(r => r.Body is Entry { WalkStart: not null }).ToList();
        var flags = Audit.Between(Run.Desk, Run.Until.AddDays(-20), Run.Until, "same-as-earlier", "varies-less");

        Assert.True(walks.Count > 60);
        Assert.DoesNotContain(flags, f => walks.Exists(w => w.Seq == f.Seq) || f.Round == "field");
    }
}
