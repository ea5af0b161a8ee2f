namespace Logbook.Handover.Tests;

public class WeekLoadTests
{
    /// <summary>By hand: a night of twelve hours has twelve line rounds, three field walks and one of samples, 25 minutes each as the files have it: 16 x 25 = 400 of 720 minutes.</summary>
    [Fact]
    public void The_week_says_what_the_rounds_take_of_each_shift()
    {
        using var line = new SmallLine("2026-11-24T06:00-05:00");
        line.Clock("2026-11-25T08:00-05:00");

        Assert.Contains("43 missed; load 400 min of rounds, 56 % OF THE SHIFT; ", Night(line), StringComparison.Ordinal);
    }

    private static string Night(SmallLine line) =>
        WeekNote.Of(line.Desk, SmallLine.At("2026-11-25T06:00-05:00")).Sections.Single(s => s.Id == "shifts").Lines.Single(l => l.Label.StartsWith("Tue 24 N", StringComparison.Ordinal)).Text;
}
