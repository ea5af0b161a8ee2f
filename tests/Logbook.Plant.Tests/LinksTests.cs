namespace Logbook.Plant.Tests;

public sealed class LinksTests
{
    [Fact]
    public void Causticity_of_the_starter_site_comes_mostly_from_its_own_three_end_points()
    {
        // It also takes the acid of the day and, as they were hours ago, two figures of the green liquor's sample.
        var links = new Links(StarterSite.Site);

        Assert.Contains("WL-CE", links.Mostly(["WL-A", "WL-B", "WL-C"]));
        Assert.DoesNotContain("WL-CE", links.Mostly(["GL-A", "GL-B", "GL-C"]));
        Assert.DoesNotContain("WL-CE", links.Mostly(["WL-A"]));
        Assert.DoesNotContain("WL-A", links.Mostly(["WL-A"]));
    }
}
