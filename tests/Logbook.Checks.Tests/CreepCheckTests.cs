using System.Globalization;
using Logbook.Journal;

namespace Logbook.Checks.Tests;

/// <summary>A round every two hours: the agitator's current, about 92 A, on a display of 1 A.</summary>
public sealed class CreepCheckTests
{
    private readonly Line _line = new();
    private int _round;

    /// <summary>Rounds with the current as far from the usual as is said for each of them; gives what was told of a drift.</summary>
    private List<Finding> Rounds(int count, Func<int, double> away, params string[] beside)
    {
        var told = new List<Finding>();
        for (var i = 0; i < count; i++)
        {
            _round++;
            var scatter = (_round * 7 % 5) - 2;
            var typed = Math.Round(92 + scatter + away(i)).ToString(CultureInfo.InvariantCulture);
            told.AddRange(_line.Save([$"SL-I={typed}", .. beside]).Findings.New().Where(f => f.Code == CreepCheck.Code));
            _line.Later(2);
        }

        return told;
    }

    private bool Stands => _line.Desk.State.Findings.GetValueOrDefault("SL-I")?.Exists(f => f.Finding.Code == CreepCheck.Code) == true;

    [Fact]
    public void Scatter_alone_is_no_drift() => Assert.Empty(Rounds(300, _ => 0));

    [Fact]
    public void A_slow_drift_is_told_once_as_a_note_and_stands_until_the_point_is_back()
    {
        Rounds(150, _ => 0);

        var told = Assert.Single(Rounds(40, i => 0.25 * i));

        Assert.Equal((Level.Note, "SL-I"), (told.Level, told.Point));
        Assert.Contains("Slaker agitator current (SL-I) has moved slowly up", told.Text, StringComparison.Ordinal);
        Assert.Contains("usually 92 A", told.Text, StringComparison.Ordinal);
        Assert.Contains("The plant was moved, or the instrument drifts", told.Text, StringComparison.Ordinal);
        Assert.True(Stands);
        Assert.Empty(Rounds(170, _ => 0)); // until the two weeks before are sound again
        Assert.False(Stands);
        Assert.Contains("slowly down", Assert.Single(Rounds(40, i => -0.25 * i)).Text, StringComparison.Ordinal);
    }

    /// <summary>The line through the readings since the point is away: Theil and Sen's, as <c>trend</c> gives it.</summary>
    [Fact]
    public void A_limit_that_the_drift_heads_for_is_told_with_its_hours()
    {
        Rounds(150, _ => 0);
        var told = Assert.Single(Rounds(12, i => i));
        Assert.Contains("4 readings since then: no trend shown", told.Evidence, StringComparer.Ordinal);
        Rounds(8, i => 12 + i);

        // One ampere in two hours, and 11 of the 28 to the limit are left: 22 h.
        var stands = _line.Desk.State.Findings["SL-I"].Find(f => f.Finding.Code == CreepCheck.Code)!.Finding.Text;
        Assert.Contains("Since then rising 0.5 A an hour; reaches the upper watch limit in about 22 h (", stands, StringComparison.Ordinal);
        Assert.Contains(") if nothing is changed. The plant was moved, or the instrument drifts", stands, StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_something_urgent_no_drift_is_told()
    {
        Rounds(150, _ => 0);

        Assert.Empty(Rounds(40, i => 0.25 * i, "SL-T1=103.5"));
        Assert.Single(Rounds(12, _ => 10, "SL-T1=100.1"));
    }

    [Fact]
    public void Files_put_in_force_or_equipment_that_was_started_make_the_history_begin_anew()
    {
        Rounds(150, _ => 0);
        Assert.NotNull(Writing.ChangeState(_line.Desk, "slaker", "running", _line.Desk.Now, null, "op1").Record);

        Assert.Empty(Rounds(40, i => 0.25 * i));
    }
}
