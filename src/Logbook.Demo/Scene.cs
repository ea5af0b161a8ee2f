using Logbook.Demo.Instruments;
using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>Where and when the demo plays.</summary>
internal sealed record Scene(Site Site, DateTimeOffset Start, DateTimeOffset Until)
{
    public Staff Staff { get; } = new(Site);

    public Point Point(string tag) =>
        Site.FindPoint(tag) ?? throw new InvalidOperationException($"the demo needs the starter site's point {tag}");

    public Round Round(string id) =>
        Site.FindRound(id) ?? throw new InvalidOperationException($"the demo needs the starter site's round {id}");

    /// <summary>True when something at this time lies well inside the history.</summary>
    public bool Covers(DateTimeOffset at) => Start.AddHours(1) <= at && at <= Until;
}
