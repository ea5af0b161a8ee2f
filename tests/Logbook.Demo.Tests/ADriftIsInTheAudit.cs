using Logbook.Handover;

namespace Logbook.Demo.Tests;

/// <summary>A transmitter that drifts by less than its own uncertainty in a day: no entry can tell, the audit of the week does.</summary>
public sealed class ADriftIsInTheAudit
{
    private static readonly DemoRun Drifting = DemoRun.Long(12, 3);

    [Fact]
    public void It_names_the_instrument_since_when_and_by_how_much()
    {
        var planted = Drifting.Event("drifting-transmitter");

        var flag = Assert.Single(Flags(Drifting));

        Assert.Equal(("off-laboratory", "WW-D"), (flag.Flag, flag.Point));
        Assert.InRange(flag.At, planted.At.AddDays(-1), planted.At.AddDays(2));
        var by = double.Parse(flag.Text.Split("about ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(by, 0.75 * 4, 0.75 * 8); // 0.75 kg/m3 a day for 6.5 days, seen over the last shifts
        Assert.Contains("kg/m3 too high by the laboratory, since ", flag.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_it_stand_the_figures_what_else_explains_it_and_what_would_tell()
    {
        var evidence = Assert.Single(Flags(Drifting)).Evidence;

        Assert.StartsWith("Total titratable alkali of weak wash (WW-TTA), by WW-D against the laboratory: ", evidence[0], StringComparison.Ordinal);
        Assert.Contains(evidence, e => e.Contains("comparisons since then", StringComparison.Ordinal) && e.Contains(" against ", StringComparison.Ordinal));
        Assert.Contains(evidence, e => e.StartsWith("Also seen when: ", StringComparison.Ordinal) && e.Contains("other salts", StringComparison.Ordinal));
        Assert.Contains(evidence, e => e.StartsWith("Would settle: ", StringComparison.Ordinal));
        Assert.Contains("Not a finding about anyone.", evidence, StringComparer.Ordinal);
    }

    [Fact]
    public void It_is_in_the_note_of_the_week() =>
        Assert.Contains(WeekNote.Of(Drifting.Desk, Drifting.Until).Sections.Single(s => s.Id == "look-at").Lines, l => l.Label == "off laboratory" && l.Text.Contains("WW-D", StringComparison.Ordinal));

    [Fact]
    public void It_is_told_of_those_days_also_when_nothing_was_compared_since() =>
        Assert.Equal(["WW-D"], Logbook.Checks.Examining.AgainstLaboratory.Find(Drifting.Desk, Drifting.Until.AddDays(-7), Drifting.Until.AddDays(6)).Select(d => d.Point.Tag), StringComparer.Ordinal);

    [Theory, InlineData(1), InlineData(2)]
    public void Where_nothing_drifts_no_instrument_is_named(int seed) => Assert.Empty(Flags(DemoRun.Long(9, seed)));

    private static IReadOnlyList<AuditFlag> Flags(DemoRun run) => Audit.Between(run.Desk, run.Until.AddDays(-7), run.Until, "off-laboratory");
}
