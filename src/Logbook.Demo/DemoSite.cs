using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>The invented mill's own site: the starter site with a name and people of its own.</summary>
public static class DemoSite
{
    /// <summary>The files to lay into the demo's folder.</summary>
    /// <param name="template">The starter site as shipped.</param>
    /// <param name="seed">One seed gives one set of people.</param>
    public static SiteFiles Files(SiteFiles template, int seed) => throw new NotImplementedException();
}
