namespace Logbook.Handover.Tests;

/// <summary>What was opened before the stretch of an audit and was open in it could hurt in it.</summary>
public sealed class OpenWhenTheSpanBeganTests
{
    [Fact]
    public void A_lock_and_acid_from_before_the_span_belong_to_it_until_they_end()
    {
        using var line = new SmallLine("2026-09-24T08:00-04:00");
        var over = line.Carry("isolation", "slaker", "rake");
        var locked = line.Carry("isolation", "mud-pump", "seal change");
        line.Carry("action", "slaker", "tighten the bolt");
        var acid = line.State("wl-filter", "acid");
        line.Clock("2026-11-24T10:00-05:00").Close(over, "rake is back");
        line.Clock("2026-11-24T20:00-05:00");
        var rinsed = line.State("wl-filter", "running");
        line.Clock("2026-11-25T06:00-05:00");

        List<string> Hazards(string from, string to) => [.. Audit.Between(line.Desk, SmallLine.At(from), SmallLine.At(to), "hazard").Select(f => f.Text)];

        Assert.Equal(
        [
            $"isolation, Lime mud pump: seal change. Opened Thu 24 Sep 08:00 Operator one (#{locked}); OPEN at Wed 25 Nov 06:00",
            $"acid, White liquor filter. In since Thu 24 Sep 08:00, told by Operator one (#{acid}); running Tue 24 Nov 20:00 Operator one (#{rinsed})",
        ],
            Hazards("2026-11-24T19:00-05:00", "2026-11-25T06:00-05:00"));
        Assert.Equal([$"isolation, Lime mud pump: seal change. Opened Thu 24 Sep 08:00 Operator one (#{locked}); OPEN at Wed 25 Nov 06:00"], Hazards("2026-11-24T21:00-05:00", "2026-11-25T06:00-05:00"));
    }
}
