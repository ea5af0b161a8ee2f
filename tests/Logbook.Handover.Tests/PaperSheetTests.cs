using Logbook.Testing;

namespace Logbook.Handover.Tests;

public class PaperSheetTests
{
    [Fact]
    public void A_sheet_has_every_point_of_the_round_in_walking_order_with_room_for_its_value()
    {
        var site = Some.Site;

        var lines = PaperSheet.Of(site, site.FindRound("hourly")!, Some.Morning).Split('\n');

        Assert.Equal("SL-T1 SL-F1 LM-F1 LM-CAO", string.Join(" ", lines.Where(l => l.Contains("____________", StringComparison.Ordinal) && !l.StartsWith("Walked", StringComparison.Ordinal)).Select(l => l.Split(' ')[0])));
        Assert.All(lines, l => Assert.InRange(l.Length, 0, 72));
        Assert.Contains(lines, l => l.Contains("watch below 240, watch above 340", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("1 no time", StringComparison.Ordinal));
    }
}
